import { length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import type { Fix } from '../measure/types.ts';
import { chanceWithinDisc, principalAxes, sigmaAlong } from './chance.ts';
import { localFix, type Ray } from './local-fix.ts';
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
 * Among stakes of holes that nothing guards, a pull that is likely to guard both of its ends comes before one that would guard
 * only this one: fewer pulls then do.
 *
 * @returns null when no possible pull helps
 */
export function adviceFor(view: JobView, thing: Thing, designed: SitePoint, guarded: boolean): Advice | null {
  const fix = pointOf(view, thing)?.fix;
  if (!fix) return null;
  const rays = raysTo(view, thing, fix);
  const now = localFix(rays);
  const offset = subtract(fix.place, designed);
  const score = (of: { covariance: Fix['covariance']; unseenShift: number }) =>
    guarded ? doubtAlong(of.covariance, offset) : of.unseenShift;
  const options = pullsInReach(view, thing, fix.place).flatMap((pull) => {
    const then = localFix([...rays, pull.ray]);
    return then ? [{ pull, then, score: score(then) }] : [];
  });
  const tolerance = placeTolerance(view, thing);
  const ranked = options.sort((p, q) => weighed(p) - weighed(q));
  const both =
    guarded || thing.kind !== 'hole-stake'
      ? undefined
      : ranked
          .filter(({ then }) => then.unseenShift <= unseenAllowed(tolerance))
          .find(({ pull }) => guardsItsStart(view, pull, fix) && pull.open());
  const best = both ?? ranked.find(({ pull }) => pull.open());
  if (!best) return null;
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

/** What is known of a place from the pulls to it that there are. */
const raysTo = (view: JobView, thing: Thing, fix: Fix): Ray[] =>
  view.pullsOf(thing).flatMap(({ end }) => {
    const other = pointOf(view, end)?.fix;
    return other ? [rayOf(view, other, fix.place)] : [];
  });

/** Whether a pull would guard the stake that it starts from as well, which nothing guards yet. */
function guardsItsStart(view: JobView, { from }: PossiblePull, toFix: Fix): boolean {
  const fix = pointOf(view, from)?.fix;
  if (from.kind !== 'hole-stake' || !fix) return false;
  const allowed = unseenAllowed(placeTolerance(view, from));
  if (fix.unseenShift <= allowed) return false;
  const then = localFix([...raysTo(view, from, fix), rayOf(view, toFix, fix.place)]);
  return then !== null && then.unseenShift <= allowed;
}

const weighed = ({ pull, score }: { pull: PossiblePull; score: number }): number =>
  score * (pull.before > 0 ? REPEAT_PENALTY : 1);

function doubtAlong(covariance: Fix['covariance'], offset: { x: number; y: number }): number {
  const away = length(offset);
  return away > 0 ? sigmaAlong(covariance, scale(offset, 1 / away)) : principalAxes(covariance).major;
}
