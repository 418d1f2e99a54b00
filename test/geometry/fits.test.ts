import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../src/geometry/circle-fit.ts';
import { distance } from '../../src/geometry/point.ts';
import { toSite } from '../../src/geometry/rigid.ts';
import { fitRigid } from '../../src/geometry/rigid-fit.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = fc.record({ x: number(-20, 20), y: number(-20, 20) });

describe('fitRigid', () => {
  it('gives back the motion that was made', () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 2, maxLength: 12 }),
        number(-3, 3),
        place,
        (points, turn, shift) => {
          fc.pre(points.some((p) => distance(p, points[0]!) > 0.1));
          const fit = fitRigid(
            points.map((planned) => ({ planned, found: toSite({ turn, shift }, planned) })),
          )!;
          expect(Math.abs(fit.motion.turn - turn)).toBeLessThan(1e-9);
          expect(distance(fit.motion.shift, shift)).toBeLessThan(1e-7);
          expect(fit.rms).toBeLessThan(1e-8);
        },
      ),
    );
  });

  it('heeds weights', () => {
    const planned = [
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 0, y: 2 },
    ];
    const pairs = planned.map((p, i) => ({ planned: p, found: i === 2 ? { x: 0, y: 2.3 } : p }));
    const light = fitRigid(pairs.map((pair, i) => ({ ...pair, weight: i === 2 ? 1e-9 : 1 })))!;
    expect(distance(light.motion.shift, { x: 0, y: 0 })).toBeLessThan(1e-6);
    expect(distance(light.residuals[2]!, { x: 0, y: 0.3 })).toBeLessThan(1e-6);
  });

  it('tells no turn by one place', () => {
    expect(fitRigid([])).toBeNull();
    expect(fitRigid([{ planned: { x: 1, y: 1 }, found: { x: 2, y: 2 } }])).toBeNull();
    const same = { planned: { x: 1, y: 1 }, found: { x: 2, y: 2 } };
    expect(fitRigid([same, same])).toBeNull();
  });
});

describe('fitCircle', () => {
  it('gives back the circle that points were put on', () => {
    fc.assert(
      fc.property(
        place,
        number(0.5, 10),
        fc.integer({ min: 3, max: 20 }),
        number(0, 6),
        (centre, radius, count, from) => {
          const points = Array.from({ length: count }, (_, i) => ({
            x: centre.x + radius * Math.cos(from + (4 * i) / count),
            y: centre.y + radius * Math.sin(from + (4 * i) / count),
          }));
          const circle = fitCircle(points)!;
          expect(distance(circle.centre, centre)).toBeLessThan(1e-8);
          expect(Math.abs(circle.radius - radius)).toBeLessThan(1e-8);
        },
      ),
    );
  });

  it('knows none through two points, one place, or a line', () => {
    expect(
      fitCircle([
        { x: 0, y: 0 },
        { x: 1, y: 1 },
      ]),
    ).toBeNull();
    expect(fitCircle(new Array(4).fill({ x: 3, y: 3 }))).toBeNull();
    expect(fitCircle([0, 1, 2, 3].map((x) => ({ x, y: 2 * x })))).toBeNull();
  });
});
