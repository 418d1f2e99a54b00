import { distance, length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Fix } from '../measure/types.ts';
import type { SitedHole } from '../plan/hole.ts';
import { tapeSigma } from '../plan/tape.ts';
import { blocked } from '../stakeout/blocked.ts';
import { sigmaAlong } from './chance.ts';
import type { Ray } from './local-fix.ts';
import { type JobView, pointOf, postOf, stands } from './view.ts';

/** A pull that could be made now to a thing, and what it would say of its place. */
export interface PossiblePull {
  readonly from: Thing;
  readonly fromAt: SitePoint;
  readonly ray: Ray;
  /** How often the same two things were pulled already: a fresh line guards better than the same one again. */
  readonly before: number;
  /** Whether neither a post nor a house stands in the way; asked last, for it looks at every post. */
  readonly open: () => boolean;
}

/** Shorter pulls say nothing of a direction: two hands' breadths. */
const SHORTEST = 0.2;

/** Every pull that could be made now to a thing: from what stands fixed, within the tape, with no post in the way. */
export const possiblePulls = (view: JobView, thing: Thing, at: SitePoint): PossiblePull[] =>
  pullsInReach(view, thing, at).filter(({ open }) => open());

/**
 * Every pull that the tape allows now to a thing, from what stands fixed; `open` says which have no post in the way. Posts
 * are pulled to from stakes and posts, hole stakes from stakes and hole stakes, the middle of a hole from all that stands.
 *
 * @param at where the thing is, or is to be, site frame
 */
export function pullsInReach(view: JobView, thing: Thing, at: SitePoint): PossiblePull[] {
  const reach = view.plan.instruments.tapeLength.m;
  const standing = standingPosts(view);
  const before = new Map<string, number>();
  for (const { end } of view.pullsOf(thing)) before.set(thingKey(end), (before.get(thingKey(end)) ?? 0) + 1);
  return fixedThings(view, thing).flatMap(({ from, fix }) => {
    const away = distance(fix.place, at);
    if (away < SHORTEST || away > reach) return [];
    return [
      {
        from,
        fromAt: fix.place,
        ray: rayOf(view, fix, at),
        before: before.get(thingKey(from)) ?? 0,
        open: () => !blocked(fix.place, at, besides(standing, from, thing), view.walls),
      },
    ];
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
  const toKey = thingKey(to);
  return [...view.points.values()].flatMap(({ thing, fix }) => {
    // Nobody holds a tape's end in the middle of a hole, and a stake that was dug away is gone.
    const gone = thing.kind === 'dug-hole' || (thing.kind === 'hole-stake' && view.dugHoles.has(thing.hole));
    const marked = thing.kind === 'stake' || thing.kind === 'nail';
    const alike = marked || thing.kind === to.kind || to.kind === 'dug-hole';
    return fix && alike && !gone && thingKey(thing) !== toKey ? [{ from: thing, fix }] : [];
  });
}

/** Posts and piers that stand, where they were measured to stand. */
function standingPosts(view: JobView): SitedHole[] {
  return [...view.sited.values()]
    .filter(({ label }) => stands(view, postOf(label)))
    .map((hole) => ({ ...hole, site: pointOf(view, postOf(hole.label))?.fix?.place ?? hole.site }));
}

/** All but those that are an end of the pull themselves. */
const besides = (posts: readonly SitedHole[], ...ends: readonly Thing[]): SitedHole[] =>
  posts.filter(({ label }) => !ends.some((end) => end.kind === 'post' && end.hole === label));
