import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, dot, subtract } from '../../src/geometry/point.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { NAIL_CLEARANCE } from '../../src/stakeout/string-nails.ts';
import { stringPlan } from '../../src/stakeout/strings.ts';
import type { OffsetPair } from '../../src/stakeout/tie-offsets.ts';
import { tiesOf } from '../../src/stakeout/ties.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { scatteredPlan, stringsOn } from './string-jobs.ts';

const RINGS: Plan[] = Array.from({ length: 22 }, (_, i) =>
  ringPlan({ count: i + 3, pier: i % 2 === 0, size: metres(i < 10 ? 3.6 : 6) }),
);
const GRIDS: Plan[] = [
  [1, 1],
  [1, 6],
  [2, 3],
  [5, 4],
  [12, 12],
  [20, 20],
].map(([columns, rows]) =>
  rowsPlan({ columns: columns!, rows: rows!, columnSpacing: metres(2.4), rowSpacing: metres(2.4) }),
);

function tiesFor(plan: Plan) {
  const { asked } = stringsOn(plan);
  const strings = stringPlan(asked);
  return { asked, strings, ties: asked.holes.map((hole) => ({ hole, tie: tiesOf(hole, asked, strings) })) };
}

/** Ways back that need nothing in common: a crossing, each offset pair, the tapes. */
function expectTwoTies(plan: Plan): void {
  const { asked, ties } = tiesFor(plan);
  for (const { tie } of ties) {
    const ways = (tie.strings ? 1 : 0) + tie.offsets.length + (tie.tapes ? 1 : 0);
    expect(ways).toBeGreaterThanOrEqual(2);
    for (const { stakes } of tie.offsets)
      for (const { site } of stakes)
        for (const other of asked.holes)
          expect(distance(site, other.site)).toBeGreaterThan(other.holeDiameter / 2 + NAIL_CLEARANCE - 1e-3);
  }
}

describe('every hole has two ties or more that outlive the digging', () => {
  it('round rings of 3 to 24', () => {
    for (const plan of RINGS) expectTwoTies(plan);
  });

  it('in grids up to twenty by twenty', () => {
    for (const plan of GRIDS) expectTwoTies(plan);
  });

  it('of a hundred scattered plans', () => {
    for (let seed = 1; seed <= 100; seed++) expectTwoTies(scatteredPlan(seed, 3 + (seed % 12)));
  });
});

describe('offset stakes', () => {
  const plans = fc
    .record({ seed: fc.integer({ min: 1, max: 100000 }), count: fc.integer({ min: 1, max: 10 }) })
    .map(({ seed, count }) => scatteredPlan(seed, count));

  it('bring back the centre exactly: halfway, or as far again beyond the nearer', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        for (const { hole, tie } of tiesFor(plan).ties)
          for (const pair of tie.offsets) expect(distance(backFrom(pair), hole.site)).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it('stand in a second line square to the first, within 30°', () => {
    for (const plan of [...RINGS, ...GRIDS.slice(0, 4)])
      for (const { tie } of tiesFor(plan).ties) {
        const [first, second] = tie.offsets;
        if (!first || !second) continue;
        const [u, v] = [lineOf(first), lineOf(second)];
        const cosine = Math.abs(dot(u, v)) / Math.hypot(u.x, u.y) / Math.hypot(v.x, v.y);
        expect(cosine).toBeLessThan(0.5 + 1e-9);
      }
  });

  it('of a lone hole stand before and behind it, and beside it, a round length away', () => {
    const { ties } = tiesFor(pointsPlan([['P1', 0, 0]]));
    const [{ tie, hole } = { tie: undefined, hole: undefined }] = ties;
    const [first, second] = tie!.offsets;
    expect(first!.how).toBe('both-sides');
    expect(second!.how).toBe('both-sides');
    expect([first!, second!].flatMap(({ stakes }) => stakes.map(({ label }) => label))).toEqual([
      'TP1a',
      'TP1b',
      'TP1c',
      'TP1d',
    ]);
    expect(Math.abs(first!.away * 10 - Math.round(first!.away * 10))).toBeLessThan(1e-9);
    expect(first!.away).toBeGreaterThanOrEqual(hole!.holeDiameter / 2 + NAIL_CLEARANCE - 1e-9);
  });

  it('stand on one side, near and twice as far, where the other side is dug up', () => {
    const { asked } = stringsOn(pointsPlan([['x', 0, 0]]));
    const [hole] = asked.holes;
    // Three wide pits round the back of the hole leave only its front.
    const pits = [Math.PI / 2, Math.PI, (3 * Math.PI) / 2].map((turn, i) => {
      const bearing = hole!.facing + turn;
      const away = { x: Math.cos(bearing) * 3, y: Math.sin(bearing) * 3 };
      return {
        ...hole!,
        label: `pit${i}`,
        holeDiameter: 4.4,
        site: { x: hole!.site.x + away.x, y: hole!.site.y + away.y },
      };
    });
    const crowded = { ...asked, holes: [hole!, ...pits] };
    const { offsets } = tiesOf(hole!, crowded, { strings: [], crossings: [], uncrossed: [] });
    expect(offsets[0]!.how).toBe('one-side');
    expect(distance(backFrom(offsets[0]!), hole!.site)).toBeLessThan(1e-9);
  });

  it('keep their labels within twelve characters', () => {
    const { ties } = tiesFor(pointsPlan([['twelve chars', 0, 0]]));
    expect(ties[0]!.tie.offsets[0]!.stakes[0].label).toBe('Tx1a');
  });
});

const lineOf = ({ stakes: [one, other] }: OffsetPair) => subtract(other.site, one.site);

function backFrom({ how, stakes: [one, other] }: OffsetPair) {
  const [p, q] = [one.site, other.site];
  return how === 'both-sides'
    ? { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }
    : { x: 2 * p.x - q.x, y: 2 * p.y - q.y };
}
