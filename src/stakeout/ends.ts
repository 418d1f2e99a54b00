import { bearingOf, subtract, type Vec } from '../geometry/point.ts';
import type { PullEnd } from '../job/entry-schema.ts';
import { type SitedHole, sideToward, touchOffset } from '../plan/index.ts';

export const stakeEnd = (label: string): PullEnd => ({
  thing: { kind: 'stake', label },
  touch: { at: 'nail' },
});

export const holeStakeEnd = (hole: string): PullEnd => ({
  thing: { kind: 'hole-stake', hole },
  touch: { at: 'nail' },
});

/** The end of a tape on a set post: the middle of the face that looks best to `toward`, or a round's near side. */
export function postEnd(hole: SitedHole, toward: Vec): PullEnd {
  const thing = { kind: 'post', hole: hole.label } as const;
  if (hole.section.kind === 'pier') return { thing, touch: { at: 'near-side' } };
  const side = sideToward(hole.facing, bearingOf(subtract(toward, hole.site)));
  return { thing, touch: { at: 'face', side } };
}

/**
 * The point that an end on a set post touches when the tape's other end is at `other`, site frame.
 *
 * @throws RangeError when the post has no such place: a planned end always does
 */
export function touchedPoint(hole: SitedHole, end: PullEnd, other: Vec): Vec {
  const toward = bearingOf(subtract(other, hole.site));
  const offset = touchOffset(hole.section, hole.facing, end.touch, toward);
  if (!offset) throw new RangeError(`Hole ${hole.label} has no ${end.touch.at} to touch`);
  return { x: hole.site.x + offset.x, y: hole.site.y + offset.y };
}

/**
 * The two points that a tape touches between two set posts, each touched as its end says. Faces lie still; a round's
 * near side looks to whatever the other end touches, and two rounds touch along the line of their centres.
 */
export function touchedLine(p: SitedHole, pEnd: PullEnd, q: SitedHole, qEnd: PullEnd): readonly [Vec, Vec] {
  const pAim = pEnd.touch.at === 'near-side' ? p.site : touchedPoint(p, pEnd, q.site);
  const qAim = qEnd.touch.at === 'near-side' ? q.site : touchedPoint(q, qEnd, p.site);
  return [touchedPoint(p, pEnd, qAim), touchedPoint(q, qEnd, pAim)];
}
