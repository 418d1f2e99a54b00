import type { Problem } from '../units/index.ts';

/** What is wrong with a plan. */
export interface PlanProblem extends Problem {
  /** True: no hole should be staked by this plan. False: it can be built, but somebody ought to know. */
  readonly stops: boolean;
}

/** A problem whose sentence starts with its field, as all refusals do. */
export const stop = (field: string, clause: string): PlanProblem => ({
  field,
  text: `${field}: ${clause}`,
  stops: true,
});
export const warn = (field: string, clause: string): PlanProblem => ({
  ...stop(field, clause),
  stops: false,
});
