import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import { holesOf } from '../../src/plan/index.ts';
import { checkPulls } from '../../src/stakeout/index.ts';
import { metres, ringPlan } from '../plan/plans.ts';
import { laidOn } from '../stakeout/laid.ts';

/** His circle has a radius of 60 parts; a length is told in parts, sixtieths and sixtieths of those. */
const PTOLEMY_RADIUS = 60;
const parts = (whole: number, first: number, second: number) => whole + first / 60 + second / 3600;
/** One in the last place of the table. */
const LAST_PLACE = parts(0, 0, 1);

/** Ptolemy, Almagest I.11, the table of chords (from memory): the arc between two posts, and its chord. */
const TABLE = [
  [36, parts(37, 4, 55)],
  [45, parts(45, 55, 19)],
  [60, parts(60, 0, 0)],
  [72, parts(70, 32, 3)],
  [90, parts(84, 51, 10)],
  [108, parts(97, 4, 56)],
  [120, parts(103, 55, 23)],
  [144, parts(114, 7, 37)],
  [180, parts(120, 0, 0)],
] as const;

/** A ring whose posts stand so many degrees apart, and how many of them the arc takes in. */
const ringsWith = (arc: number) =>
  [3, 4, 5, 6, 8, 10, 12, 15, 20, 24]
    .map((count) => ({ count, skip: (arc * count) / 360 }))
    .filter(({ skip }) => Number.isInteger(skip));

describe('chords of a ring are those of the table', () => {
  it.each(TABLE)('%i°: %f parts', (arc, chord) => {
    const rings = ringsWith(arc);
    expect(rings.length).toBeGreaterThan(0);
    for (const { count, skip } of rings) {
      const holes = holesOf(ringPlan({ count, sizeBy: 'radius', size: metres(PTOLEMY_RADIUS) }));
      for (const [i, { place }] of holes.entries()) {
        const other = holes[(i + skip) % count]!;
        expect(Math.abs(distance(place, other.place) - chord)).toBeLessThan(LAST_PLACE);
      }
    }
  });
});

describe('what check pulls must read is in the table', () => {
  it.each([3, 4, 5, 6, 8, 10])('of a ring of %i', (count) => {
    const plan = ringPlan({ count, sizeBy: 'radius', size: metres(PTOLEMY_RADIUS) });
    const { holes } = laidOn(plan, [-90, -90], [90, -90]);
    const reach = { ...plan.instruments, tapeLength: metres(200) };
    const pulls = checkPulls(holes, reach);
    expect(pulls.length).toBeGreaterThan(count / 2);
    for (const { expected } of pulls)
      expect(Math.min(...TABLE.map(([, chord]) => Math.abs(chord - expected)))).toBeLessThan(LAST_PLACE);
  });
});
