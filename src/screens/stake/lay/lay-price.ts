import type { Plan } from '../../../job/plan-schema.ts';
import { groundLines, type Hole, type LaidLine, type LaidOn, layPlan } from '../../../plan/index.ts';
import { judgeStakes, type StakeChoice } from '../../../stakeout/index.ts';
import type { JobBook } from '../../job-book.ts';
import { priceToAsk, proposal } from '../own-price.ts';
import { placesIn } from './use-lay.ts';

/** What A and B give as they will be logged, and the lines on the ground as they then lie. */
export function laidChoice(
  plan: Plan,
  holes: readonly Hole[],
  on: LaidOn,
): { readonly choice: StakeChoice; readonly lines: readonly LaidLine[] } {
  const { site, a, b } = placesIn(on);
  const laid = layPlan(site, holes);
  const { lines } = groundLines(plan, holes, laid.ok ? laid.value : null);
  return { choice: judgeStakes(a, b, holes, plan.instruments, plan.units, lines), lines };
}

/** As `priceToAsk`, of a plan laid on what is there. The best places are looked for here: ask at the tap, not at every key. */
export function priceOf({ plan, holes }: JobBook['situation'], on: LaidOn): string | null {
  if (!plan) return null;
  const { choice, lines } = laidChoice(plan, holes, on);
  return priceToAsk(choice, proposal(plan, holes, lines), plan.units);
}
