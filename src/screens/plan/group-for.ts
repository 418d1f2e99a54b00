import type { Plan } from '../../job/plan-schema.ts';
import type { ChangePlan } from './use-plan-edits.ts';

/** What every group of fields is given. */
export interface GroupFor {
  readonly plan: Plan;
  readonly change: ChangePlan;
}
