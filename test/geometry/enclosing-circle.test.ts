import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enclosingCircle } from '../../src/geometry/enclosing-circle.ts';
import { distance, type Vec } from '../../src/geometry/point.ts';

const coordinate = fc.integer({ min: -1000, max: 1000 }).map((n) => n / 100);
const point = fc.record({ x: coordinate, y: coordinate });

/** The smallest of all circles on two or three of the points that hold the rest. */
function bruteRadius(points: readonly Vec[]): number {
  let best = Number.POSITIVE_INFINITY;
  const consider = (centre: Vec) => {
    const radius = Math.max(...points.map((p) => distance(p, centre)));
    best = Math.min(best, radius);
  };
  points.forEach((p, i) => {
    points.slice(i).forEach((q, j) => {
      consider({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
      for (const r of points.slice(i + j)) {
        const d = 2 * (p.x * (q.y - r.y) + q.x * (r.y - p.y) + r.x * (p.y - q.y));
        if (Math.abs(d) < 1e-9) continue;
        const [pp, qq, rr] = [p, q, r].map(({ x, y }) => x * x + y * y) as [number, number, number];
        consider({
          x: (pp * (q.y - r.y) + qq * (r.y - p.y) + rr * (p.y - q.y)) / d,
          y: (pp * (r.x - q.x) + qq * (p.x - r.x) + rr * (q.x - p.x)) / d,
        });
      }
    });
  });
  return best;
}

describe('the smallest circle round points', () => {
  it('holds them all, and none smaller does', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 8 }), (points) => {
        const circle = enclosingCircle(points)!;
        for (const p of points) expect(distance(p, circle.centre)).toBeLessThanOrEqual(circle.radius + 1e-9);
        expect(circle.radius).toBeCloseTo(bruteRadius(points), 7);
      }),
    );
  });

  it('round one point is that point, and round none is none', () => {
    expect(enclosingCircle([{ x: 2, y: 3 }])).toEqual({ centre: { x: 2, y: 3 }, radius: 0 });
    expect(enclosingCircle([])).toBeNull();
  });

  it('stands on the outermost of points in a line', () => {
    const line = [0, 3, 1, 4, 2].map((x) => ({ x, y: 0 }));
    expect(enclosingCircle(line)).toEqual({ centre: { x: 2, y: 0 }, radius: 2 });
  });
});
