import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import { defaultPlan, holesOf } from '../../src/plan/index.ts';
import { holePulls, pullList } from '../../src/stakeout/index.ts';
import { rowsPlan } from '../plan/plans.ts';

const { instruments } = defaultPlan('m');
const pullsAt = (station: number, offset: number, baseline: number) =>
  holePulls([{ label: '1', site: { x: station, y: offset } }], baseline, instruments)[0]!;

/**
 * Triangles with whole sides and a whole height. 13-14-15, with a height of 12 that parts 14 into 5 and 9: Heron, Metrica I.5
 * and I.8. The others are put together of right triangles (Euclid, Elements X.29, lemma 1) along the same height.
 */
describe('two tapes meet where triangles of whole sides say', () => {
  it.each([
    [14, 13, 15, 5, 12, 'between A and B: 5-12-13 and 9-12-15'],
    [4, 13, 15, -5, 12, 'behind A: 5-12-13 and 9-12-15'],
    [4, 15, 13, 9, 12, 'beyond B: 9-12-15 and 5-12-13'],
    [21, 10, 17, 6, 8, 'between A and B: 6-8-10 and 15-8-17'],
    [9, 10, 17, -6, 8, 'behind A: 6-8-10 and 15-8-17'],
    [3, 5, 4, 3, 4, 'square off B: 3-4-5'],
    [12, 5, 13, 0, 5, 'square off A: 5-12-13'],
  ])('A–B %i, from A %i, from B %i: station %i, offset %i, %s', (baseline, fromA, fromB, station, offset) => {
    for (const [side, sign] of [
      ['left', 1],
      ['right', -1],
    ] as const) {
      const pulls = pullsAt(station, sign * offset, baseline);
      expect(pulls.fromA).toBeCloseTo(fromA, 12);
      expect(pulls.fromB).toBeCloseTo(fromB, 12);
      expect(pulls).toMatchObject({ side, station, offset: sign * offset });
    }
  });

  it('cross at the corner that the law of cosines gives 13-14-15: cos γ = 33/65 (Euclid, Elements II.13)', () => {
    expect(Math.cos(pullsAt(5, 12, 14).crossing.angle)).toBeCloseTo(33 / 65, 12);
  });

  it('tapes that lie in one line are one length: A–B 14 is 5 and 9', () => {
    const pulls = pullsAt(5, 0, 14);
    expect(pulls).toMatchObject({ fromA: 5, fromB: 9, side: 'on-line' });
    expect(pulls.crossing.drms).toBe(Number.POSITIVE_INFINITY);
  });
});

/** 3-4-5 and what is made of it, which builders square by; 5-12-13 and 8-15-17 as well (common practice), feet. */
describe('right triangles for squareness', () => {
  it.each([
    [3, 4, 5],
    [6, 8, 10],
    [9, 12, 15],
    [12, 16, 20],
    [15, 20, 25],
    [18, 24, 30],
    [5, 12, 13],
    [10, 24, 26],
    [8, 15, 17],
    [20, 21, 29],
  ])('%i by %i has diagonals of %i', (across, deep, diagonal) => {
    const feet = (n: number) => ({ m: n * 0.3048, typed: `${n}′`, units: 'ft-in-16' as const });
    const sizes = { columnSpacing: feet(across), rowSpacing: feet(deep) };
    const [p, q, r, s] = holesOf(rowsPlan({ columns: 2, rows: 2, ...sizes })).map(({ place }) => place);
    expect(distance(p!, s!) / 0.3048).toBeCloseTo(diagonal, 12);
    expect(distance(q!, r!) / 0.3048).toBeCloseTo(diagonal, 12);
  });
});

/** The same triangles stood on edge: a level length, a rise, and the tape along the slope between. */
describe('lengths along a slope', () => {
  it.each([
    [4, 3, 5],
    [12, 5, 13],
    [15, 8, 17],
    [24, 7, 25],
  ])('level %i with a rise of %i is %i along the slope', (level, rise, slope) => {
    // Square off B: from B the tape is the level length itself.
    const pulls = new Map([['1', pullsAt(3, level, 3)]]);
    const [row] = pullList({ pulls, order: ['1'], rise: () => rise, reach: 50 });
    expect(row!.tapes[1]).toEqual({ from: 'B', level, rise, slope });
  });
});
