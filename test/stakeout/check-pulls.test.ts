import { describe, expect, it } from 'vitest';
import { defaultPlan } from '../../src/plan/index.ts';
import { checkPulls, type PlannedPull } from '../../src/stakeout/index.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { holeOf, laidOn } from './laid.ts';

const { instruments } = defaultPlan('m');
const A = [-6, -6] as const;
const B = [6, -6] as const;

const holeAt = (end: PlannedPull['from']) => {
  if (end.thing.kind !== 'hole-stake') throw new Error(`not a hole stake: ${end.thing.kind}`);
  return end.thing.hole;
};
const pairsOf = (pulls: readonly PlannedPull[], purpose: PlannedPull['purpose']) =>
  pulls.filter((pull) => pull.purpose === purpose).map(({ from, to }) => `${holeAt(from)}–${holeAt(to)}`);

describe('pulls that prove the stakes', () => {
  it('go round the ring and along its diameters', () => {
    const pulls = checkPulls(laidOn(ringPlan({ count: 6 }), A, B).holes, instruments);
    expect(pairsOf(pulls, 'neighbour')).toEqual(['1–2', '1–6', '2–3', '3–4', '4–5', '5–6']);
    expect(pairsOf(pulls, 'across')).toEqual(['1–4', '2–5', '3–6']);
    for (const { purpose, expected } of pulls) expect(expected).toBeCloseTo(purpose === 'across' ? 6 : 3, 9);
  });

  it('go to one of the two nearest to opposite on an odd ring', () => {
    const pulls = checkPulls(laidOn(ringPlan({ count: 5 }), A, B).holes, instruments);
    expect(pairsOf(pulls, 'across')).toHaveLength(3);
    // Every chord but the sides: 2 R sin(2 pi/5).
    for (const pull of pulls.filter(({ purpose }) => purpose === 'across'))
      expect(pull.expected).toBeCloseTo(6 * Math.sin((2 * Math.PI) / 5), 9);
  });

  it('have only sides on a ring of three', () => {
    const pulls = checkPulls(laidOn(ringPlan({ count: 3 }), A, B).holes, instruments);
    expect(pulls).toHaveLength(3);
  });

  it('hold the pier by two, from different sides', () => {
    const pulls = checkPulls(laidOn(ringPlan({ count: 8, pier: true }), A, B).holes, instruments);
    expect(pairsOf(pulls, 'across').filter((pair) => pair.includes('P'))).toEqual(['P–1', 'P–3']);
  });

  it('follow rows and columns, and the diagonals', () => {
    const pulls = checkPulls(laidOn(rowsPlan(), A, B).holes, instruments);
    expect(pairsOf(pulls, 'neighbour')).toEqual(['1–2', '1–4', '2–3', '2–5', '3–6', '4–5', '5–6']);
    expect(pairsOf(pulls, 'across').slice(0, 1)).toEqual(['1–6']);
    expect(pairsOf(pulls, 'across')).toContain('3–4');
  });

  it.each([
    ['rings', [3, 4, 5, 7, 10, 16].map((count) => ringPlan({ count, pier: count > 4 }))],
    ['rows', [rowsPlan(), rowsPlan({ columns: 5, rows: 4 }), rowsPlan({ columns: 2, rows: 2 })]],
    [
      'points',
      [
        pointsPlan([
          ['a', 0, 0],
          ['b', 4, 1],
          ['c', 1, 5],
          ['d', 6, 6],
          ['e', -3, 3],
        ]),
      ],
    ],
  ] as const)('guard every hole at least twice, and no pair is pulled twice: %s', (_, plans) => {
    for (const plan of plans) {
      const { holes } = laidOn(plan, A, B);
      const pulls = checkPulls(holes, instruments);
      const keys = pulls.map(({ from, to }) => [holeAt(from), holeAt(to)].sort().join());
      expect(new Set(keys).size).toBe(keys.length);
      for (const { label, neighbours } of holes) {
        const here = pulls.filter(({ from, to }) => holeAt(from) === label || holeAt(to) === label);
        expect(here.length, label).toBeGreaterThanOrEqual(2);
        // Across, unless it is pulled to every other hole already.
        const all = here.length === holes.length - 1;
        expect(all || here.some(({ purpose }) => purpose === 'across'), label).toBe(true);
        if (neighbours.length > 0)
          expect(
            here.some(({ purpose }) => purpose === 'neighbour'),
            label,
          ).toBe(true);
      }
    }
  });

  it('never go beyond the tape, and go across as far as it reaches', () => {
    const short = { ...instruments, tapeLength: metres(5) };
    const pulls = checkPulls(laidOn(ringPlan({ count: 8 }), A, B).holes, short);
    for (const { expected } of pulls) expect(expected).toBeLessThanOrEqual(5);
    // The diameter of 6 m is out of reach; the chord over two holes, 3 root 2, is not.
    const across = pulls.filter(({ purpose }) => purpose === 'across');
    expect(across.length).toBeGreaterThanOrEqual(4);
    for (const { expected } of across) expect(expected).toBeCloseTo(3 * Math.SQRT2, 9);
  });

  it('are level distances between the planned places, nail to nail', () => {
    const { holes } = laidOn(rowsPlan({ columns: 4, rows: 3 }), A, B);
    for (const { from, to, expected } of checkPulls(holes, instruments)) {
      const [p, q] = [holeOf(holes, holeAt(from)).site, holeOf(holes, holeAt(to)).site];
      expect(expected).toBeCloseTo(Math.hypot(p.x - q.x, p.y - q.y), 12);
      expect([from.touch.at, to.touch.at]).toEqual(['nail', 'nail']);
    }
  });

  it('are none for one hole or no hole', () => {
    expect(checkPulls(laidOn(pointsPlan([['1', 0, 0]]), A, B).holes, instruments)).toEqual([]);
    expect(checkPulls([], instruments)).toEqual([]);
  });
});
