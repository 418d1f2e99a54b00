import { describe, expect, test } from 'vitest';
import { defaultPlan } from '../../src/plan/index.ts';
import { holePulls, pullList } from '../../src/stakeout/index.ts';

const { instruments } = defaultPlan('m');
const FROM_A = 5;
const pulls = new Map(
  [
    { label: '1', site: { x: 3, y: 4 } },
    { label: '2', site: { x: 6, y: -8 } },
  ].map((hole) => [hole.label, holePulls([hole], 6, instruments)[0]!]),
);
const listed = (rise: number | null, reach = 30) =>
  pullList({ pulls, order: ['2', '1', 'gone'], rise: () => rise, reach });

describe('the pull list', () => {
  test('has every hole that there is, in the order asked for, with its side and its crossing', () => {
    const rows = listed(null);
    expect(rows.map(({ hole, side }) => [hole, side])).toEqual([
      ['2', 'right'],
      ['1', 'left'],
    ]);
    expect(rows[1]!.crossing).toEqual(pulls.get('1')!.crossing);
    expect(rows[1]!.tapes[0]).toEqual({ from: 'A', level: FROM_A, rise: null, slope: null });
  });

  /** 5-12-13 (Euclid, Elements X.29, lemma 1): a level length of 5 that rises by 12 is 13 along the slope. */
  test('along the slope is the root of level and rise squared', () => {
    expect(listed(12)[1]!.tapes[0]).toEqual({ from: 'A', level: FROM_A, rise: 12, slope: 13 });
  });

  test('a hole is beyond a tape that is too short for it as it lies', () => {
    expect(listed(null, 5)[1]!.withinTape).toBe(true);
    expect(listed(12, 13)[1]!.withinTape).toBe(true);
    expect(listed(12, 12.9)[1]!.withinTape).toBe(false);
  });
});
