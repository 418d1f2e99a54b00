import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultPlan } from '../../src/plan/index.ts';
import { type PlannedPull, setPulls } from '../../src/stakeout/index.ts';
import { metres, pointsPlan, postTurned, ringPlan } from '../plan/plans.ts';
import { holeOf, laidOn } from './laid.ts';

const { instruments } = defaultPlan('m');
const A = [-6, -6] as const;
const B = [6, -6] as const;

function pullsTo(label: string, set: string, laid: ReturnType<typeof laidOn>): PlannedPull[] {
  return setPulls({
    hole: holeOf(laid.holes, label),
    holes: laid.holes,
    set: new Set(set.split('')),
    baseline: laid.baseline,
    instruments,
  });
}
const thingOf = ({ to }: PlannedPull) => {
  if (to.thing.kind !== 'post') throw new Error(`not a post: ${to.thing.kind}`);
  return to.thing.hole;
};

describe('pulls to a set post', () => {
  it('run from A and B to the faces that look to them', () => {
    const plan = { ...pointsPlan([['1', 0, 0]]), each: postTurned('grid', 0.2, 0.1) };
    const laid = laidOn(plan, [-4, 0.001], [0, -3]);
    const [fromA, fromB] = pullsTo('1', '', laid);
    expect(fromA).toMatchObject({ purpose: 'fix', from: { thing: { label: 'A' }, touch: { at: 'nail' } } });
    expect(fromA!.to).toEqual({ thing: { kind: 'post', hole: '1' }, touch: { at: 'face', side: 'left' } });
    expect(fromA!.expected).toBeCloseTo(Math.hypot(3.9, 0.001), 9);
    expect(fromB!.to.touch).toEqual({ at: 'face', side: 'back' });
    expect(fromB!.expected).toBeCloseTo(2.95, 9);
  });

  it('reach the near side of a round', () => {
    const laid = laidOn(ringPlan({ pier: true }), A, B);
    const [fromA] = pullsTo('P', '', laid);
    expect(fromA!.to.touch).toEqual({ at: 'near-side' });
    expect(fromA!.expected).toBeCloseTo(6 * Math.SQRT2 - 0.15, 9);
  });

  it('go on to the set neighbours, then across to the farthest set post', () => {
    const laid = laidOn(ringPlan({ count: 8 }), A, B);
    const pulls = pullsTo('1', '2458', laid);
    expect(pulls.map(({ purpose }) => purpose)).toEqual(['fix', 'fix', 'neighbour', 'neighbour', 'across']);
    expect(pulls.slice(2).map(thingOf)).toEqual(['2', '8', '5']);
    // Between facing faces of posts on one diameter: 6 m less half a section at each end.
    expect(pulls[4]!.expected).toBeCloseTo(6 - 0.14, 9);
    expect(pulls[4]!.from.touch).toEqual({ at: 'face', side: 'back' });
  });

  it('touch a pier on its side towards the face: 6 m of ring less half a post and half the pier', () => {
    const laid = laidOn(ringPlan({ count: 8, pier: true }), A, B);
    const across = pullsTo('1', 'P', laid).at(-1)!;
    expect(thingOf(across)).toBe('P');
    expect(across.expected).toBeCloseTo(3 - 0.07 - 0.15, 9);
  });

  it('take two rounds along the line of their centres', () => {
    const each = { ...postTurned('grid'), holds: { kind: 'pier', diameter: metres(0.3) } } as const;
    const laid = laidOn(
      {
        ...pointsPlan([
          ['1', 0, 0],
          ['2', 3, 4],
        ]),
        each,
      },
      A,
      B,
    );
    expect(pullsTo('1', '2', laid).at(-1)!.expected).toBeCloseTo(5 - 0.3, 9);
  });

  it('leave out what a set post or pier stands in the way of', () => {
    const laid = laidOn(ringPlan({ count: 8, pier: true }), A, B);
    // Straight across lies the pier; next to it, post 4 is in sight.
    expect(pullsTo('1', '45P', laid).slice(2).map(thingOf)).toEqual(['4', 'P']);
    expect(pullsTo('1', '45', laid).slice(2).map(thingOf)).toEqual(['5', '4']);
  });

  it('leave out a stake that is hidden behind a set post', () => {
    const laid = laidOn(
      pointsPlan([
        ['1', 0, 0],
        ['2', -2, -2],
      ]),
      A,
      B,
    );
    expect(pullsTo('1', '', laid)).toHaveLength(2);
    const pulls = pullsTo('1', '2', laid);
    expect(pulls.map(({ from }) => from.thing)).toEqual([
      { kind: 'stake', label: 'B' },
      { kind: 'post', hole: '1' },
    ]);
  });

  it('are four where there is enough to pull to: in the stead of a hidden stake one more across, squarest to the first', () => {
    const places = [
      ['1', 0, 0],
      ['2', -2, -2],
      ['3', 0, 5],
      ['4', 0.5, 4],
      ['5', 4, 0.5],
    ] as const;
    const laid = laidOn(pointsPlan(places.map((each) => [...each])), A, B);
    const apart = { ...laid, holes: laid.holes.map((hole) => ({ ...hole, neighbours: [] })) };
    const pulls = pullsTo('1', '2345', apart);
    expect(pulls.map(({ purpose }) => purpose)).toEqual(['fix', 'across', 'across', 'across']);
    // 3 is farthest; 5 lies about square to it, 2 at 45 degrees, 4 beside it.
    expect(pulls.slice(1).map(thingOf)).toEqual(['3', '5', '2']);
    expect(pullsTo('1', '345', apart).map(({ purpose }) => purpose)).toEqual([
      'fix',
      'fix',
      'across',
      'across',
    ]);
  });

  it('leave out what the tape does not reach', () => {
    const laid = laidOn(ringPlan({ count: 8 }), A, B);
    const short = { ...instruments, tapeLength: metres(5) };
    const input = { hole: holeOf(laid.holes, '1'), holes: laid.holes, set: new Set(['2', '5']) };
    const pulls = setPulls({ ...input, baseline: laid.baseline, instruments: short });
    expect(pulls.map(({ purpose }) => purpose)).toEqual(['neighbour']);
  });

  it('always touch a side that the tape can see, and read less than from centre to centre', () => {
    const place = fc.record({ x: fc.integer({ min: -40, max: 40 }), y: fc.integer({ min: -40, max: 40 }) });
    const places = fc.uniqueArray(place, { minLength: 2, maxLength: 8, selector: ({ x, y }) => `${x},${y}` });
    fc.assert(
      fc.property(places, fc.constantFrom('centre' as const, 'grid' as const), (list, turned) => {
        const plan = pointsPlan(list.map(({ x, y }, i) => [String(i + 1), x / 4, y / 4]));
        const { holes, baseline } = laidOn(
          { ...plan, each: postTurned(turned, 0.09, 0.14) },
          [-15, -15],
          [15, -15],
        );
        const set = new Set(holes.map(({ label }) => label));
        for (const hole of holes) {
          for (const pull of setPulls({ hole, holes, set, baseline, instruments })) {
            if (pull.from.thing.kind !== 'post' || pull.to.thing.kind !== 'post') continue;
            const other = holeOf(holes, pull.to.thing.hole);
            const apart = Math.hypot(other.site.x - hole.site.x, other.site.y - hole.site.y);
            expect(pull.expected).toBeLessThan(apart);
            // Two posts, each less than a diagonal of 0.167 m across.
            expect(pull.expected).toBeGreaterThan(apart - 0.167);
          }
        }
      }),
    );
  });
});
