import { type PlanPoint, scale, unit } from '../geometry/point.ts';
import type { Ring } from '../job/plan-schema.ts';
import type { Section } from './hole.ts';

/** Bearing of the plan's front, +y. */
export const FRONT = Math.PI / 2;

/**
 * Radius of the circle through a ring's post centres, metres, from whichever size the drawing gives.
 *
 * With n posts, apothem a = R cos(pi/n) and side s = 2 R sin(pi/n) (any text on regular polygons):
 *
 * - `radius`: the size itself.
 * - `outer-faces`: the circle runs through the middles of the outer faces, half an *actual* section outside the
 *   centres. Posts turned to the grid stand square to their radius only at front, back, left and right; the circle is
 *   then the one through the outer face of a post at the front. Piers: it touches their outsides.
 * - `flat-to-flat`: square across the ring, from the line through two neighbouring centres to the line opposite: 2a. An
 *   odd ring has no flat opposite a flat, but a post: there it is a + R, which is what a tape can measure.
 * - `side`: centre to centre of neighbours.
 *
 * The radius of a size that cannot be (outer faces within half a post) is zero or less; `checkPlan` says so.
 */
export function ringRadius(ring: Ring, section: Section): number {
  const size = ring.size.m;
  const half = Math.PI / ring.count;
  switch (ring.sizeBy) {
    case 'radius':
      return size;
    case 'outer-faces':
      return size - (section.kind === 'post' ? section.depth : section.diameter) / 2;
    case 'flat-to-flat':
      return size / (ring.count % 2 === 0 ? 2 * Math.cos(half) : 1 + Math.cos(half));
    case 'side':
      return size / (2 * Math.sin(half));
  }
}

/**
 * Post centres of a ring. They run clockwise seen from above; the first stands at the front, or, where a flat is at the
 * front, just clockwise of it (the right end of the front flat as seen from the centre).
 */
export function ringPlaces(ring: Ring, section: Section): PlanPoint[] {
  const radius = ringRadius(ring, section);
  const step = (2 * Math.PI) / ring.count;
  const first = ring.front === 'post' ? FRONT : FRONT - step / 2;
  return Array.from({ length: ring.count }, (_, i) => scale(unit(first - i * step), radius));
}
