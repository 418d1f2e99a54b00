import { describe, expect, it } from 'vitest';
import { algebraicCircle, fitCircle } from '../../src/geometry/circle-fit.ts';
import { distance } from '../../src/geometry/point.ts';
import { toSite } from '../../src/geometry/rigid.ts';
import { fitRigid } from '../../src/geometry/rigid-fit.ts';
import { apart } from '../measure/build.ts';

describe('Gander, Golub & Strebel, BIT 34 (1994), six points (from memory; the arithmetic agrees)', () => {
  const points = [
    { x: 1, y: 7 },
    { x: 2, y: 6 },
    { x: 5, y: 8 },
    { x: 7, y: 7 },
    { x: 9, y: 5 },
    { x: 3, y: 7 },
  ];
  it('geometric fit: centre (4.7398, 2.9835), radius 4.7142, sum of squares 1.2276', () => {
    const { centre, radius } = fitCircle(points)!;
    expect(apart(centre.x, 4.7398)).toBeLessThan(5e-5);
    expect(apart(centre.y, 2.9835)).toBeLessThan(5e-5);
    expect(apart(radius, 4.7142)).toBeLessThan(5e-5);
    const sum = points.reduce((total, p) => total + (distance(p, centre) - radius) ** 2, 0);
    expect(apart(sum, 1.2276)).toBeLessThan(5e-5);
  });
  it('Kåsa fit of the same: (4.74233, 3.83512), radius 4.10876 (derived, not published)', () => {
    const { centre, radius } = algebraicCircle(points)!;
    expect(apart(centre.x, 4.74233)).toBeLessThan(5e-6);
    expect(apart(centre.y, 3.83512)).toBeLessThan(5e-6);
    expect(apart(radius, 4.10876)).toBeLessThan(5e-6);
  });
});

describe('Umeyama, IEEE PAMI 13(4) (1991), example in the plane (values in gonum, spatial/umeyama)', () => {
  const pairs = [
    { planned: { x: 0, y: 0 }, found: { x: 0, y: 0 } },
    { planned: { x: 1, y: 0 }, found: { x: -1, y: 0 } },
    { planned: { x: 0, y: 2 }, found: { x: 0, y: 2 } },
  ];
  it('rotation cos 0.8320502943, sin −0.5547001962: no mirror image, though one would fit exactly', () => {
    const { motion } = fitRigid(pairs)!;
    expect(apart(Math.cos(motion.turn), 0.8320502943)).toBeLessThan(5e-11);
    expect(apart(Math.sin(motion.turn), -0.5547001962)).toBeLessThan(5e-11);
  });
  it('with the scale held at 1 the shift is (−0.980484, 0.296867) (derived, not published)', () => {
    const { motion, residuals, rms } = fitRigid(pairs)!;
    expect(apart(motion.shift.x, -0.980484)).toBeLessThan(5e-7);
    expect(apart(motion.shift.y, 0.296867)).toBeLessThan(5e-7);
    const squares = residuals.reduce((sum, { x, y }) => sum + x * x + y * y, 0);
    expect(apart(rms, Math.sqrt(squares / 3))).toBeLessThan(1e-12);
    expect(distance(toSite(motion, pairs[1]!.planned), pairs[1]!.found)).toBeGreaterThan(0.1);
  });
});
