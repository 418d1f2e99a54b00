import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, subtract, unit } from '../../src/geometry/point.ts';
import { roundedLength } from '../../src/job/length.ts';
import { holesOf, LEAST_BASELINE, layPlan } from '../../src/plan/index.ts';
import { metres, ringPlan } from './plans.ts';

const place = (right: number, front: number) => ({ right: metres(right), front: metres(front) });
const holes = holesOf(ringPlan({ count: 7, pier: true }));

function laid(a: [number, number], b: [number, number]) {
  const result = layPlan({ a: place(...a), b: place(...b) }, holes);
  if (!result.ok) throw new Error(result.problem.text);
  return result.value;
}

describe('laying the plan on A and B', () => {
  it('puts A at the origin and B on the x-axis', () => {
    const { baseline, holes: sited } = laid([-4, -5], [4, -5]);
    expect(baseline).toBeCloseTo(8, 12);
    const pier = sited.find(({ label }) => label === 'P')!;
    expect(pier.site.x).toBeCloseTo(4, 12);
    expect(pier.site.y).toBeCloseTo(5, 12);
    expect(sited[0]!.site.y).toBeCloseTo(8, 12);
  });

  it('turns the posts with the plan', () => {
    // A–B runs to the plan's back, so the front lies towards A.
    const { holes: sited } = laid([-5, 4], [-5, -4]);
    expect(Math.cos(sited[0]!.facing)).toBeCloseTo(-1, 12);
  });

  it('is rigid: all distances between holes stay, and so does which way round they run', () => {
    const number = fc.integer({ min: -20000, max: 20000 }).map((mm) => mm / 1000);
    fc.assert(
      fc.property(fc.tuple(number, number), fc.tuple(number, number), (a, b) => {
        fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1]) >= LEAST_BASELINE);
        const { holes: sited } = laid(a, b);
        holes.forEach((p, i) => {
          holes.forEach((q, j) => {
            expect(distance(sited[i]!.site, sited[j]!.site)).toBeCloseTo(distance(p.place, q.place), 9);
          });
          const fromA = distance(p.place, { x: a[0], y: a[1] });
          const fromB = distance(p.place, { x: b[0], y: b[1] });
          expect(Math.hypot(sited[i]!.site.x, sited[i]!.site.y)).toBeCloseTo(fromA, 9);
          expect(distance(sited[i]!.site, { x: Math.hypot(a[0] - b[0], a[1] - b[1]), y: 0 })).toBeCloseTo(
            fromB,
            9,
          );
          // A turned-to-centre post still looks away from the laid centre.
          const centre = sited.at(-1)!.site;
          if (p.label !== 'P') {
            const away = unit(sited[i]!.facing);
            const out = subtract(sited[i]!.site, centre);
            expect(away.x * out.x + away.y * out.y).toBeCloseTo(3, 9);
          }
        });
        const [o, p, q] = [sited.at(-1)!.site, sited[0]!.site, sited[1]!.site];
        expect((p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x)).toBeLessThan(0);
      }),
    );
  });

  it.each([
    ['in one place', place(1, 1), place(1, 1)],
    ['a hand apart', place(0, 0), place(0.1, 0)],
  ])('refuses A and B %s', (_, a, b) => {
    const result = layPlan({ a, b }, holes);
    expect(result).toMatchObject({ ok: false, problem: { field: 'A and B' } });
    if (!result.ok) expect(result.problem.text).toMatch(/must be 0\.500 m apart or more/);
  });

  it('refuses them in the units they were typed in', () => {
    const inch = { right: roundedLength(0, 'ft-in-16'), front: roundedLength(0, 'ft-in-16') };
    const result = layPlan({ a: inch, b: inch }, holes);
    expect(!result.ok && result.problem.text).toContain('1′ 7 11/16″');
  });
});
