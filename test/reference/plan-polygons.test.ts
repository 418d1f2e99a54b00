import { describe, expect, it } from 'vitest';
import { distance, length } from '../../src/geometry/point.ts';
import { typedLength } from '../../src/job/length.ts';
import type { Ring } from '../../src/job/plan-schema.ts';
import { holesOf, sectionsFor } from '../../src/plan/index.ts';
import { formatLength } from '../../src/units/index.ts';
import { metres, postTurned, ringPlan, rowsPlan } from '../plan/plans.ts';
import { OCTAGON } from './octagon.ts';

const ring = (count: number, sizeBy: Ring['sizeBy'], size = 1) =>
  holesOf(ringPlan({ count, sizeBy, size: metres(size), front: 'flat' }));
const chord = (holes: ReturnType<typeof ring>, skip: number) =>
  distance(holes[0]!.place, holes[skip + 1]!.place);

const feet = (text: string) => {
  const read = typedLength(text, 'ft-in-16', 'Size');
  if (!read.ok) throw new Error(read.problem.text);
  return read.value;
};

/** Half a unit of the tenth decimal, in which the constants are given. */
const DIGITS = 9;

describe('the regular octagon', () => {
  it('side / R = 2 sin 22.5°', () => {
    expect(chord(ring(8, 'radius'), 0)).toBeCloseTo(OCTAGON.side, DIGITS);
  });

  it('R / side = √(4 + 2√2) / 2', () => {
    expect(length(ring(8, 'side')[0]!.place)).toBeCloseTo(OCTAGON.radiusOfSide, DIGITS);
  });

  it('apothem / R = cos 22.5°', () => {
    const [first] = ring(8, 'radius');
    expect(first!.place.y).toBeCloseTo(OCTAGON.apothem, DIGITS);
  });

  it('across flats / side = 1 + √2', () => {
    expect(chord(ring(8, 'flat-to-flat'), 0)).toBeCloseTo(OCTAGON.sideOfFlats, DIGITS);
  });

  it('across corners / side', () => {
    expect(chord(ring(8, 'side'), 3)).toBeCloseTo(OCTAGON.cornersOfSide, DIGITS);
  });

  it('chords over one post and over two', () => {
    expect(chord(ring(8, 'radius'), 1)).toBeCloseTo(OCTAGON.overOne, DIGITS);
    expect(chord(ring(8, 'radius'), 2)).toBeCloseTo(OCTAGON.overTwo, DIGITS);
  });

  it('encloses 2√2 R²', () => {
    const holes = ring(8, 'radius');
    const twice = holes.reduce((sum, { place }, i) => {
      const next = holes[(i + 1) % holes.length]!.place;
      return sum + (next.x * place.y - next.y * place.x);
    }, 0);
    expect(twice / 2).toBeCloseTo(OCTAGON.area, DIGITS);
  });
});

/** The same identities for other counts (from memory; recomputed by hand). */
describe('other regular polygons', () => {
  it.each([
    [6, 1],
    [10, 0.6180339888],
    [12, 0.5176380902],
  ])('side / R of %i posts = %f', (count, side) => {
    expect(Math.abs(chord(ring(count, 'radius'), 0) - side)).toBeLessThan(1e-10);
  });

  it('apothem / R of the hexagon = 0.8660254', () => {
    expect(ring(6, 'radius')[0]!.place.y).toBeCloseTo(0.8660254, 7);
  });

  it('R / side of the dodecagon = 1.9318516526', () => {
    expect(length(ring(12, 'side')[0]!.place)).toBeCloseTo(1.9318516526, DIGITS);
  });

  it('across the triangle from flat to post = 1.5 R: all of its height (derived, not published)', () => {
    expect(length(ring(3, 'flat-to-flat', 1.5)[0]!.place)).toBeCloseTo(1, DIGITS);
  });
});

/** A square that is cut to an octagon: corner cut 0.2929 of the side, octagon side 0.4142 of it (common practice). */
it('an octagon 12 feet across flats has sides of 59.65 inches', () => {
  const holes = holesOf(ringPlan({ count: 8, sizeBy: 'flat-to-flat', size: feet('12 0') }));
  expect(chord(holes, 0) / 0.0254).toBeCloseTo(59.65, 2);
});

describe('rectangles', () => {
  /** 3-4-5 in fours: the triangle of builders' squareness checks, NAHB-type performance guide (constructionplace.com). */
  it('12 by 16 feet has a diagonal of 20 feet', () => {
    const sizes = { columnSpacing: feet('12 0'), rowSpacing: feet('16 0') };
    const holes = holesOf(rowsPlan({ columns: 2, rows: 2, ...sizes }));
    expect(distance(holes[0]!.place, holes[3]!.place)).toBeCloseTo(20 * 0.3048, 12);
    expect(distance(holes[1]!.place, holes[2]!.place)).toBeCloseTo(20 * 0.3048, 12);
  });

  /** Diagonal as the root of the sum of the squares: derived, not published. */
  it('10 by 14 feet has a diagonal of 17.2047 feet, 17′ 2 7/16″', () => {
    const sizes = { columnSpacing: feet('10 0'), rowSpacing: feet('14 0') };
    const holes = holesOf(rowsPlan({ columns: 2, rows: 2, ...sizes }));
    const diagonal = distance(holes[0]!.place, holes[3]!.place);
    expect(diagonal / 0.3048).toBeCloseTo(17.2047, 4);
    expect(formatLength(diagonal, 'ft-in-16')).toBe('17′ 2 7/16″');
  });

  it('out to out, 6×6 posts stand 5 1/2″ less apart than the whole: 24 feet leave 23′ 6 1/2″ (derived)', () => {
    const each = { ...postTurned('grid'), holds: sixBySix() };
    const holes = holesOf(
      rowsPlan({ columns: 2, rows: 1, measuredTo: 'out-to-out', columnSpacing: feet('24 0') }, { each }),
    );
    expect(distance(holes[0]!.place, holes[1]!.place)).toBeCloseTo((23 * 12 + 6.5) * 0.0254, 12);
  });
});

const sixBySix = () => {
  const section = sectionsFor('ft-in-16').find(({ nominal }) => nominal === '6×6')!;
  return { kind: 'post', ...section, turned: 'grid' } as const;
};

/** PS 20, American Softwood Lumber Standard, tables 3 and 4 (from memory); 4×4 as SPIB prints it (blog.spib.org). */
describe('dressed sizes', () => {
  it.each([
    ['4×4', 3.5, 3.5],
    ['4×6', 3.5, 5.5],
    ['6×6', 5.5, 5.5],
    ['8×8', 7.5, 7.5],
  ])('%s', (nominal, width, depth) => {
    const section = sectionsFor('ft-in-16').find((one) => one.nominal === nominal)!;
    expect(section.width.m).toBeCloseTo(width * 0.0254, 12);
    expect(section.depth.m).toBeCloseTo(depth * 0.0254, 12);
  });
});
