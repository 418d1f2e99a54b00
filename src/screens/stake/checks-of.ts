import { STAKE_ALLOWANCE, unseenAllowed } from '../../judge/position.ts';
import type { Situation } from '../../judge/situation.ts';
import { type CheckSet, checkSet } from '../../stakeout/index.ts';

const NONE: CheckSet = { guarding: [], further: [], unguarded: [] };

/** The last that was worked out, and for what: neither the plan nor its place changes from one reading to the next. */
let last: { readonly key: string; readonly set: CheckSet } | null = null;

/** The check pulls of a job whose plan lies on the site; none before. */
export function checksOf({ plan, laid }: Pick<Situation, 'plan' | 'laid'>): CheckSet {
  if (!plan || !laid) return NONE;
  const { holes, baseline } = laid;
  const { instruments, tolerances } = plan;
  const key = JSON.stringify([holes, baseline, instruments, tolerances.position.m]);
  if (last?.key !== key) {
    const shiftAllowed = unseenAllowed(STAKE_ALLOWANCE * tolerances.position.m);
    last = { key, set: checkSet({ holes, baseline, instruments, shiftAllowed }) };
  }
  return last.set;
}
