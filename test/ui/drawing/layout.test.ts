import { describe, expect, test } from 'vitest';
import { unit } from '../../../src/geometry/point.ts';
import type { Drawn, DrawnHole } from '../../../src/ui/drawing/drawn.ts';
import { boxAround, overlaps, type Segment } from '../../../src/ui/drawing/labels.ts';
import { type Layout, layOut } from '../../../src/ui/drawing/layout.ts';
import { exaggeration, roundDown, scaleBar } from '../../../src/ui/drawing/scale.ts';

const WIDTH = 358;
const HEIGHT = 256;

const hole = (label: string, x: number, y: number): DrawnHole => ({
  label,
  place: { x, y },
  state: 'planned',
});

function ring(count: number, radius = 3.6): DrawnHole[] {
  return Array.from({ length: count }, (_, i) => {
    const way = unit((2 * Math.PI * i) / count);
    return hole(String(i + 1), 3 + radius * way.x, 7 + radius * way.y);
  });
}

function grid(columns: number, rows: number): DrawnHole[] {
  return Array.from({ length: columns * rows }, (_, i) =>
    hole(String(i + 1), (i % columns) * 2.4, Math.floor(i / columns) * 2.4),
  );
}

const STAKES = { a: { x: 0, y: 0 }, b: { x: 6, y: 0 } };

/** No label on a mark, on another label, or over the edge. */
function expectClear(layout: Layout, name: string) {
  const labels = layout.holes.flatMap((placed) => (placed.label ? [{ ...placed.label, of: placed }] : []));
  for (const [i, label] of labels.entries()) {
    expect(
      label.left >= 0 && label.right <= layout.view.width,
      `${name}: ${label.of.hole.label} inside`,
    ).toBe(true);
    expect(label.top >= 0 && label.bottom <= layout.view.height, name).toBe(true);
    for (const { at, r, hole: other } of layout.holes)
      expect(
        overlaps(label, boxAround(at, r)),
        `${name}: ${label.of.hole.label} on mark ${other.label}`,
      ).toBe(false);
    for (const other of labels.slice(i + 1))
      expect(overlaps(label, other), `${name}: ${label.of.hole.label} on label ${other.of.hole.label}`).toBe(
        false,
      );
  }
  return labels.length;
}

describe('labels', () => {
  test('every hole of every ring from 3 to 24 has one, clear of all marks', () => {
    for (let count = 3; count <= 24; count++) {
      const holes = ring(count).map((one, i) => ({ ...one, live: i === count - 1 }));
      const layout = layOut({ holes, stakes: STAKES }, WIDTH, HEIGHT);
      expect(expectClear(layout, `ring of ${count}`)).toBe(count);
    }
  });

  test('every hole of grids to 6 × 4 has one; in denser grids those that fit', () => {
    for (const [columns, rows] of [
      [1, 1],
      [2, 1],
      [1, 2],
      [2, 2],
      [4, 3],
      [6, 4],
    ] as const)
      expect(expectClear(layOut({ holes: grid(columns, rows) }, WIDTH, HEIGHT), `${columns} × ${rows}`)).toBe(
        columns * rows,
      );
    expectClear(layOut({ holes: grid(20, 20) }, WIDTH, HEIGHT), '20 × 20');
  });

  test('in a grid they all stand on the same side', () => {
    const { holes } = layOut({ holes: grid(6, 4) }, WIDTH, HEIGHT);
    const sides = holes.map(({ at, label }) => `${Math.round((label!.left + label!.right) / 2 - at.x)}`);
    expect(new Set(sides)).toEqual(new Set(['0']));
  });

  test('marks never touch each other', () => {
    for (const holes of [ring(24), grid(20, 12)]) {
      const placed = layOut({ holes, stakes: STAKES }, WIDTH, HEIGHT).holes;
      for (const [i, p] of placed.entries())
        for (const q of placed.slice(i + 1))
          expect(Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y)).toBeGreaterThan(p.r + q.r);
    }
  });
});

describe('turned as the user stands', () => {
  const onLeft: Drawn = { holes: ring(10), stakes: STAKES };

  test('holes on the left of A–B: A left, B right, level, below all holes', () => {
    const { stakes, holes } = layOut(onLeft, WIDTH, HEIGHT);
    expect(stakes!.a.x).toBeLessThan(stakes!.b.x);
    expect(stakes!.a.y).toBeCloseTo(stakes!.b.y, 9);
    for (const { at } of holes) expect(at.y).toBeLessThan(stakes!.a.y);
  });

  test('holes on the right: the user faces them, so B is on the left; never mirrored', () => {
    const holes = ring(10).map((one) => ({ ...one, place: { x: one.place.x, y: -one.place.y } }));
    const layout = layOut({ holes, stakes: STAKES }, WIDTH, HEIGHT);
    expect(layout.stakes!.b.x).toBeLessThan(layout.stakes!.a.x);
    for (const { at } of layout.holes) expect(at.y).toBeLessThan(layout.stakes!.a.y);
  });

  test('the whole site turned and shifted gives the same drawing', () => {
    const [c, s] = [Math.cos(1.1), Math.sin(1.1)];
    const move = (p: { x: number; y: number }) => ({ x: 40 + c * p.x - s * p.y, y: -7 + s * p.x + c * p.y });
    const moved = layOut(
      {
        holes: onLeft.holes.map((one) => ({ ...one, place: move(one.place) })),
        stakes: { a: move(STAKES.a), b: move(STAKES.b) },
      },
      WIDTH,
      HEIGHT,
    );
    for (const [i, { at }] of layOut(onLeft, WIDTH, HEIGHT).holes.entries()) {
      expect(moved.holes[i]!.at.x).toBeCloseTo(at.x, 6);
      expect(moved.holes[i]!.at.y).toBeCloseTo(at.y, 6);
    }
  });

  test('without stakes the plan’s front is up and its right is right', () => {
    const { holes } = layOut({ holes: [hole('front', 0, 2), hole('right', 2, 0)] }, WIDTH, HEIGHT);
    expect(holes[0]!.at.y).toBeLessThan(holes[1]!.at.y);
    expect(holes[1]!.at.x).toBeGreaterThan(holes[0]!.at.x);
  });
});

test('a nudge arrow points the way of its bearing, turned with the drawing', () => {
  const toward = { bearing: Math.PI, words: 'Push post 1 toward A.' };
  const holes = ring(4).map((one) => ({ ...one, nudge: toward }));
  const { arrow } = layOut({ holes, stakes: STAKES }, WIDTH, HEIGHT).holes[0]!;
  expect(arrow!.to.x).toBeLessThan(arrow!.from.x);
  expect(arrow!.to.y).toBeCloseTo(arrow!.from.y, 9);
});

test('one hole alone, and holes at one place, still make a drawing of finite numbers', () => {
  for (const holes of [[hole('1', 5, 5)], [hole('1', 5, 5), hole('2', 5, 5)]]) {
    const { view, holes: placed } = layOut({ holes }, WIDTH, HEIGHT);
    expect(Number.isFinite(view.height) && view.height > 0).toBe(true);
    for (const { at, r } of placed) expect([at.x, at.y, r].every(Number.isFinite)).toBe(true);
  }
});

describe('scale', () => {
  test('the bar is a round length in the job’s units', () => {
    expect(scaleBar(20, 'ft-in-16')).toEqual({ metres: 10 * 0.3048, label: '10 ft' });
    expect(scaleBar(20, 'm')).toEqual({ metres: 5, label: '5 m' });
    expect(scaleBar(200, 'mm')).toEqual({ metres: 0.5, label: '500 mm' });
  });

  test.each([
    [0.7, 0.5],
    [1, 1],
    [19, 10],
    [20, 20],
    [0.021, 0.02],
    [999, 500],
  ])('%d rounds down to %d', (x, rounded) => {
    expect(roundDown(x)).toBe(rounded);
  });

  test('ellipses are enlarged by a round number, and never made smaller', () => {
    const ellipse = (semiMajor: number) => ({ semiMajor, semiMinor: semiMajor / 2, bearing: 0 });
    expect(exaggeration([ellipse(0.004), ellipse(0.002)], 20)).toBe(500);
    expect(exaggeration([ellipse(5)], 20)).toBe(1);
    expect(exaggeration([], 20)).toBe(1);
  });
});

describe('what points at something', () => {
  const post = (label: string, x: number, y: number): DrawnHole => ({ ...hole(label, x, y), live: true });
  const both: Drawn = {
    holes: [hole('1', 2, 5), post('2', 4, 5), hole('3', 3, 7)],
    stakes: STAKES,
    faces: [
      { hole: '2', bearing: 0, name: 'clockwise' },
      { hole: '2', bearing: -Math.PI / 2, name: 'outer' },
    ],
    front: Math.PI / 2,
  };
  const middleOf = ({ from, to }: Segment) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });

  test('a touched face has a bar on the side that it looks to, square to it, clear of its mark and named', () => {
    const { holes, faces } = layOut(both, WIDTH, HEIGHT);
    const { at, r } = holes[1]!;
    const [right, below] = faces.map(({ bar }) => middleOf(bar));
    expect(right!.x).toBeGreaterThan(at.x + r);
    expect(right!.y).toBeCloseTo(at.y, 6);
    expect(below!.y).toBeGreaterThan(at.y + r);
    expect(below!.x).toBeCloseTo(at.x, 6);
    expect(faces[0]!.bar.from.x).toBeCloseTo(faces[0]!.bar.to.x, 6);
    for (const { label } of faces) expect(label).not.toBeNull();
  });

  test('a face of a hole that is not drawn has no bar', () => {
    const faces = [{ hole: 'nowhere', bearing: 0, name: 'outer' }];
    expect(layOut({ ...both, faces }, WIDTH, HEIGHT).faces).toEqual([]);
  });

  test('the front’s arrow stands before the foremost hole and points on, turned with the drawing', () => {
    for (const turn of [0, 0.4, Math.PI / 2, Math.PI, -2]) {
      const front = Math.PI / 2 + turn;
      const { view, holes, front: placed } = layOut({ ...both, front }, WIDTH, HEIGHT);
      const way = { x: Math.cos(front), y: -Math.sin(front) };
      const along = (p: { x: number; y: number }) => p.x * way.x + p.y * way.y;
      const { from, to } = placed!.arrow;
      expect(along(from)).toBeGreaterThan(Math.max(...holes.map(({ at, r }) => along(at) + r)));
      expect(along(to)).toBeGreaterThan(along(from));
      for (const { x, y } of [from, to])
        expect(x >= 0 && x <= view.width && y >= 0 && y <= view.height).toBe(true);
    }
  });

  test.each([1, 1.5, 2])(
    'with letters %s times as large no label lies on another or over the edge',
    (text) => {
      for (const count of [4, 8, 10]) {
        const holes = ring(count).map((one, i) => ({ ...one, live: i === 2 }));
        const faces = [{ hole: '3', bearing: 0.3, name: 'clockwise' }];
        const layout = layOut(
          { holes, stakes: STAKES, faces, front: Math.PI / 2 },
          WIDTH,
          HEIGHT * 1.5,
          text,
        );
        const boxes = [...layout.holes, ...layout.faces, layout.front!].flatMap(({ label }) => label ?? []);
        expectClear(layout, `ring of ${count}`);
        for (const [i, box] of boxes.entries())
          for (const other of boxes.slice(i + 1)) expect(overlaps(box, other)).toBe(false);
        expect(Math.max(...boxes.map(({ size }) => size))).toBe(24 * text);
      }
    },
  );

  test('a near view shows what lies near, larger', () => {
    const holes = ring(10);
    const far = layOut({ holes, stakes: STAKES }, WIDTH, HEIGHT);
    const near = layOut({ holes, stakes: STAKES, focus: { at: holes[0]!.place, reach: 2.5 } }, WIDTH, HEIGHT);
    expect(near.holes.map(({ hole: { label } }) => label)).toEqual(['1', '2', '10']);
    expect(near.view.pxPerMetre).toBeGreaterThan(far.view.pxPerMetre);
    expect(near.view.turn).toBe(far.view.turn);
  });

  test('a nail is a dot among the holes, its label on the side away from them', () => {
    const nail = { label: 'N', place: { x: 5, y: 5 }, awayFrom: { x: 4, y: 5 } };
    const { nails, references } = layOut({ ...both, faces: [], references: [nail] }, WIDTH, HEIGHT);
    expect(references).toEqual([]);
    expect(nails[0]!.label!.left).toBeGreaterThan(nails[0]!.at.x);
  });
});

describe('lines on the ground', () => {
  const holes = grid(3, 2);
  const wall = {
    name: 'House',
    from: { x: -1, y: 4 },
    to: { x: 5, y: 4 },
    wall: true,
    barred: 'left',
  } as const;
  const boundary = { name: 'Boundary', from: { x: 6, y: 0 }, to: { x: 6, y: 1 }, wall: false } as const;
  const laid = (...lines: NonNullable<Drawn['lines']>) => layOut({ holes, lines }, WIDTH, HEIGHT);

  test('a wall ends at its two points, and a boundary runs on to the edge', () => {
    const { ground, view } = laid(wall, boundary);
    const [house, edge] = ground;
    expect(house!.line.from).toEqual(view.spot(wall.from));
    expect(house!.line.to).toEqual(view.spot(wall.to));
    expect([edge!.line.from.y, edge!.line.to.y].sort((p, q) => p - q)).toEqual([0, view.height]);
    expect(ground.map(({ label }) => label !== null)).toEqual([true, true]);
  });
  test('strokes lean off a line on the side that is barred', () => {
    const { ground, view } = laid(wall);
    const { strokes, line } = ground[0]!;
    expect(strokes.length).toBeGreaterThan(5);
    // Left of a person who walks to the right is up, and y runs downwards.
    for (const { from, to } of strokes) {
      expect(from.y).toBeCloseTo(line.from.y, 9);
      expect(to.y).toBeLessThan(from.y);
    }
    expect(view.spot({ x: 0, y: 9 }).y).toBeLessThan(line.from.y);
    expect(laid(boundary).ground[0]!.strokes).toEqual([]);
  });
  test('one near by is brought into view, one far off does not make all the rest small', () => {
    const plain = laid();
    expect(laid(boundary).view.pxPerMetre).toBeLessThan(plain.view.pxPerMetre);
    const far = laid({ ...boundary, from: { x: 400, y: 0 }, to: { x: 400, y: 1 } });
    expect(far.view.pxPerMetre).toBe(plain.view.pxPerMetre);
    expect(far.ground).toEqual([]);
  });
});
