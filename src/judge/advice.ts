import { length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import type { Fix } from '../measure/types.ts';
import { chanceWithinDisc, principalAxes, sigmaAlong } from './chance.ts';
import { localFix } from './local-fix.ts';
import { placeTolerance, unseenAllowed } from './position.ts';
import { type PossiblePull, pullsInReach, rayOf } from './possible-pulls.ts';
import { type PullPlan, pullPlan } from './pull-ends.ts';
import { verdictOf } from './verdict.ts';
import { type JobView, pointOf } from './view.ts';

/** The pull that would help a place most, and how the place would then stand. */
export interface Advice {
  readonly pull: PullPlan;
  /** Chance of being within tolerance if the place stays where it was found. */
  readonly chance: number;
  readonly unseenShift: number;
}

/** A repeated line must be this much better than a fresh one to be chosen: it repeats the same mistakes, too. */
const REPEAT_PENALTY = 1.25;
/**
 * A pull that neither settles the matter nor takes a seventh off the doubt is not worth the walk: pushing a loose post
 * nearer its mark is. A fourth pull along the same line takes an eighth.
 */
const WORTH_IT = 6 / 7;

/**
 * Chooses the pull that most reduces what is in the way of a verdict: the unseen shift while the place is unguarded, or
 * else the doubt along its error. Each candidate is one more ray in a local solution: a rank-one update.
 *
 * @returns null when no possible pull helps
 */
export function adviceFor(view: JobView, thing: Thing, designed: SitePoint, guarded: boolean): Advice | null {
  const fix = pointOf(view, thing)?.fix;
  if (!fix) return null;
  const rays = view.pullsOf(thing).flatMap(({ end }) => {
    const other = pointOf(view, end)?.fix;
    return other ? [rayOf(view, other, fix.place)] : [];
  });
  const now = localFix(rays);
  const offset = subtract(fix.place, designed);
  const score = (of: { covariance: Fix['covariance']; unseenShift: number }) =>
    guarded ? doubtAlong(of.covariance, offset) : of.unseenShift;
  const options = pullsInReach(view, thing, fix.place).flatMap((pull) => {
    const then = localFix([...rays, pull.ray]);
    return then ? [{ pull, then, score: score(then) }] : [];
  });
  const best = options.sort((p, q) => weighed(p) - weighed(q)).find(({ pull }) => pull.open());
  if (!best) return null;
  const tolerance = placeTolerance(view, thing);
  const chance = chanceWithinDisc(offset, best.then.covariance, tolerance);
  const { unseenShift } = best.then;
  const settles = guarded ? verdictOf(chance) !== 'unsure' : unseenShift <= unseenAllowed(tolerance);
  if (now && !settles && !(best.score < WORTH_IT * score(now))) return null;
  return {
    pull: pullPlan(view, best.pull.from, best.pull.fromAt, thing, fix.place),
    chance,
    unseenShift,
  };
}

const weighed = ({ pull, score }: { pull: PossiblePull; score: number }): number =>
  score * (pull.before > 0 ? REPEAT_PENALTY : 1);

function doubtAlong(covariance: Fix['covariance'], offset: { x: number; y: number }): number {
  const away = length(offset);
  return away > 0 ? sigmaAlong(covariance, scale(offset, 1 / away)) : principalAxes(covariance).major;
}
