import { distance, type SitePoint } from '../geometry/point.ts';
import type { PullEnd, Thing } from '../job/entry-schema.ts';
import { postEnd, touchedPoint } from '../stakeout/ends.ts';
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
  const near = endToward(view, from, fromAt, toAt);
  const far = endToward(view, to, toAt, fromAt);
  return { from: near.end, to: far.end, expected: distance(near.at, far.at) };
}

function endToward(
  view: JobView,
  thing: Thing,
  at: SitePoint,
  other: SitePoint,
): { end: PullEnd; at: SitePoint } {
  const hole = thing.kind === 'post' ? view.sited.get(thing.hole) : undefined;
  if (!hole) return { end: { thing, touch: { at: thing.kind === 'dug-hole' ? 'centre' : 'nail' } }, at };
  const here = { ...hole, site: at };
  const end = postEnd(here, other);
  return { end, at: touchedPoint(here, end, other) };
}
