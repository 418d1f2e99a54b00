import { add, bearingOf, distance, type SitePoint, subtract } from '../geometry/point.ts';
import type { PullEnd, Thing, Touch } from '../job/entry-schema.ts';
import { thingName, touchName, turningOf } from '../job/words.ts';
import { sideToward, touchOffset } from '../plan/touch.ts';
import type { JobView } from './view.ts';

/** A pull that could be made: its ends, and what a level tape would read. */
export interface PullPlan {
  readonly from: PullEnd;
  readonly to: PullEnd;
  /** Metres. */
  readonly expected: number;
}

/**
 * A pull between two things, each touched where it looks towards the other: a stake at its nail, a post at the middle of
 * the nearest face, a round at its near side.
 *
 * @param at where each stands, or is to stand, site frame
 */
export function pullPlan(
  view: JobView,
  from: Thing,
  fromAt: SitePoint,
  to: Thing,
  toAt: SitePoint,
): PullPlan {
  const bearing = bearingOf(subtract(toAt, fromAt));
  const near = endToward(view, from, fromAt, bearing);
  const far = endToward(view, to, toAt, bearing + Math.PI);
  return { from: near.end, to: far.end, expected: distance(near.at, far.at) };
}

function endToward(
  view: JobView,
  thing: Thing,
  at: SitePoint,
  bearing: number,
): { end: PullEnd; at: SitePoint } {
  const hole = thing.kind === 'post' ? view.sited.get(thing.hole) : undefined;
  if (!hole) return { end: { thing, touch: { at: 'nail' } }, at };
  const touch: Touch =
    hole.section.kind === 'pier'
      ? { at: 'near-side' }
      : { at: 'face', side: sideToward(hole.facing, bearing) };
  const offset = touchOffset(hole.section, hole.facing, touch, bearing);
  return { end: { thing, touch }, at: offset ? add(at, offset) : at };
}

/** An end in words: `A`, `post 4, the middle of the outer face`. */
export function endWords(view: JobView, { thing, touch }: Pick<PullEnd, 'thing' | 'touch'>): string {
  const name = thingName(thing, view.plan);
  if (touch.at === 'nail') return name;
  const turning = thing.kind === 'post' ? turningOf(view.plan, thing.hole) : 'grid';
  return `${name}, ${touchName(touch, turning)}`;
}
