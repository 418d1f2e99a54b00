import type { Plan } from '../../src/job/plan-schema.ts';
import { holesOf, type LaidPlan, layPlan, type SitedHole } from '../../src/plan/index.ts';
import { metres } from '../plan/plans.ts';

type Place = readonly [number, number];

/** A plan laid on stakes at these places of the plan frame, metres. */
export function laidOn(plan: Plan, [ax, ay]: Place, [bx, by]: Place): LaidPlan {
  const place = (x: number, y: number) => ({ right: metres(x), front: metres(y) });
  const laid = layPlan({ a: place(ax, ay), b: place(bx, by) }, holesOf(plan));
  if (!laid.ok) throw new Error(laid.problem.text);
  return laid.value;
}

export function holeOf(holes: readonly SitedHole[], label: string): SitedHole {
  const hole = holes.find((one) => one.label === label);
  if (!hole) throw new Error(`no hole ${label}`);
  return hole;
}
