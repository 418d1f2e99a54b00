import { bearingOf, distance, length, subtract } from '../geometry/point.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import type { SitedHole } from '../plan/hole.ts';
import { type PossiblePull, pullsInReach } from './possible-pulls.ts';
import { pullPlan } from './pull-ends.ts';
import type { Judgement, Nudge } from './types.ts';
import { type JobView, pointOf, postOf } from './view.ts';
import { moveWords } from './words.ts';

/** Stakes A and B, and one neighbour to prove them by. */
const READINGS = 3;

/**
 * How to bring a post that is still loose to its mark. The readings to hold start from where things were measured to
 * stand, not from where they were planned, and end on the post as it will stand.
 *
 * @returns null for a post that is in, not measured, or in concrete
 */
export function nudgeFor(view: JobView, hole: SitedHole, position: Judgement, poured: boolean): Nudge | null {
  const post = postOf(hole.label);
  const fix = pointOf(view, post)?.fix;
  if (poured || !fix || position.verdict === 'in' || position.verdict === 'unmeasured') return null;
  const move = subtract(hole.site, fix.place);
  // A colon, for `post 4 3/8″` would be read as four and three eighths.
  const words = `Push the foot of ${thingName(post, view.plan)}: ${moveWords(fix.place, move, view.ground)}.`;
  return { distance: length(move), bearing: bearingOf(move), words, readings: readingsToHold(view, hole) };
}

function readingsToHold(view: JobView, hole: SitedHole): Nudge['readings'] {
  const post = postOf(hole.label);
  const byRank = pullsInReach(view, post, hole.site).sort((p, q) => rank(p, hole) - rank(q, hole));
  const readings: Nudge['readings'][number][] = [];
  for (const { from, fromAt, open } of byRank) {
    if (!open()) continue;
    const { expected, ...ends } = pullPlan(view, from, fromAt, post, hole.site);
    readings.push({ ...ends, reading: expected });
    if (readings.length === READINGS) break;
  }
  return readings;
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
