import { add, scale, unit, type Vec } from '../geometry/point.ts';
import { SIDES } from '../job/entry-schema.ts';
import type { Section } from '../plan/hole.ts';
import { touchOffset } from '../plan/touch.ts';

/** What stands at a place: its outline and where its front face looks, radians. */
export interface Standing {
  readonly section: Section;
  readonly facing: number;
}

/** From the middle of a section to its outside along a bearing, metres. */
export function reachAlong({ section, facing }: Standing, bearing: number): number {
  if (section.kind === 'pier') return section.diameter / 2;
  const turned = bearing - facing;
  const reach = (half: number, share: number) =>
    share === 0 ? Number.POSITIVE_INFINITY : half / Math.abs(share);
  // The front face looks along `facing`, half the depth away; the sides lie half the width off.
  return Math.min(reach(section.depth / 2, Math.cos(turned)), reach(section.width / 2, Math.sin(turned)));
}

/** The corners of a post that stands at `place`, or of a round what lies furthest from `from`. */
export function outermost({ section, facing }: Standing, place: Vec, from: Vec): Vec[] {
  if (section.kind === 'pier') {
    const bearing = Math.atan2(place.y - from.y, place.x - from.x);
    return [add(place, scale(unit(bearing), section.diameter / 2))];
  }
  return SIDES.flatMap((side) => {
    const corner = touchOffset(section, facing, { at: 'corner', side }, 0);
    return corner ? [add(place, corner)] : [];
  });
}
