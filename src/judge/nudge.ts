import { add, bearingOf, distance, length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import type { Length } from '../job/length.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import type { SitedHole } from '../plan/hole.ts';
import { levelsWhenRight } from './plumb-nudge.ts';
import { type PossiblePull, pullsInReach } from './possible-pulls.ts';
import { pullPlan } from './pull-ends.ts';
import type { Judgement, Nudge } from './types.ts';
import { type JobView, pointOf, postOf, pullsBetween } from './view.ts';
import { moveWords } from './words.ts';
import { HAND, isOnlyJustIn, worthAPush } from './worth-a-push.ts';

/** Stakes A and B, and one neighbour to prove them by. */
const READINGS = 3;

/**
 * How to bring a post that is still loose to its mark. The readings to hold start from where things were measured to
 * stand, not from where they were planned, and end on the post as it will stand.
 *
 * @returns null for a post that is well in, not measured, or in concrete
 */
export function nudgeFor(view: JobView, hole: SitedHole, position: Judgement, poured: boolean): Nudge | null {
  const post = postOf(hole.label);
  const fix = pointOf(view, post)?.fix;
  const well = position.verdict === 'in' && !isOnlyJustIn(position);
  if (poured || !fix || well || position.verdict === 'unmeasured') return null;
  if (position.verdict === 'in' && view.book.pours(hole.label).length > 0) return null;
  const move = subtract(hole.site, fix.place);
  // A colon, for `post 4 3/8″` would be read as four and three eighths.
  const words = `Push the foot of ${thingName(post, view.plan)}: ${moveWords(fix.place, move, view.ground)}.`;
  return {
    distance: length(move),
    bearing: bearingOf(move),
    words,
    readings: readingsToHold(view, hole),
    levels: levelsWhenRight(view, hole),
    worthIt:
      position.verdict === 'out' ||
      worthAPush(position.chance, fix.covariance, position.tolerance, HAND.foot),
  };
}

function readingsToHold(view: JobView, hole: SitedHole): Nudge['readings'] {
  const post = postOf(hole.label);
  const byRank = pullsInReach(view, post, hole.site).sort((p, q) => rank(p, hole) - rank(q, hole));
  const readings: Nudge['readings'][number][] = [];
  for (const { from, fromAt, open } of byRank) {
    if (!open()) continue;
    readings.push(readingAt(view, from, fromAt, hole));
    if (readings.length === READINGS) break;
  }
  return readings;
}

/**
 * What a tape reads when the foot is right. Where the tape was last held to the post above the ground, it is held so again,
 * and then reads a post that keeps its lean. A lean that nobody read is none: its doubt is in the verdict that follows.
 */
function readingAt(
  view: JobView,
  from: Thing,
  fromAt: SitePoint,
  hole: SitedHole,
): Nudge['readings'][number] {
  const post = postOf(hole.label);
  const height = lastHeight(view, from, post);
  const lean = pointOf(view, post)?.lean?.perMetre ?? { x: 0, y: 0 };
  const at = add(hole.site, scale(lean, height?.m ?? 0));
  const { expected, from: near, to } = pullPlan(view, from, fromAt, post, at);
  return { from: near, to: height ? { ...to, height } : to, reading: expected };
}

/** How high above the ground the last tape between two things touched the post; null where that was at the ground. */
function lastHeight(view: JobView, from: Thing, post: Thing): Length | null {
  const last = pullsBetween(view, from, post).at(-1);
  const body = view.pullBodies.get(last?.entry ?? '')?.body;
  const end = body && [body.from, body.to].find(({ thing }) => thingKey(thing) === thingKey(post));
  return end?.height && end.height.m !== 0 ? end.height : null;
}

/** A, then B, then neighbours, then whatever is nearest: all of them in metres, so that the classes stay apart. */
function rank({ from, fromAt }: PossiblePull, hole: SitedHole): number {
  const key = thingKey(from);
  if (key === 'stake:A') return 0;
  if (key === 'stake:B') return 1;
  const near = from.kind === 'post' && hole.neighbours.includes(from.hole);
  return (near ? FAR : 2 * FAR) + distance(fromAt, hole.site);
}

/** Longer than any pull, metres. */
const FAR = 1000;
