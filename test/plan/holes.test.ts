import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, length } from '../../src/geometry/point.ts';
import { RING_SIZES } from '../../src/job/plan-schema.ts';
import { type Hole, holesOf, PIER_LABEL, touchOffset } from '../../src/plan/index.ts';
import { metres, pointsPlan, postTurned, ringPlan, rowsPlan } from './plans.ts';

const at = (holes: readonly Hole[], label: string): Hole => {
  const hole = holes.find((one) => one.label === label);
  if (!hole) throw new Error(`no hole ${label}`);
  return hole;
};
const expectPlace = (hole: Hole, x: number, y: number) => {
  expect(hole.place.x, `${hole.label} x`).toBeCloseTo(x, 9);
  expect(hole.place.y, `${hole.label} y`).toBeCloseTo(y, 9);
};
const outerFace = (hole: Hole) => {
  const offset = touchOffset(hole.section, hole.facing, { at: 'face', side: 'front' }, 0)!;
  return { x: hole.place.x + offset.x, y: hole.place.y + offset.y };
};

describe('a ring', () => {
  it('starts with a post at the front and runs clockwise', () => {
    const holes = holesOf(ringPlan({ count: 4 }));
    expect(holes.map(({ label }) => label)).toEqual(['1', '2', '3', '4']);
    expectPlace(at(holes, '1'), 0, 3);
    expectPlace(at(holes, '2'), 3, 0);
    expectPlace(at(holes, '3'), 0, -3);
    expectPlace(at(holes, '4'), -3, 0);
  });

  it('starts just clockwise of the front where a flat is there', () => {
    const holes = holesOf(ringPlan({ count: 4, front: 'flat' }));
    const half = 3 * Math.SQRT1_2;
    expectPlace(at(holes, '1'), half, half);
    expectPlace(at(holes, '4'), -half, half);
  });

  it('makes the size that was asked for, whichever it was', () => {
    for (const count of [3, 4, 5, 6, 7, 8, 10, 12, 60]) {
      const ring = (sizeBy: (typeof RING_SIZES)[number]) => holesOf(ringPlan({ count, sizeBy }));
      expect(length(ring('radius')[0]!.place)).toBeCloseTo(3, 9);
      const side = ring('side');
      expect(distance(side[0]!.place, side[1]!.place)).toBeCloseTo(3, 9);
      for (const hole of ring('outer-faces')) expect(length(outerFace(hole))).toBeCloseTo(3, 9);
    }
  });

  it('is as wide from flat to flat as asked; an odd ring from its flat to the post opposite', () => {
    for (const count of [3, 4, 5, 6, 7, 8, 11]) {
      const holes = holesOf(ringPlan({ count, sizeBy: 'flat-to-flat', front: 'flat' }));
      const front = Math.max(...holes.map(({ place }) => place.y));
      const back = Math.min(...holes.map(({ place }) => place.y));
      expect(front - back, `${count} posts`).toBeCloseTo(3, 9);
    }
  });

  it('takes outer faces of piers at their outsides', () => {
    const each = { ...postTurned('grid'), holds: { kind: 'pier', diameter: metres(0.3) } } as const;
    const [first] = holesOf(ringPlan({ sizeBy: 'outer-faces' }, { each }));
    expect(length(first!.place) + 0.15).toBeCloseTo(3, 9);
  });

  it('takes outer faces of posts turned to the grid at the front', () => {
    const each = postTurned('grid', 0.1, 0.2);
    const [first] = holesOf(ringPlan({ sizeBy: 'outer-faces' }, { each }));
    expect(outerFace(first!).y).toBeCloseTo(3, 9);
  });

  it('turns its posts away from the centre, or all to the front', () => {
    const turned = holesOf(ringPlan({ count: 4 }));
    expect(Math.cos(at(turned, '2').facing)).toBeCloseTo(1, 12);
    expect(Math.sin(at(turned, '3').facing)).toBeCloseTo(-1, 12);
    for (const hole of holesOf(ringPlan({ count: 4 }, { each: postTurned('grid') })))
      expect(hole.facing).toBe(Math.PI / 2);
  });

  it('has the holes on either side as neighbours, and none at the pier', () => {
    const holes = holesOf(ringPlan({ count: 5, pier: true }));
    expect(at(holes, '1').neighbours).toEqual(['5', '2']);
    expect(at(holes, '5').neighbours).toEqual(['4', '1']);
    const pier = at(holes, PIER_LABEL);
    expect(pier.neighbours).toEqual([]);
    expectPlace(pier, 0, 0);
    expect(pier.section).toEqual({ kind: 'pier', diameter: 0.3 });
    expect(pier.facing).toBe(Math.PI / 2);
    expect(holes.at(-1)).toBe(pier);
  });

  it('gives single holes what they have instead, the pier too, and nothing else', () => {
    const overrides = {
      '2': { top: metres(1.5), holds: { kind: 'pier', diameter: metres(0.25) } },
      P: { holeDiameter: metres(0.9) },
    } as const;
    const holes = holesOf(ringPlan({ pier: true }, { overrides }));
    expect(at(holes, '2')).toMatchObject({ top: 1.5, section: { kind: 'pier', diameter: 0.25 } });
    expect(at(holes, '2').holeDiameter).toBe(at(holes, '1').holeDiameter);
    expect(at(holes, 'P').holeDiameter).toBe(0.9);
    expect(at(holes, '3').section.kind).toBe('post');
  });

  it('is regular, whatever it is', () => {
    const ring = fc.record({
      count: fc.integer({ min: 3, max: 60 }),
      sizeBy: fc.constantFrom(...RING_SIZES),
      front: fc.constantFrom('post' as const, 'flat' as const),
      size: fc.integer({ min: 500, max: 30000 }).map((mm) => metres(mm / 1000)),
    });
    fc.assert(
      fc.property(ring, (shape) => {
        const holes = holesOf(ringPlan(shape));
        const side = distance(holes[0]!.place, holes[1]!.place);
        holes.forEach((hole, i) => {
          expect(length(hole.place)).toBeCloseTo(length(holes[0]!.place), 9);
          expect(distance(hole.place, holes[(i + 1) % holes.length]!.place)).toBeCloseTo(side, 9);
        });
        // Clockwise: each next hole lies to the right of the line from the centre.
        const [p, q] = [holes[0]!.place, holes[1]!.place];
        expect(p.x * q.y - p.y * q.x).toBeLessThan(0);
      }),
    );
  });
});

describe('rows', () => {
  it('run from the front row, left to right, about the centre', () => {
    const holes = holesOf(rowsPlan());
    expect(holes.map(({ label }) => label)).toEqual(['1', '2', '3', '4', '5', '6']);
    expectPlace(at(holes, '1'), -2, 1.5);
    expectPlace(at(holes, '3'), 2, 1.5);
    expectPlace(at(holes, '4'), -2, -1.5);
    expectPlace(at(holes, '6'), 2, -1.5);
  });

  it('reach over the outer faces as far as asked', () => {
    const sizes = { measuredTo: 'out-to-out', columnSpacing: metres(5), rowSpacing: metres(4) } as const;
    const holes = holesOf(
      rowsPlan({ ...sizes, columns: 4, rows: 3 }, { each: postTurned('grid', 0.1, 0.2) }),
    );
    const [first, last] = [holes[0]!, holes.at(-1)!];
    expect(last.place.x - first.place.x + 0.1).toBeCloseTo(5, 9);
    expect(first.place.y - last.place.y + 0.2).toBeCloseTo(4, 9);
    expect(holes[1]!.place.x - first.place.x).toBeCloseTo(4.9 / 3, 9);
  });

  it('of one column or one row stand on the middle line', () => {
    for (const measuredTo of ['centres', 'out-to-out'] as const) {
      const holes = holesOf(rowsPlan({ columns: 1, rows: 2, measuredTo }));
      expect(holes.map(({ place }) => place.x)).toEqual([0, 0]);
    }
  });

  it('have the holes beside them in row and column as neighbours', () => {
    const holes = holesOf(rowsPlan({ columns: 3, rows: 3 }));
    expect(at(holes, '1').neighbours).toEqual(['2', '4']);
    expect(at(holes, '5').neighbours).toEqual(['2', '6', '8', '4']);
    expect(at(holes, '9').neighbours).toEqual(['6', '8']);
  });

  it('have a post at the very centre look to the front', () => {
    const holes = holesOf(rowsPlan({ columns: 3, rows: 3 }, { each: postTurned('centre') }));
    expect(at(holes, '5').facing).toBe(Math.PI / 2);
    expect(Math.cos(at(holes, '6').facing)).toBeCloseTo(1, 12);
  });
});

describe('points', () => {
  it('stand where they were typed, under their own labels, in their order', () => {
    const holes = holesOf(
      pointsPlan([
        ['NE', 2, 3],
        ['SW', -2, -3],
      ]),
    );
    expect(holes.map(({ label }) => label)).toEqual(['NE', 'SW']);
    expectPlace(at(holes, 'SW'), -2, -3);
  });

  it('have as neighbours those with nobody between', () => {
    const holes = holesOf(
      pointsPlan([
        ['a', 0, 0],
        ['b', 2, 0],
        ['c', 4, 0.1],
        ['d', 1, 2],
      ]),
    );
    expect([...at(holes, 'b').neighbours].sort()).toEqual(['a', 'c', 'd']);
    expect(at(holes, 'a').neighbours).toEqual(['b', 'd']);
    expect(at(holes, 'a').neighbours).not.toContain('c');
  });

  it('of a square are neighbours along its sides, not across', () => {
    const holes = holesOf(
      pointsPlan([
        ['1', 0, 0],
        ['2', 2, 0],
        ['3', 2, 2],
        ['4', 0, 2],
      ]),
    );
    expect([...at(holes, '1').neighbours].sort()).toEqual(['2', '4']);
  });

  it('are neighbours both ways, and never of themselves', () => {
    const place = fc.record({ x: fc.integer({ min: -9, max: 9 }), y: fc.integer({ min: -9, max: 9 }) });
    const places = fc.uniqueArray(place, {
      minLength: 2,
      maxLength: 30,
      selector: ({ x, y }) => `${x},${y}`,
    });
    fc.assert(
      fc.property(places, (list) => {
        const holes = holesOf(pointsPlan(list.map(({ x, y }, i) => [String(i + 1), x, y])));
        for (const hole of holes) {
          expect(hole.neighbours.length).toBeGreaterThan(0);
          expect(hole.neighbours).not.toContain(hole.label);
          for (const label of hole.neighbours) expect(at(holes, label).neighbours).toContain(hole.label);
        }
      }),
    );
  });

  it('may be none', () => {
    expect(holesOf(pointsPlan([]))).toEqual([]);
  });
});
