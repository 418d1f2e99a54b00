import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, distance, scale, subtract, type Vec } from '../../src/geometry/point.ts';
import { groundLines, holesOf, type LaidLine, layLine, layPlan } from '../../src/plan/index.ts';
import { faceGap, roundGap, structureSide } from '../../src/plan/setback.ts';
import { touchOffset } from '../../src/plan/touch.ts';
import { metres, ringPlan } from './plans.ts';

const line = (
  kind: LaidLine['kind'],
  from: Vec,
  to: Vec,
  noStakes: LaidLine['noStakes'] = null,
): LaidLine => ({
  name: 'L',
  kind,
  from,
  to,
  keep: null,
  noStakes,
});
const post = { kind: 'post', width: 0.14, depth: 0.14 } as const;

describe('how near a post comes to a line', () => {
  const boundary = line('boundary', { x: 4, y: -5 }, { x: 4, y: 5 });

  // Derived, not published: half the width off the centre, half the diagonal where a corner leads.
  it('square to it: its face counts, not its centre', () => {
    expect(faceGap(boundary, 1, { place: { x: 0, y: 0 }, section: post, facing: 0 })).toBeCloseTo(3.93, 12);
  });
  it('cornerwise: half the diagonal', () => {
    const gap = faceGap(boundary, 1, { place: { x: 0, y: 0 }, section: post, facing: Math.PI / 4 });
    expect(gap).toBeCloseTo(4 - 0.07 * Math.SQRT2, 12);
  });
  it('beyond a boundary it is negative, by as much as it reaches over', () => {
    expect(faceGap(boundary, 1, { place: { x: 3.95, y: 9 }, section: post, facing: 0 })).toBeCloseTo(
      -0.02,
      12,
    );
  });
  it('a pier and a deck’s edge: less their radius', () => {
    const pier = { kind: 'pier', diameter: 0.3 } as const;
    expect(faceGap(boundary, 1, { place: { x: 1, y: 0 }, section: pier, facing: 0 })).toBeCloseTo(2.85, 12);
    expect(roundGap(boundary, 1, { x: 0, y: 0 }, 3.5)).toBeCloseTo(0.5, 12);
  });
  it('a boundary runs on beyond its two points; a wall ends', () => {
    const far = { place: { x: 0, y: 8 }, section: post, facing: 0 };
    expect(faceGap(boundary, 1, far)).toBeCloseTo(3.93, 12);
    const wall = line('house', { x: 4, y: -5 }, { x: 4, y: 5 }, 'right');
    expect(faceGap(wall, 1, far)).toBeCloseTo(Math.hypot(3.93, 2.93), 12);
  });
  it('under a house it is negative, and beside it not', () => {
    const wall = line('house', { x: 4, y: -5 }, { x: 4, y: 5 }, 'right');
    expect(faceGap(wall, 1, { place: { x: 4.5, y: 0 }, section: post, facing: 0 })).toBeCloseTo(-0.57, 12);
    expect(faceGap(wall, 1, { place: { x: 5, y: 6 }, section: post, facing: 0 })).toBeGreaterThan(1);
  });
  it('is what a fine comb over the post’s outline and the wall finds', () => {
    const along = (p: Vec, q: Vec, n: number) =>
      Array.from({ length: n + 1 }, (_, i) => add(p, scale(subtract(q, p), i / n)));
    fc.assert(
      fc.property(
        fc.record({ x: fc.integer({ min: -40, max: 25 }), y: fc.integer({ min: -70, max: 70 }) }),
        fc.integer({ min: 0, max: 90 }),
        ({ x, y }, degrees) => {
          const wall = line('house', { x: 3, y: -3 }, { x: 3, y: 3 }, 'right');
          const facing = (degrees * Math.PI) / 180;
          const section = { kind: 'post', width: 0.3, depth: 0.2 } as const;
          const place = { x: x / 10, y: y / 10 };
          const corners = (['front', 'left', 'back', 'right'] as const).map((side) =>
            add(place, touchOffset(section, facing, { at: 'corner', side }, 0)!),
          );
          const outline = corners.flatMap((corner, i) => along(corner, corners[(i + 1) % 4]!, 60));
          const combed = along(wall.from, wall.to, 600)
            .flatMap((p) => outline.map((q) => distance(p, q)))
            .reduce((least, each) => Math.min(least, each));
          expect(Math.abs(faceGap(wall, 1, { place, section, facing }) - combed)).toBeLessThan(0.006);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('the side of a line on which the structure is', () => {
  const holes = holesOf(ringPlan());
  it('is where most of the holes are, or opposite the house', () => {
    expect(structureSide(line('boundary', { x: 1, y: -9 }, { x: 1, y: 9 }), holes)).toBe(1);
    expect(structureSide(line('boundary', { x: 1, y: 9 }, { x: 1, y: -9 }), holes)).toBe(-1);
    expect(structureSide(line('house', { x: 1, y: 9 }, { x: 1, y: -9 }, 'right'), holes)).toBe(1);
  });
});

describe('lines on the ground, laid', () => {
  const holes = holesOf(ringPlan());
  const at = (right: number, front: number) =>
    ({ by: 'plan', right: metres(right), front: metres(front) }) as const;
  const pulled = (fromA: number, fromB: number) =>
    ({ by: 'pulls', fromA: metres(fromA), fromB: metres(fromB), side: 'left' }) as const;
  const laid = layPlan(
    { a: { right: metres(-5), front: metres(-6) }, b: { right: metres(5), front: metres(-6) } },
    holes,
  );
  if (!laid.ok) throw new Error(laid.problem.text);
  const stakes = { motion: laid.value.motion, baseline: 10 };

  it('told from the plan lie where they were typed, and a house behind its wall where the holes are not', () => {
    const house = layLine({ name: 'House', kind: 'house', from: at(-4, 6), to: at(4, 6) }, holes, null);
    expect(house).toMatchObject({ ok: true, value: { from: { x: -4, y: 6 }, noStakes: 'left', keep: null } });
  });
  it('told from A and B by tapes or by station and offset, lie by where these stand', () => {
    const off = { by: 'offset', station: metres(10), offset: metres(4), side: 'right' } as const;
    const result = layLine(
      { name: 'Boundary', kind: 'boundary', from: pulled(13, 13), to: off, keep: metres(2) },
      holes,
      stakes,
    );
    if (!result.ok) throw new Error(result.problem.text);
    expect(result.value.from.x).toBeCloseTo(0, 9);
    expect(result.value.from.y).toBeCloseTo(6, 9);
    expect(result.value.to.x).toBeCloseTo(5, 9);
    expect(result.value.to.y).toBeCloseTo(-10, 9);
    expect(result.value.keep).toBe(2);
  });
  it('wait for A and B while these have no place', () => {
    const plan = ringPlan(
      {},
      { lines: [{ name: 'Fence', kind: 'other', from: pulled(13, 13), to: at(0, 9) }] },
    );
    expect(groundLines(plan, holes, null)).toEqual({ lines: [], waiting: ['Fence'], problems: [] });
  });
  it.each([
    [
      pulled(3, 20),
      /^Fence, first point: 3\.000 m from A and 20\.000 m from B differ by more than A to B, 10\.000 m, so that no such place is there; pull again from B and from A, and A to B\.$/,
    ],
    [
      pulled(3, 4),
      /^Fence, first point: 3\.000 m from A and 4\.000 m from B do not meet, for A to B is 10\.000 m; pull both again, and A to B\.$/,
    ],
    [at(0, 9.1), /^Fence: its two points are 0\.100 m apart; take two that are 0\.300 m apart or more\.$/],
  ] as const)('refuse what cannot be, in words', (from, text) => {
    const plan = ringPlan({}, { lines: [{ name: 'Fence', kind: 'other', from, to: at(0, 9) }] });
    const { lines, problems } = groundLines(plan, holes, stakes);
    expect(lines).toEqual([]);
    expect(problems[0]!.text).toMatch(text);
  });
});
