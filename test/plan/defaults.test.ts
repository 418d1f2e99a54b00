import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { lengthWords } from '../../src/job/length.ts';
import { PlanSchema } from '../../src/job/plan-schema.ts';
import { defaultPlan, defaultsFor, sectionsFor } from '../../src/plan/index.ts';
import { UNITS } from '../../src/units/index.ts';

const valueAt = (plan: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], plan);

describe.each(UNITS)('a new plan in %s', (units) => {
  const plan = defaultPlan(units);

  it('fits the schema', () => {
    expect(v.safeParse(PlanSchema, plan).issues).toBeUndefined();
  });

  it('has every value that the table of defaults names, and each says where it comes from', () => {
    const rows = defaultsFor(units);
    expect(new Set(rows.map(({ path }) => path)).size).toBe(rows.length);
    for (const { path, field, value, from } of rows) {
      // The table's `pier.diameter` stands in the plan under what the pier's hole holds.
      const place = path === 'pier.diameter' ? 'pier.holds.diameter' : path;
      expect(valueAt(plan, place), path).toEqual(value);
      expect(field).not.toBe('');
      expect(from).toMatch(/^.{10,}\.$/);
    }
  });

  it('names the source of every tolerance, and never guesses a frost depth', () => {
    const from = (path: string) => defaultsFor(units).find((row) => row.path === path)?.from;
    for (const key of ['position', 'spacing', 'plumb', 'level'])
      expect(from(`tolerances.${key}`)).toMatch(/Handbook of Construction Tolerances/);
    expect(plan.rules.frostDepth).toBeNull();
    expect(from('rules.frostDepth')).toMatch(/building office/);
  });

  it('can find a post in that stands exactly right: each tolerance is wide enough for its instrument', () => {
    const { tolerances, instruments } = plan;
    expect(tolerances.position.m).toBeGreaterThan(2.4477 * instruments.tapeError.m);
    expect(tolerances.level.m).toBeGreaterThan(1.96 * Math.SQRT2 * instruments.rodError.m);
    expect(tolerances.plumb).toBeGreaterThan(2.4477 * instruments.plumbError);
  });
});

describe('posts that a yard sells', () => {
  it('are named by inches or millimetres, as the job is', () => {
    expect(sectionsFor('ft')[0]!.nominal).toBe('4×4');
    expect(sectionsFor('mm')[0]!.nominal).toBe('90×90');
  });

  it('fit the schema and say where their sizes come from', () => {
    for (const units of UNITS) {
      for (const { nominal, width, depth, from } of sectionsFor(units)) {
        expect(nominal.length).toBeLessThanOrEqual(20);
        expect(width.m).toBeLessThanOrEqual(depth.m);
        expect(lengthWords(width)).toMatch(/″|mm/);
        expect(from).toMatch(/measure a post|Measure a post/);
      }
    }
  });
});
