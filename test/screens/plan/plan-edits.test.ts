import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { type Plan, PlanSchema, type Points } from '../../../src/job/plan-schema.ts';
import { defaultPlan, holesOf, pointsFromCsv } from '../../../src/plan/index.ts';
import * as edits from '../../../src/screens/plan/plan-edits.ts';
import { inches, samplePlan } from '../../job/sample.ts';

/** A plan of three free points, of which one has a height of its own. */
function pointsPlan(): Plan {
  const shape = pointsFromCsv(
    'label,right,front\n1,0,0\n2,8\u2032 0\u2033,0\nGate,0,-6\u2032 0\u2033',
    'ft-in-16',
  );
  if (!shape.ok) throw new Error(shape.problem.text);
  return { ...samplePlan, shape: shape.value, overrides: { Gate: { top: inches('1 0') } } };
}

const labelsOf = (plan: Plan) => holesOf(plan).map(({ label }) => label);

test('a seat is taken away again, and leaves what else is said of the deck', () => {
  const gap = inches('1″');
  expect(edits.withoutSeat({ ...samplePlan, deck: { gap, seat: inches('2″') } }).deck).toEqual({ gap });
  expect(edits.withoutSeat({ ...samplePlan, deck: { seat: inches('2″') } })).toEqual(samplePlan);
});

describe('another shape', () => {
  test('leaves the plan alone when it is the same', () => {
    expect(edits.withShapeKind(samplePlan, 'ring')).toBe(samplePlan);
  });

  test.each(['ring', 'rows', 'points'] as const)('%s fits the schema from every other', (kind) => {
    for (const from of [samplePlan, edits.withShapeKind(samplePlan, 'rows'), pointsPlan()]) {
      const plan = edits.withShapeKind(from, kind);
      expect(plan.shape.kind).toBe(kind);
      expect(v.safeParse(PlanSchema, plan).success).toBe(true);
    }
  });

  test('as points, every hole stays where it was to half a sixteenth, and the pier stays a pier', () => {
    const before = holesOf(samplePlan);
    const after = holesOf(edits.withShapeKind(samplePlan, 'points'));
    expect(after.map(({ label }) => label)).toEqual(before.map(({ label }) => label));
    before.forEach((hole, i) => {
      expect(Math.abs(after[i]!.place.x - hole.place.x)).toBeLessThanOrEqual(0.0254 / 32 + 1e-9);
      expect(Math.abs(after[i]!.place.y - hole.place.y)).toBeLessThanOrEqual(0.0254 / 32 + 1e-9);
      expect(after[i]!.section).toEqual(hole.section);
      expect(after[i]!.top).toBe(hole.top);
      expect(after[i]!.holeDiameter).toBe(hole.holeDiameter);
    });
  });

  test('turns posts to the grid in rows, to the centre on a ring, and drops what single holes had', () => {
    const rows = edits.withShapeKind(samplePlan, 'rows');
    expect(rows.each.holds).toMatchObject({ turned: 'grid' });
    expect(rows.overrides).toEqual({});
    expect(edits.withShapeKind(rows, 'ring').each.holds).toMatchObject({ turned: 'centre' });
  });
});

test('changes of another shape than the plan has change nothing', () => {
  expect(edits.withRows(samplePlan, { columns: 4 })).toBe(samplePlan);
  expect(edits.withRing(pointsPlan(), { count: 9 })).toEqual(pointsPlan());
  expect(
    edits.withPoint(samplePlan, null, { label: 'X', right: inches('1\u2032'), front: inches('1\u2032') }),
  ).toBe(samplePlan);
  expect(edits.withoutPoint(samplePlan, '1')).toBe(samplePlan);
});

test('other units leave every length as it was typed', () => {
  const plan = edits.withUnits(samplePlan, 'm');
  expect(plan).toEqual({ ...samplePlan, units: 'm' });
});

describe('one hole', () => {
  test('has something of its own beside what it had, until it is made like the others', () => {
    const plan = edits.withOwn(samplePlan, '3', { holeDiameter: inches('1 8') });
    expect(plan.overrides['3']).toEqual({ top: inches('3 0 1/2'), holeDiameter: inches('1 8') });
    expect(edits.specOf(plan, '3').holds).toEqual(samplePlan.each.holds);
    expect(edits.withoutOwn(plan, '3').overrides).toEqual({});
    expect(edits.specOf(edits.withoutOwn(plan, '3'), '3')).toEqual(samplePlan.each);
  });

  test('P in the middle of a ring has a spec, not an override', () => {
    const plan = edits.withOwn(samplePlan, 'P', { top: inches('0 9') });
    expect(plan.pier.top).toEqual(inches('0 9'));
    expect(plan.overrides).toEqual(samplePlan.overrides);
    expect(edits.specOf(plan, 'P').top).toEqual(inches('0 9'));
  });

  test('P of free points is a hole like any other', () => {
    const plan = edits.withOwn(edits.withShapeKind(samplePlan, 'points'), 'P', { top: inches('0 9') });
    expect(plan.overrides['P']?.top).toEqual(inches('0 9'));
  });
});

describe('points', () => {
  const point = { label: '4', right: inches('4 0'), front: inches('4 0') };

  test('are added at the end', () => {
    expect(labelsOf(edits.withPoint(pointsPlan(), null, point))).toEqual(['1', '2', 'Gate', '4']);
  });

  test('renamed keep their place in the list and what they had of their own', () => {
    const plan = edits.withPoint(pointsPlan(), 'Gate', { ...point, label: 'Door' });
    expect(labelsOf(plan)).toEqual(['1', '2', 'Door']);
    expect(plan.overrides).toEqual({ Door: { top: inches('1 0') } });
  });

  test('removed take what they had with them', () => {
    const plan = edits.withoutPoint(pointsPlan(), 'Gate');
    expect(labelsOf(plan)).toEqual(['1', '2']);
    expect(plan.overrides).toEqual({});
  });

  test('of a list keep what labels that are still there had', () => {
    const shape = pointsPlan().shape as Points;
    const only = (label: string): Points => ({
      ...shape,
      points: shape.points.filter((p) => p.label === label),
    });
    expect(edits.withPoints(pointsPlan(), only('Gate')).overrides).toHaveProperty('Gate');
    expect(edits.withPoints(pointsPlan(), only('1')).overrides).toEqual({});
  });

  test('are numbered on past labels that are taken', () => {
    const named = (...labels: string[]) => labels.map((label) => ({ ...point, label }));
    expect(edits.nextLabel([])).toBe('1');
    expect(edits.nextLabel(named('1', '2'))).toBe('3');
    expect(edits.nextLabel(named('1', '3'))).toBe('4');
    expect(edits.nextLabel(named('A', '3'))).toBe('4');
  });
});

test('two plans are the same only when every text is', () => {
  expect(edits.samePlan(samplePlan, structuredClone(samplePlan))).toBe(true);
  const retyped = { ...samplePlan.tolerances, position: inches('0.5\u2033') };
  expect(edits.samePlan(samplePlan, edits.withTolerances(samplePlan, retyped))).toBe(false);
  expect(edits.samePlan(defaultPlan('m'), defaultPlan('mm'))).toBe(false);
});
