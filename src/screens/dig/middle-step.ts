import type { Thing } from '../../job/entry-schema.ts';
import { thingKey } from '../../job/log.ts';
import { adviceFor } from '../../judge/advice.ts';
import { type PossiblePull, pullsInReach } from '../../judge/possible-pulls.ts';
import { type PullPlan, pullPlan } from '../../judge/pull-ends.ts';
import { type JobView, middleOf, pointOf } from '../../judge/view.ts';

/**
 * The next tape to the middle of a dug hole: from A, from B, or from what can be pulled in their stead, until it is fixed;
 * then the one that guards it best. `expected` is what it reads where the hole lies as planned.
 *
 * @returns null where nothing can be pulled, or nothing more is worth it
 */
export function middlePull(view: JobView, hole: string): PullPlan | null {
  const designed = view.sited.get(hole)?.site;
  if (!designed) return null;
  const middle = middleOf(hole);
  const point = pointOf(view, middle);
  if (point?.fix) return adviceFor(view, middle, designed, false)?.pull ?? null;
  const wanted = new Set((point?.lack?.pullFrom ?? []).map(thingKey));
  const [best] = pullsInReach(view, middle, designed)
    .filter(({ before, open }) => before === 0 && open())
    .sort((p, q) => rank(p, wanted) - rank(q, wanted));
  return best ? pullPlan(view, best.from, best.fromAt, middle, designed) : null;
}

/** What fixes it goes first, then A, B, other stakes and nails, posts. */
const rank = ({ from }: PossiblePull, wanted: ReadonlySet<string>): number =>
  (wanted.size === 0 || wanted.has(thingKey(from)) ? 0 : KINDS) + kindOf(from);

const KINDS = 4;

function kindOf(from: Thing): number {
  if (from.kind === 'stake' && from.label === 'A') return 0;
  if (from.kind === 'stake' && from.label === 'B') return 1;
  return from.kind === 'post' ? 3 : 2;
}
