import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toSite } from '../../src/geometry/rigid.ts';
import { fitRigid, type Pair } from '../../src/judge/shape.ts';

const pairs = (
  from: readonly (readonly [number, number])[],
  to: readonly (readonly [number, number])[],
): Pair[] =>
  from.map(([x, y], i) => ({ hole: String(i), designed: { x, y }, built: { x: to[i]![0], y: to[i]![1] } }));

describe('rigid fit: Umeyama, IEEE PAMI 13(4), 1991, the worked example of three points', () => {
  const fit = fitRigid(
    pairs(
      [
        [0, 0],
        [1, 0],
        [0, 2],
      ],
      [
        [0, 0],
        [-1, 0],
        [0, 2],
      ],
    ),
  );
  it('turns as published: R = [[0.8320502943, 0.5547001962], [−0.5547001962, 0.8320502943]]', () => {
    expect(Math.abs(Math.cos(fit.turn) - 0.8320502943)).toBeLessThan(1e-9);
    expect(Math.abs(Math.sin(fit.turn) + 0.5547001962)).toBeLessThan(1e-9);
  });
  it('shifts by ȳ − R x̄ without the scale (derived, not published)', () => {
    expect(Math.abs(fit.shift.x + 0.980484)).toBeLessThan(1e-6);
    expect(Math.abs(fit.shift.y - 0.296867)).toBeLessThan(1e-6);
  });
});

describe('rigid fit', () => {
  it('finds the motion that was put in', () => {
    const coordinate = fc.double({ min: -10, max: 10, noNaN: true });
    const point = fc.record({ x: coordinate, y: coordinate });
    const turns = fc.double({ min: -3.1, max: 3.1, noNaN: true });
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 12 }), turns, point, (points, turn, shift) => {
        const spread = Math.max(...points.map((p) => Math.hypot(p.x - points[0]!.x, p.y - points[0]!.y)));
        fc.pre(spread > 0.1);
        const motion = { turn, shift };
        const fit = fitRigid(
          points.map((designed, i) => ({ hole: String(i), designed, built: toSite(motion, designed) })),
        );
        for (const designed of points) {
          const [a, b] = [toSite(fit, designed), toSite(motion, designed)];
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-9);
        }
      }),
    );
  });
});
