import type { Plan } from '../job/plan-schema.ts';
import { checkHoles } from './check-holes.ts';
import { checkInstruments } from './check-instruments.ts';
import { checkSizes } from './check-sizes.ts';
import { checkSupplies } from './check-supplies.ts';
import { FIELDS } from './fields.ts';
import { holesOf } from './holes.ts';
import { type PlanProblem, warn } from './plan-problem.ts';

/**
 * Trouble with a plan that its schema cannot see, since it lies between fields: each a sentence that names the field,
 * what is wrong and what would be right. Empty when there is none. What stops the work comes first.
 */
export function checkPlan(plan: Plan): PlanProblem[] {
  const sizes = checkSizes(plan);
  // Holes made of impossible sizes would only say the same trouble again in other words.
  const holes = sizes.length > 0 ? [] : holesOf(plan);
  const all = [
    ...sizes,
    ...checkHoles(plan, holes),
    ...checkRules(plan),
    ...checkInstruments(plan, holes),
    ...checkSupplies(plan),
  ];
  return [...all.filter(({ stops }) => stops), ...all.filter(({ stops }) => !stops)];
}

function checkRules({ rules }: Plan): PlanProblem[] {
  if (rules.frostDepth !== null) return [];
  return [
    warn(FIELDS.frostDepth, 'it is not known yet; ask the local building office, and type what they say.'),
  ];
}
