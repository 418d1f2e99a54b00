import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { currentPlan, ofKind, standing } from '../job/log.ts';
import type { Plan } from '../job/plan-schema.ts';
import { type Measured, measureWays, type TapeInHand, tapeInHand } from '../measure/index.ts';
import type { Hole } from '../plan/hole.ts';
import { checkPlan, type GroundLines, groundLines, holesOf, type LaidPlan, layPlan } from '../plan/index.ts';
import type { Problem } from '../units/index.ts';
import { waysToLeaveOut } from './leave-out.ts';

/** What a log comes to before anything is judged: the steps that the screens and `assess` share. */
export interface Situation {
  /** Entries that stand, in order. */
  readonly entries: readonly Entry[];
  readonly plan: Plan | null;
  readonly holes: readonly Hole[];
  readonly site: EntryOf<'site'>['body'] | null;
  /** The plan laid on the site; null until A and B are placed. */
  readonly laid: LaidPlan | null;
  readonly measured: Measured | null;
  /** The same without what is believed misread, in each of the `waysToLeaveOut`; empty when nothing is. */
  readonly measuredWithout: readonly Measured[];
  /** What the next pull is made with, as far as is known; null for a tape without corrections of its own. */
  readonly inHand: TapeInHand | null;
  /** What is wrong with the plan or with the places of A and B. */
  readonly problems: readonly Problem[];
}

/** Derives everything but verdicts from a log. Pure; any log will do, an empty one too. */
export function situate(log: readonly Entry[]): Situation {
  const entries = standing(log);
  const plan = currentPlan(entries);
  const site = ofKind(entries, 'site').at(-1)?.body ?? null;
  const unmeasured = { laid: null, measured: null, measuredWithout: [] };
  if (!plan) return { entries, plan, holes: [], site, ...unmeasured, inHand: null, problems: [] };
  const holes = holesOf(plan);
  const problems = checkPlan(plan);
  const inHand = tapeInHand(entries, plan.instruments);
  const known = { entries, plan, holes, site, inHand };
  if (!site) return { ...known, ...unmeasured, problems };
  const designed = layPlan(
    site,
    holes,
    ofKind(entries, 'reference').map(({ body }) => body),
  );
  if (!designed.ok) return { ...known, ...unmeasured, problems: [...problems, designed.problem] };
  // The plan lies on A and the direction to B, whatever A–B was pulled to be: so its holes do not depend on the pulls.
  const laid = designed.value;
  const ways = measureWays(entries, laid.holes, laid.baseline, plan.instruments, laid.references);
  const measured = ways.all;
  const measuredWithout = waysToLeaveOut(measured.suspicions).map((out) =>
    out.length === 0 ? measured : ways.without(out),
  );
  return { ...known, laid, measured, measuredWithout, problems };
}

/**
 * Lines on the ground, in the plan frame. Those that are told from A and B lie by where these stood when the plan was laid, as
 * the frame has them: a stake that is driven again elsewhere takes no boundary with it.
 */
export function groundLinesOf({
  plan,
  holes,
  laid,
  measured,
}: Pick<Situation, 'plan' | 'holes' | 'laid' | 'measured'>): GroundLines {
  if (!plan) return { lines: [], waiting: [], problems: [] };
  const baseline = measured?.frameBaseline ?? laid?.baseline ?? 0;
  return groundLines(plan, holes, laid && { motion: laid.motion, baseline });
}
