import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { adviceFor } from './advice.ts';
import { foresee } from './foresight.ts';
import { positionVerdict } from './position.ts';
import type { PullPlan } from './pull-ends.ts';
import type { JobView } from './view.ts';

/** So many pulls to one place, or between two posts, for the sake of a verdict: more repeat one another's mistakes. */
export const MOST_TO_SETTLE = 4;

/** Pulls in order, the job as it would then be known, and whether it would say of the place that it is in or out. */
export interface Settling {
  readonly pulls: readonly PullPlan[];
  readonly ahead: JobView;
  readonly settled: boolean;
}

/**
 * The pulls that would settle a guarded place that is unsure, each the one that takes most off the doubt along its error
 * and as if those before it had been read as predicted. Those that do not settle it together are not worth the walk.
 */
export function settling(view: JobView, thing: Thing, designed: SitePoint): Settling {
  const pulls: PullPlan[] = [];
  let ahead = view;
  const isUnsure = () => positionVerdict(ahead, thing, designed) === 'unsure';
  while (isUnsure() && pulls.length < MOST_TO_SETTLE) {
    const pull = adviceFor(ahead, thing, designed, true)?.pull;
    if (!pull) break;
    ahead = foresee(ahead, pull);
    pulls.push(pull);
  }
  return { pulls, ahead, settled: !isUnsure() };
}
