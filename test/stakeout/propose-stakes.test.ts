import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { defaultPlan, type Hole, holesOf } from '../../src/plan/index.ts';
import { compareStakes, judgeStakes, proposeStakes, STAKE_CLEARANCE } from '../../src/stakeout/index.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { bruteForce, worstDrms } from './brute-force.ts';

const { instruments } = defaultPlan('m');
const propose = (holes: readonly Hole[], own = instruments, units: Plan['units'] = 'm') => {
  const choice = proposeStakes(holes, own, { units });
  if (!choice) throw new Error('no choice');
  return choice;
};

const place = fc.record({ x: fc.integer({ min: -50, max: 50 }), y: fc.integer({ min: -50, max: 50 }) });
const anyPoints = fc
  .uniqueArray(place, { minLength: 1, maxLength: 12, selector: ({ x, y }) => `${x},${y}` })
  .map((list) => pointsPlan(list.map(({ x, y }, i) => [String(i + 1), x / 10, y / 10])));
const anyRing = fc
  .record({
    count: fc.integer({ min: 3, max: 24 }),
    size: fc.integer({ min: 10, max: 60 }).map((dm) => metres(dm / 10)),
    front: fc.constantFrom('post' as const, 'flat' as const),
    pier: fc.boolean(),
  })
  .map((ring) => ringPlan(ring));
const anyRows = fc
  .record({ columns: fc.integer({ min: 1, max: 6 }), rows: fc.integer({ min: 1, max: 5 }) })
  .map((rows) => rowsPlan({ ...rows, columnSpacing: metres(1.8), rowSpacing: metres(2.4) }));
const anyPlan = fc.oneof(anyRing, anyRows, anyPoints);

describe('where A and B would best stand', () => {
  it('is within 2 % of the best of all pairs on a grid of 1 m', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const holes = holesOf(plan);
        const best = bruteForce(holes, instruments, 14, 1);
        expect(propose(holes).worst!.crossing.drms).toBeLessThanOrEqual(best * 1.02);
      }),
      { numRuns: 8, seed: 20260502 },
    );
  });

  it('keeps every rule: clear of holes, within the tape, all holes on the left', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const holes = holesOf(plan);
        const { a, b, objections, worst, perHole, baseline } = propose(holes);
        expect(objections).toEqual([]);
        for (const { place: at, holeDiameter } of holes)
          for (const stake of [a, b])
            expect(distance(at, stake)).toBeGreaterThanOrEqual(holeDiameter / 2 + STAKE_CLEARANCE - 1e-9);
        expect(worstDrms(a, b, holes, instruments)).toBeCloseTo(worst!.crossing.drms, 9);
        expect(baseline).toBeCloseTo(distance(a, b), 12);
        expect(perHole.map(({ hole }) => hole)).toEqual(holes.map(({ label }) => label));
      }),
      { numRuns: 40 },
    );
  });

  it('takes A–B along the plan and in round numbers where that costs nothing to speak of', () => {
    const { a, b } = propose(holesOf(ringPlan({ count: 10, pier: true })));
    expect(a.x === b.x || a.y === b.y).toBe(true);
    for (const value of [a.x, a.y, b.x, b.y]) expect((value * 10) % 1).toBeCloseTo(0, 9);
  });

  it('gives feet and inches in whole inches at least', () => {
    const { a, b } = propose(holesOf(ringPlan({ count: 9 })), instruments, 'ft-in-16');
    for (const value of [a.x, a.y, b.x, b.y]) {
      const inches = value / 0.0254;
      expect(Math.abs(inches - Math.round(inches))).toBeLessThan(1e-6);
    }
  });

  it('is the same every time', () => {
    const holes = holesOf(rowsPlan({ columns: 4, rows: 3 }));
    expect(propose(holes)).toEqual(propose(holes));
  });

  it('moves with the plan: shifted holes get stakes that are as good', () => {
    const spots = [
      ['1', 0, 0],
      ['2', 3, 1],
      ['3', 1, 4],
    ] as const;
    const home = propose(holesOf(pointsPlan(spots)));
    const away = propose(holesOf(pointsPlan(spots.map(([label, x, y]) => [label, x + 70, y - 55] as const))));
    expect(away.worst!.crossing.drms).toBeLessThan(home.worst!.crossing.drms * 1.011);
    expect(home.worst!.crossing.drms).toBeLessThan(away.worst!.crossing.drms * 1.011);
  });

  it('stays within a pull that is wished to be short', () => {
    const holes = holesOf(ringPlan());
    const { a, b } = proposeStakes(holes, instruments, { units: 'm', longestPull: 8 })!;
    for (const { place: at } of holes)
      for (const stake of [a, b]) expect(distance(at, stake)).toBeLessThanOrEqual(8);
  });

  it('takes a longer tape when it is too short for any pair, and says so', () => {
    const short = { ...instruments, tapeLength: metres(4) };
    const { objections, worst } = propose(holesOf(ringPlan()), short);
    expect(objections.length).toBeGreaterThan(0);
    for (const sentence of objections) expect(sentence).toMatch(/and the tape is 4\.000 m: move/);
    expect(worst!.crossing.grade).not.toBe('poor');
  });

  it('does with one hole, and with none', () => {
    expect(propose(holesOf(pointsPlan([['1', 0, 0]]))).worst!.crossing.grade).toBe('good');
    expect(proposeStakes([], instruments, { units: 'm' })).toBeNull();
  });
});

describe('the user’s own choice of A and B', () => {
  const holes = holesOf(ringPlan({ count: 8 }));
  const judge = (a: readonly [number, number], b: readonly [number, number], own = instruments) =>
    judgeStakes({ x: a[0], y: a[1] }, { x: b[0], y: b[1] }, holes, own, 'm').objections;

  it('has no objections when it is sound', () => {
    expect(judge([-5, -6], [5, -6])).toEqual([]);
  });

  it.each([
    ['A = B', [-5, -6], [-5, -6], /^A and B are 0\.000 m apart: put them at least 0\.500 m apart\.$/],
    ['in a hole', [0, 3.1], [5, -6], /^A stands in hole 1: move it 1\.200 m clear of every hole\.$/],
    ['in the spoil', [-5, -6], [0, -4], /^B stands 0\.800 m from the edge of hole 5, where spoil will lie/],
    ['on the holes’ line', [3, -8], [3, 8], /^Hole 3 lies on the line from A to B/],
    ['holes on both sides', [-7, 1], [7, 1.2], /^Holes lie on both sides of the line from A to B/],
    ['flat crossings', [-1, -25], [1, -25], /^At hole \d the tapes cross at only \d°/],
  ] as const)('%s', (_, a, b, text) => {
    expect(
      judge(a, b).some((sentence) => text.test(sentence)),
      judge(a, b).join('\n'),
    ).toBe(true);
  });

  it('beyond the tape, which stake and by how much', () => {
    const short = { ...instruments, tapeLength: metres(9) };
    expect(judge([-5, -6], [5, -6], short)).toEqual([
      'A and B are 10.000 m apart, and the tape is 9.000 m: move them nearer.',
      'Hole 2 is 10.801 m from A, and the tape is 9.000 m: move A nearer.',
      'Hole 8 is 10.801 m from B, and the tape is 9.000 m: move B nearer.',
    ]);
  });

  it('tells several holes on the line by their number', () => {
    const row = holesOf(rowsPlan({ columns: 3, rows: 1 }));
    const { objections, worst } = judgeStakes({ x: -5, y: 0 }, { x: 5, y: 0 }, row, instruments, 'm');
    expect(objections[0]).toMatch(/^3 holes lie on the line from A to B/);
    expect(worst!.crossing.drms).toBe(Infinity);
    const two = judgeStakes({ x: -5, y: 0 }, { x: 5, y: 0 }, row.slice(1), instruments, 'm');
    expect(two.objections[0]).toMatch(/^Holes 2 and 3 lie on/);
  });

  it('has no worst hole where the plan has none', () => {
    const choice = judgeStakes({ x: -5, y: 0 }, { x: 5, y: 0 }, [], instruments, 'm');
    expect(choice).toMatchObject({ worst: null, objections: [], perHole: [] });
    expect(compareStakes(choice, choice, 'm')).toBeNull();
  });

  it('is told what it costs against the best', () => {
    const best = proposeStakes(holes, instruments, { units: 'm' })!;
    const own = judgeStakes({ x: -2, y: -6 }, { x: 2, y: -6 }, holes, instruments, 'm');
    const cost = compareStakes(own, best, 'm')!;
    expect(cost.times).toBeCloseTo(own.worst!.crossing.drms / best.worst!.crossing.drms, 12);
    expect(cost.times).toBeGreaterThan(1.3);
    expect(cost.text).toMatch(
      /^[1-9]\.\d times the error\. At the worst hole, \d, tapes are good to \d+ mm from here; the best places give \d+ mm\.$/,
    );
    expect(compareStakes(best, best, 'm')).toMatchObject({
      times: 1,
      text: expect.stringMatching(/^nothing to speak of/),
    });
    const inLine = judgeStakes({ x: -9, y: 3 }, { x: 9, y: 3 }, holes, instruments, 'm');
    expect(compareStakes(inLine, best, 'm')).toMatchObject({
      times: Infinity,
      text: expect.stringMatching(/^hole 1 is not fixed at all from here/),
    });
  });
});
