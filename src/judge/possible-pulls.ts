import { distance, length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Fix } from '../measure/types.ts';
import type { SitedHole } from '../plan/hole.ts';
import { tapeSigma } from '../plan/tape.ts';
import { blocked } from '../stakeout/blocked.ts';
import { sigmaAlong } from './chance.ts';
import type { Ray } from './local-fix.ts';
import { type PullPlan, pullPlan } from './pull-ends.ts';
import { type JobView, pointOf, postOf, stands } from './view.ts';

/** A pull that could be made now, and what it would say of the thing at its far end. */
export interface PossiblePull extends PullPlan {
  readonly ray: Ray;
  /** How often the same two things were pulled already: a fresh line guards better than the same one again. */
  readonly before: number;
}

/** Shorter pulls say nothing of a direction: two hands' breadths. */
const SHORTEST = 0.2;

/**
 * Every pull that could be made now to a thing: from what stands fixed, within the tape, with no post in the way. Posts
 * are pulled to from stakes and posts, hole stakes from stakes and hole stakes.
 *
 * @param at where the thing is, or is to be, site frame
 */
export function possiblePulls(view: JobView, thing: Thing, at: SitePoint): PossiblePull[] {
  const reach = view.plan.instruments.tapeLength.m;
  return fixedThings(view, thing).flatMap(({ from, fix }) => {
    const plan = pullPlan(view, from, fix.place, thing, at);
    const away = distance(fix.place, at);
    if (away < SHORTEST || plan.expected > reach || blocked(fix.place, at, inTheWay(view, from, thing)))
      return [];
    return [{ ...plan, ray: rayOf(view, fix, at), before: timesPulled(view, from, thing) }];
  });
}

/** What a pull from a fixed thing says of a place. */
export function rayOf(view: JobView, from: Pick<Fix, 'place' | 'covariance'>, at: SitePoint): Ray {
  const line = subtract(at, from.place);
  const along = scale(line, 1 / length(line));
  const tape = tapeSigma(length(line), view.plan.instruments);
  return { along, sigma: Math.hypot(tape, sigmaAlong(from.covariance, along)) };
}

function fixedThings(view: JobView, to: Thing): { from: Thing; fix: Fix }[] {
  return [...view.points.values()].flatMap(({ thing, fix }) => {
    const alike = thing.kind === 'stake' || thing.kind === 'nail' || thing.kind === to.kind;
    const gone = thing.kind === 'hole-stake' && view.dugHoles.has(thing.hole);
    return fix && alike && !gone && thingKey(thing) !== thingKey(to) ? [{ from: thing, fix }] : [];
  });
}

/** Posts and piers that stand, where they were measured to stand, but for the ends of the pull. */
function inTheWay(view: JobView, from: Thing, to: Thing): SitedHole[] {
  const ends = [thingKey(from), thingKey(to)];
  return [...view.sited.values()]
    .filter(({ label }) => stands(view, postOf(label)) && !ends.includes(thingKey(postOf(label))))
    .map((hole) => ({ ...hole, site: pointOf(view, postOf(hole.label))?.fix?.place ?? hole.site }));
}

const timesPulled = (view: JobView, one: Thing, other: Thing): number =>
  view.pullsOf(other).filter(({ end }) => thingKey(end) === thingKey(one)).length;
