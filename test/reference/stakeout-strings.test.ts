import { describe, expect, it } from 'vitest';
import { holesOf } from '../../src/plan/index.ts';
import { stringSag } from '../../src/stakeout/string-sag.ts';
import { stringPlan } from '../../src/stakeout/strings.ts';
import { metres, ringPlan, rowsPlan } from '../plan/plans.ts';
import { stringsOn } from '../stakeout/string-jobs.ts';

const DEGREES = 180 / Math.PI;
/** Half a unit of the tenth decimal. */
const DIGITS = 9;

/**
 * A diameter and a side meet at (180° − 360°/n) / 2, half the corner of the regular polygon; the corners are those of Euclid,
 * Elements I.32 (all corners of an n-gon are 2n − 4 right angles).
 */
describe('strings of an even ring cross at half the polygon’s corner', () => {
  it.each([
    [6, 60],
    [8, 67.5],
    [10, 72],
    [12, 75],
    [24, 82.5],
  ])('%i posts: %f°', (count, degrees) => {
    const { asked } = stringsOn(ringPlan({ count, size: metres(count <= 12 ? 3.6 : 6) }));
    const plan = stringPlan(asked);
    expect(plan.strings).toHaveLength(count);
    expect(plan.crossings).toHaveLength(count);
    for (const { angle } of plan.crossings) expect(angle * DEGREES).toBeCloseTo(degrees, 9);
  });
});

/**
 * Chords to the k-th corner on either side make half the arc that they leave: 180° − 360° k/n (Euclid, Elements III.20, the
 * angle at the circumference is half that at the centre).
 */
describe('strings of an odd ring are the chords that cross nearest to square', () => {
  it.each([
    [3, 1, 60],
    [5, 1, 72],
    [7, 2, 77.142857142857],
    [9, 2, 80],
    [11, 3, 81.818181818182],
  ])('%i posts: chords to the %i. after, %f°', (count, step, degrees) => {
    const { asked } = stringsOn(ringPlan({ count, size: metres(3.6) }));
    const plan = stringPlan(asked);
    expect(plan.strings).toHaveLength(count);
    for (const { angle } of plan.crossings) expect(angle * DEGREES).toBeCloseTo(degrees, 9);
    const [first] = plan.strings;
    const [one, other] = first!.marks;
    const [i, j] = [Number(one!.hole), Number(other!.hole)];
    expect([step, count - step]).toContain(Math.abs(i - j));
    // Chord over k steps of a ring: 2 R sin(k π/n), any table of chords.
    expect(other!.at - one!.at).toBeCloseTo(2 * 3.6 * Math.sin((step * Math.PI) / count), DIGITS);
  });
});

describe('marks along the strings are the lengths of the figure', () => {
  it('octagon, R = 1: sides of 0.7653668647 and diameters of 2 (from memory; recomputed by hand)', () => {
    const { asked } = stringsOn(ringPlan({ count: 8, size: metres(1) }));
    const spans = stringPlan(asked).strings.map(({ marks }) => marks.at(-1)!.at - marks[0]!.at);
    for (const span of spans.slice(0, 4)) expect(span).toBeCloseTo(2, DIGITS);
    for (const span of spans.slice(4)) expect(span).toBeCloseTo(0.7653668647, DIGITS);
  });

  it('3-4-5 (Euclid, Elements I.47): strings of 3 and of 4 cross square, and their far holes are 5 apart', () => {
    const { asked } = stringsOn(
      rowsPlan({ columns: 2, rows: 2, columnSpacing: metres(3), rowSpacing: metres(4) }),
    );
    const plan = stringPlan(asked);
    const spans = plan.strings.map(({ marks }) => marks.at(-1)!.at - marks[0]!.at);
    expect(spans.map((m) => Math.round(m * 1e9) / 1e9)).toEqual([3, 3, 4, 4]);
    for (const { angle } of plan.crossings) expect(angle * DEGREES).toBeCloseTo(90, 9);
    const [p, , , q] = holesOf(
      rowsPlan({ columns: 2, rows: 2, columnSpacing: metres(3), rowSpacing: metres(4) }),
    );
    expect(Math.hypot(p!.place.x - q!.place.x, p!.place.y - q!.place.y)).toBeCloseTo(5, DIGITS);
  });
});

/** w L²/8H with 0.0008 lb/ft and 10 lb: derived, not published. */
describe('sag of a string', () => {
  const FOOT = 0.3048;
  const INCH = 0.0254;
  it('40 ft pulled with 10 lb hangs by 3/16 in, to a sixteenth', () => {
    expect(Math.abs(stringSag(40 * FOOT) / INCH - 3 / 16)).toBeLessThan(1 / 16);
  });

  it('twice the length hangs four times as far', () => {
    expect(stringSag(20) / stringSag(10)).toBeCloseTo(4, 12);
  });
});
