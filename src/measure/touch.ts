import { unit, type Vec } from '../geometry/point.ts';
import type { Side, Touch } from '../job/entry-schema.ts';
import type { SitedHole } from '../plan/hole.ts';
import { sideBearing, touchPoint } from '../plan/touch.ts';

/** Where a tape's end lies as seen from the centre of the thing it touches. */
export interface Reach {
  /** Metres, site frame. */
  readonly offset: Vec;
  /** Radius of a round that is touched on its near side, metres: the tape stops that much short of the centre. */
  readonly gap: number;
}

/** Unit normal that looks out of a side, site frame. */
export function outward(side: Side, facing: number): Vec {
  return unit(sideBearing(facing, side));
}

/**
 * Offset of what was touched, by the post's *planned* turn: a twist of the set post is not known here, and shifts the
 * middle of a face sideways only, to first order.
 *
 * @param hole the hole that holds the post; null for a stake or a nail, which have no size
 * @returns null when the thing has no such part
 */
export function reachOf(touch: Touch, hole: SitedHole | null): Reach | null {
  const point = touchPoint(hole?.section ?? null, hole?.facing ?? 0, touch);
  if (point === null) return null;
  return point.kind === 'fixed'
    ? { offset: point.offset, gap: 0 }
    : { offset: { x: 0, y: 0 }, gap: point.radius };
}

/** Centre to face, metres; on a pier the radius. */
export function halfSection(side: Side, { section }: SitedHole): number {
  if (section.kind === 'pier') return section.diameter / 2;
  return (side === 'front' || side === 'back' ? section.depth : section.width) / 2;
}
