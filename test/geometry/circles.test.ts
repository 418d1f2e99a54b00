import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circlesMeet, mirrored } from '../../src/geometry/circles.ts';
import { cross, distance, subtract } from '../../src/geometry/point.ts';

const place = fc.record({
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
});

describe('circlesMeet', () => {
  it('gives points on both circles, left and right of the line of centres', () => {
    fc.assert(
      fc.property(place, place, place, (a, b, p) => {
        // Nearer stakes than the least baseline are refused: over 1 cm, 40 m away, rounding alone is worth 10 µm.
        fc.pre(distance(a, b) > 0.5);
        const meeting = circlesMeet(a, distance(a, p), b, distance(b, p));
        expect(meeting).not.toBeNull();
        const { left, right } = meeting!;
        // Near the line of centres the square root magnifies rounding: its argument is known to about 1e-12.
        const within = 1e-5;
        for (const point of [left, right]) {
          expect(Math.abs(distance(point, a) - distance(a, p))).toBeLessThan(within);
          expect(Math.abs(distance(point, b) - distance(b, p))).toBeLessThan(within);
        }
        const line = subtract(b, a);
        expect(cross(line, subtract(left, a))).toBeGreaterThanOrEqual(cross(line, subtract(right, a)));
        expect(Math.min(distance(left, p), distance(right, p))).toBeLessThan(within);
      }),
    );
  });

  it('gives the point where they touch, though rounding says that they just miss', () => {
    const [a, b, p] = [0, -0.014379709614375498, -0.002644599657633233].map((x) => ({ x, y: 0 }));
    const { left } = circlesMeet(a!, distance(a!, p!), b!, distance(b!, p!))!;
    expect(distance(left, p!)).toBeLessThan(1e-12);
  });

  it('gives the nearest miss when the circles do not reach each other', () => {
    const apart = circlesMeet({ x: 0, y: 0 }, 1, { x: 4, y: 0 }, 1)!;
    expect(apart).toEqual({ left: { x: 2, y: 0 }, right: { x: 2, y: 0 }, meets: false });
    const inside = circlesMeet({ x: 0, y: 0 }, 5, { x: 1, y: 0 }, 1)!;
    // The small circle's far side is at 2, the large one's at 5.
    expect(inside).toEqual({ left: { x: 3.5, y: 0 }, right: { x: 3.5, y: 0 }, meets: false });
    const round = circlesMeet({ x: 1, y: 0 }, 1, { x: 0, y: 0 }, 5)!;
    expect(round.left.x).toBeCloseTo(3.5, 12);
    expect(round.meets).toBe(false);
  });

  it('knows no line through two circles about one centre', () => {
    expect(circlesMeet({ x: 1, y: 1 }, 1, { x: 1, y: 1 }, 2)).toBeNull();
  });
});

describe('mirrored', () => {
  it('is its own undoing and keeps distances to the line', () => {
    fc.assert(
      fc.property(place, place, place, (p, a, b) => {
        // Nearer stakes than the least baseline are refused: over 1 cm, 40 m away, rounding alone is worth 10 µm.
        fc.pre(distance(a, b) > 0.5);
        const image = mirrored(p, a, b);
        expect(distance(mirrored(image, a, b), p)).toBeLessThan(1e-6);
        expect(Math.abs(distance(image, a) - distance(p, a))).toBeLessThan(1e-6);
      }),
    );
  });

  it('leaves a point alone when there is no line', () => {
    expect(mirrored({ x: 3, y: 4 }, { x: 1, y: 1 }, { x: 1, y: 1 })).toEqual({ x: 3, y: 4 });
  });
});
