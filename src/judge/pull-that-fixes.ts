import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { principalAxes } from './chance.ts';
import { raysOf } from './foresight.ts';
import { localFix } from './local-fix.ts';
import { type PossiblePull, pullsInReach } from './possible-pulls.ts';
import { type PullPlan, pullPlan } from './pull-ends.ts';
import { type JobView, pointOf } from './view.ts';

/**
 * The next pull to a thing that has no place yet: from what the adjustment asks for, else from a stake, else from what
 * would leave the least doubt of it. Null when nothing that is fixed can be pulled from.
 *
 * @param designed where it is to stand, site frame
 */
export function pullThatFixes(view: JobView, thing: Thing, designed: SitePoint): PullPlan | null {
  const fresh = pullsInReach(view, thing, designed).filter(({ before }) => before === 0);
  const asked = (pointOf(view, thing)?.lack?.pullFrom ?? []).map(thingKey);
  const rays = raysOf(view, thing, designed);
  const worst = ({ ray }: PossiblePull) => {
    const fix = localFix([...rays, ray]);
    return fix ? principalAxes(fix.covariance).major : Number.POSITIVE_INFINITY;
  };
  const rank = (pull: PossiblePull) => {
    const at = asked.indexOf(thingKey(pull.from));
    return at === -1 ? asked.length + (pull.from.kind === 'stake' ? 0 : 1) : at;
  };
  const best = fresh
    .map((pull) => ({ pull, rank: rank(pull), worst: worst(pull) }))
    .sort((p, q) => p.rank - q.rank || compare(p.worst, q.worst))
    .find(({ pull }) => pull.open());
  return best ? pullPlan(view, best.pull.from, best.pull.fromAt, thing, designed) : null;
}

/**
 * Where no single pull guards a place: a line that was read only once, for once more. Read twice, each of two lines guards
 * itself. Null when each was.
 */
export function pullAgain(view: JobView, thing: Thing): PullPlan | null {
  const at = pointOf(view, thing)?.fix?.place;
  const once = at && pullsInReach(view, thing, at).find(({ before, open }) => before === 1 && open());
  return once ? pullPlan(view, once.from, once.fromAt, thing, at) : null;
}

/** Infinities are alike. */
const compare = (a: number, b: number): number => (a === b ? 0 : a - b);
