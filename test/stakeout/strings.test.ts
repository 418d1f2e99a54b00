import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circlesMeet } from '../../src/geometry/circles.ts';
import { cross, distance, scale, subtract, unit, type Vec } from '../../src/geometry/point.ts';
import { faceHalf } from '../../src/stakeout/string-face.ts';
import { isClear, NAIL_CLEARANCE } from '../../src/stakeout/string-nails.ts';
import type { LaidString, NailPlace, StringsAsked } from '../../src/stakeout/string-types.ts';
import { forFaces, stringPlan } from '../../src/stakeout/strings.ts';
import { formatLength, parseLength, stepOf, type Units } from '../../src/units/index.ts';
import { metres, pointsPlan, postTurned, ringPlan, rowsPlan } from '../plan/plans.ts';
import { scatteredPlan, stringsOn } from './string-jobs.ts';

const rings = fc
  .record({
    count: fc.integer({ min: 3, max: 24 }),
    pier: fc.boolean(),
    front: fc.constantFrom('post' as const, 'flat' as const),
  })
  .map((ring) => ringPlan({ ...ring, size: metres(ring.count <= 12 ? 3.6 : 6) }));
const grids = fc
  .record({ columns: fc.integer({ min: 1, max: 6 }), rows: fc.integer({ min: 1, max: 6 }) })
  .map((rows) => rowsPlan({ ...rows, columnSpacing: metres(2.4), rowSpacing: metres(2.1) }));
const scattered = fc
  .record({ seed: fc.integer({ min: 1, max: 100000 }), count: fc.integer({ min: 1, max: 16 }) })
  .map(({ seed, count }) => scatteredPlan(seed, count));
const plans = fc.oneof(rings, grids, scattered);

/** Where two strings cross: each is a line through two points. */
function crossingOf([p, q]: readonly [Vec, Vec], [r, s]: readonly [Vec, Vec]): Vec {
  const [u, v] = [subtract(q, p), subtract(s, r)];
  const t = cross(subtract(r, p), v) / cross(u, v);
  return { x: p.x + u.x * t, y: p.y + u.y * t };
}

/** Where a nail stands that was driven at two tapes, on the side that the words say. */
function drivenAt({ pulls }: NailPlace, { a, b }: StringsAsked, read = (m: number) => m): Vec {
  const meeting = circlesMeet(a, read(pulls.fromA), b, read(pulls.fromB))!;
  if (pulls.side === 'on-line') return { x: pulls.station, y: 0 };
  return meeting[pulls.side];
}

const nailsAsDriven = ({ nails }: LaidString, asked: StringsAsked, read?: (m: number) => number) =>
  nails.map((nail) => drivenAt(nail, asked, read)) as unknown as readonly [Vec, Vec];

describe('strings', () => {
  it('cross every hole twice, at 30° or more, on nails clear of all digging, whatever the plan', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { asked } = stringsOn(plan);
        const { strings, crossings, uncrossed } = stringPlan(asked);
        expect(uncrossed).toEqual([]);
        expect(crossings.map(({ hole }) => hole)).toEqual(asked.holes.map(({ label }) => label));
        for (const { angle } of crossings) expect(angle).toBeGreaterThan(Math.PI / 6 - 1e-9);
        const nails = strings.flatMap((string) => string.nails.map(({ site }) => site));
        for (const [i, at] of nails.entries())
          expect(isClear({ asked, taken: nails.filter((_, j) => j !== i) }, at)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('followed exactly find every centre, by their crossings and by each of their marks', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { asked } = stringsOn(plan);
        const { strings, crossings } = stringPlan(asked);
        const ends = new Map(strings.map((string) => [string.label, nailsAsDriven(string, asked)]));
        const site = new Map(asked.holes.map((hole) => [hole.label, hole.site]));
        for (const {
          hole,
          strings: [one, other],
        } of crossings)
          expect(distance(crossingOf(ends.get(one)!, ends.get(other)!), site.get(hole)!)).toBeLessThan(
            1e-9 * FLATTEST,
          );
        for (const string of strings)
          for (const { hole, at } of string.marks)
            expect(
              distance(alongFrom(string.nails[0].site, string.nails[1].site, at), site.get(hole)!),
            ).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it.each<Units>(['ft-in-16', 'mm'])(
    'driven by readings rounded as shown in %s stay within the rounding’s own effect',
    (units) => {
      const step = stepOf(units);
      const shown = (m: number) => {
        const read = parseLength(formatLength(m, units), units, 'Shown', { min: 0 });
        if (!read.ok) throw new Error(read.problem.text);
        return read.value;
      };
      fc.assert(
        fc.property(plans, (plan) => {
          const { asked } = stringsOn(plan, units);
          const { strings, crossings } = stringPlan(asked);
          const site = new Map(asked.holes.map((hole) => [hole.label, hole.site]));
          // A nail is off by half a step over the sharpness of its tapes; a string between two such nails by no more than the
          // worse of them, and where two strings cross by both, over the sine of their crossing.
          const off = new Map(
            strings.map((string) => [
              string.label,
              Math.max(...string.nails.map(({ pulls }) => nailOff(pulls.crossing.angle, step))),
            ]),
          );
          const ends = new Map(strings.map((string) => [string.label, nailsAsDriven(string, asked, shown)]));
          for (const {
            hole,
            strings: [one, other],
            angle,
          } of crossings) {
            const found = crossingOf(ends.get(one)!, ends.get(other)!);
            const worst = (off.get(one)! + off.get(other)!) / Math.sin(angle);
            expect(distance(found, site.get(hole)!)).toBeLessThan(worst * 1.01);
          }
        }),
        { numRuns: 30 },
      );
    },
  );

  it('are as few as a grid has rows and columns, up to twenty by twenty', () => {
    for (const [columns, rows] of [
      [2, 2],
      [3, 2],
      [7, 5],
      [20, 20],
    ] as const) {
      const { asked } = stringsOn(
        rowsPlan({ columns, rows, columnSpacing: metres(2), rowSpacing: metres(2) }),
      );
      const { strings, uncrossed } = stringPlan(asked);
      expect(strings).toHaveLength(columns + rows);
      expect(uncrossed).toEqual([]);
    }
  });

  it('are no more than one a hole round a ring with a pier in it, and one for the pier where it shares none', () => {
    for (let count = 5; count <= 24; count++) {
      const { asked } = stringsOn(ringPlan({ count, pier: true, size: metres(count <= 12 ? 3.6 : 6) }));
      expect(stringPlan(asked).strings).toHaveLength(count % 2 === 0 ? count : count + 1);
    }
  });

  it('of two free holes run through both, and square to that line at each', () => {
    const { asked } = stringsOn(
      pointsPlan([
        ['x', 0, 0],
        ['y', 3, 1],
      ]),
    );
    const { strings, crossings } = stringPlan(asked);
    expect(strings.map(({ marks }) => marks.map(({ hole }) => hole).sort())).toEqual([
      ['x', 'y'],
      ['x'],
      ['y'],
    ]);
    for (const { angle } of crossings) expect(angle).toBeCloseTo(Math.PI / 2, 9);
  });

  it('begin a round length before their first hole, from the nail nearer to A', () => {
    const { asked } = stringsOn(ringPlan({ count: 8 }), 'ft-in-16');
    for (const { marks, nails, length } of stringPlan(asked).strings) {
      const half = 0.5 * 0.3048;
      expect(Math.abs(marks[0]!.at / half - Math.round(marks[0]!.at / half))).toBeLessThan(1e-9);
      expect(marks[0]!.at).toBeGreaterThan(NAIL_CLEARANCE);
      expect(length - marks.at(-1)!.at).toBeGreaterThan(NAIL_CLEARANCE);
      expect(distance(nails[0].site, asked.a)).toBeLessThanOrEqual(distance(nails[1].site, asked.a) + 1e-9);
    }
  });

  it('leave out, and name, a hole beside which no nail finds room', () => {
    const { asked } = stringsOn(
      pointsPlan([
        ['pit', 0, 0],
        ['edge', 3, 1],
        ['far', 0, 40],
      ]),
    );
    const holes = asked.holes.map((hole) => (hole.label === 'pit' ? { ...hole, holeDiameter: 30 } : hole));
    const { crossings, uncrossed } = stringPlan({ ...asked, holes });
    expect(uncrossed).toEqual(['pit', 'edge']);
    expect(crossings.map(({ hole }) => hole)).toEqual(['far']);
  });
});

/** Tapes that cross at 30° turn the last bits of a length into so many times as much of a place. */
const FLATTEST = 10;

const nailOff = (angle: number, step: number): number =>
  step / 2 / Math.min(Math.sin(angle / 2), Math.cos(angle / 2));

function alongFrom(from: Vec, to: Vec, at: number): Vec {
  const u = scale(subtract(to, from), 1 / distance(from, to));
  return { x: from.x + u.x * at, y: from.y + u.y * at };
}

describe('a string for faces', () => {
  it('lies half the actual section and the gap beside the centres, nail for nail, and keeps its marks', () => {
    const plan = rowsPlan({ columns: 3, rows: 2 }, { each: postTurned('grid', 0.14, 0.09) });
    const { asked } = stringsOn(plan);
    const [row] = stringPlan(asked).strings;
    const [p, q] = row!.nails;
    const along = scale(subtract(q.site, p.site), 1 / row!.length);
    const half = faceHalf(asked.holes, along);
    // A row runs across the front: half the depth lies between centre and front face.
    expect(half).toBeCloseTo(0.045, 12);
    const aside = { x: -along.y, y: along.x };
    const faces = forFaces(row!, half as number, 0.003, aside, asked);
    expect(faces.marks).toEqual(row!.marks);
    expect(faces.standsFor).toMatchObject({ what: 'faces', half, gap: 0.003 });
    for (const [k, nail] of faces.nails.entries()) {
      const off = subtract(nail.site, row!.nails[k]!.site);
      expect(off.x * aside.x + off.y * aside.y).toBeCloseTo(0.048, 12);
      expect(distance(drivenAt(nail, asked), nail.site)).toBeLessThan(1e-9);
      expect(nail.label).toBe(`${row!.nails[k]!.label}f`);
    }
  });

  it('is not to be had where posts are turned from it, or differ', () => {
    const { asked } = stringsOn(ringPlan({ count: 8, pier: true }, { each: postTurned('centre') }));
    const [diameter] = stringPlan(asked).strings;
    const along = subtract(diameter!.nails[1].site, diameter!.nails[0].site);
    const [one, , , , opposite] = asked.holes;
    expect(faceHalf([one!, opposite!], along)).toBeCloseTo(0.07, 12);
    expect(faceHalf([one!, asked.holes[8]!, opposite!], along)).toBe('sizes-differ');
    expect(faceHalf([asked.holes[1]!], along)).toBe('turned');
    expect(faceHalf([{ ...one!, facing: one!.facing + 0.02 }], along)).toBe('turned');
    expect(faceHalf([asked.holes[8]!], unit(0.3))).toBeGreaterThan(0);
  });
});

describe('lines on the ground', () => {
  const { asked } = stringsOn(
    rowsPlan({ columns: 3, rows: 2, columnSpacing: metres(2), rowSpacing: metres(2) }),
  );
  const far = Math.max(...asked.holes.map(({ site }) => site.y));
  const line = (kind: 'house' | 'other', y: number) => ({
    name: 'Line',
    kind,
    from: { x: -50, y },
    to: { x: 50, y },
    keep: null,
    noStakes: 'left' as const,
  });

  it('no nail stands in a house or on barred ground, and no string runs through a house', () => {
    const free = stringPlan(asked).strings;
    for (const kind of ['house', 'other'] as const) {
      const barring = line(kind, far + 0.5);
      const strings = stringPlan({ ...asked, lines: [barring] }).strings;
      const barred = (all: readonly LaidString[]) =>
        all.flatMap(({ nails }) => nails).filter(({ site }) => site.y > barring.from.y + 0.03);
      expect(barred(free).length).toBeGreaterThan(0);
      expect(barred(strings)).toEqual([]);
    }
  });

  it('a string does not run through a house between two holes', () => {
    const middle = far - 1;
    const crosses = ({ nails: [p, q] }: LaidString) =>
      Math.min(p.site.y, q.site.y) < middle && Math.max(p.site.y, q.site.y) > middle;
    expect(stringPlan(asked).strings.some(crosses)).toBe(true);
    const { strings } = stringPlan({ ...asked, lines: [line('house', middle)] });
    expect(strings.some(crosses)).toBe(false);
  });
});
