import { length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import type { Fix } from '../measure/types.ts';
import { chanceWithinDisc, principalAxes, sigmaAlong } from './chance.ts';
import { localFix, type Ray } from './local-fix.ts';
import { type PossiblePull, possiblePulls, rayOf } from './possible-pulls.ts';
import { type JobView, pointOf } from './view.ts';

/** The pull that would help a place most, and how the place would then stand. */
export interface Advice {
  readonly pull: PossiblePull;
  /** Chance of being within tolerance if the place stays where it was found. */
  readonly chance: number;
  readonly unseenShift: number;
}

/** A repeated line must be this much better than a fresh one to be chosen: it repeats the same mistakes, too. */
const REPEAT_PENALTY = 1.25;
/** Below this share of what the place knew before, another pull is not worth walking for. */
const WORTH_IT = 0.97;

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
  let best: { advice: Advice; score: number } | null = null;
  for (const pull of possiblePulls(view, thing, fix.place)) {
    const then = localFix([...rays, pull.ray]);
    if (!then) continue;
    const value = score(then) * (pull.before > 0 ? REPEAT_PENALTY : 1);
    if (best && best.score <= value) continue;
    const chance = chanceWithinDisc(offset, then.covariance, view.plan.tolerances.position.m);
    best = { advice: { pull, chance, unseenShift: then.unseenShift }, score: score(then) };
  }
  if (!best) return null;
  return now && !(best.score < WORTH_IT * score(now)) ? null : best.advice;
}

function doubtAlong(covariance: Fix['covariance'], offset: { x: number; y: number }): number {
  const away = length(offset);
  return away > 0 ? sigmaAlong(covariance, scale(offset, 1 / away)) : principalAxes(covariance).major;
}

export type { Ray };
