import { describe, expect, it } from 'vitest';
import { defaultPlan } from '../../src/plan/index.ts';

const INCH = 0.0254;
const FOOT = 12 * INCH;
const plan = defaultPlan('ft-in-16');
const metric = defaultPlan('mm');

/** Ballast, Handbook of Construction Tolerances, as quoted by JLC ("Foundation and framing tolerances", jlconline.com). */
describe('tolerances that a new plan starts with', () => {
  it('layout of 10 to 100 feet: ±1/4 in', () => {
    expect(plan.tolerances.position.m).toBeCloseTo(INCH / 4, 12);
    expect(plan.tolerances.spacing.m).toBeCloseTo(INCH / 4, 12);
  });

  it('level of a foundation: 1/4 in in 10 feet', () => {
    expect(plan.tolerances.level.m).toBeCloseTo(INCH / 4, 12);
  });

  it('plumb of rough framing: 1/4 in in 10 feet, 2.08 mm in a metre, 0.119°', () => {
    expect(plan.tolerances.plumb).toBeCloseTo((0.25 * INCH) / (10 * FOOT), 12);
    expect(plan.tolerances.plumb * 1000).toBeCloseTo(2.08, 2);
    expect((Math.atan(plan.tolerances.plumb) * 180) / Math.PI).toBeCloseTo(0.119, 3);
  });

  it('metric ones are rounded, and never coarser', () => {
    for (const key of ['position', 'spacing', 'level'] as const) {
      expect(metric.tolerances[key].m).toBe(0.006);
      expect(metric.tolerances[key].m).toBeLessThanOrEqual(plan.tolerances[key].m);
    }
  });
});

/** IRC R403.1.4: exterior footings at least 12 in (305 mm) below undisturbed ground (as quoted at jaspector.com). */
it('least embedment: 12 in, 305 mm', () => {
  expect(plan.rules.embedment.m).toBeCloseTo(FOOT, 12);
  expect(metric.rules.embedment.m).toBeCloseTo(0.305, 12);
});

/** ACI 318-19, table 20.5.1.3.1: 3 in (75 mm) of cover where concrete is cast against earth (from memory). */
it('the hole of a pier leaves 3 in, 75 mm, all round it', () => {
  for (const [{ pier }, cover] of [
    [plan, 3 * INCH],
    [metric, 0.075],
  ] as const) {
    if (pier.holds.kind !== 'pier') throw new Error('the pier is a post');
    expect((pier.holeDiameter.m - pier.holds.diameter.m) / 2).toBeCloseTo(cover, 12);
  }
});
