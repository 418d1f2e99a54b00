import { add, scale, unit, type Vec } from '../geometry/point.ts';
import { SIDES, type Side, type Touch } from '../job/entry-schema.ts';
import type { SitedHole } from '../plan/hole.ts';

/** Where a tape's end lies as seen from the centre of the thing it touches. */
export interface Reach {
  /** Metres, site frame. */
  readonly offset: Vec;
  /** Radius of a round that is touched on its near side, metres: the tape stops that much short of the centre. */
  readonly gap: number;
}

const AT_CENTRE: Reach = { offset: { x: 0, y: 0 }, gap: 0 };

/** Unit normal that looks out of a side, site frame: sides follow each other anticlockwise from the front. */
export function outward(side: Side, facing: number): Vec {
  return unit(facing + (SIDES.indexOf(side) * Math.PI) / 2);
}

/**
 * Offset of what was touched, by the post's *planned* turn: a twist of the set post is not known here, and shifts the
 * middle of a face sideways only, to first order.
 *
 * @param hole the hole that holds the post; null for a stake or a nail, which have no size
 * @returns null when the thing has no such part
 */
export function reachOf(touch: Touch, hole: SitedHole | null): Reach | null {
  if (touch.at === 'nail' || touch.at === 'centre') return AT_CENTRE;
  if (!hole) return null;
  if (touch.at === 'face') return { offset: faceOffset(touch.side, hole), gap: 0 };
  if (touch.at === 'near-side') {
    return hole.section.kind === 'pier' ? { offset: AT_CENTRE.offset, gap: hole.section.diameter / 2 } : null;
  }
  if (hole.section.kind === 'pier') return null;
  const next = SIDES[(SIDES.indexOf(touch.side) + 1) % SIDES.length]!;
  return { offset: add(faceOffset(touch.side, hole), faceOffset(next, hole)), gap: 0 };
}

function faceOffset(side: Side, hole: SitedHole): Vec {
  return scale(outward(side, hole.facing), halfSection(side, hole));
}

/** Centre to face, metres; on a pier the radius. */
export function halfSection(side: Side, { section }: SitedHole): number {
  if (section.kind === 'pier') return section.diameter / 2;
  return (side === 'front' || side === 'back' ? section.depth : section.width) / 2;
}
