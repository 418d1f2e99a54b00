import { cross, dot, length, subtract, type Vec } from '../geometry/point.ts';
import type { Section, SitedHole } from '../plan/index.ts';

/** A tape needs this much room beside a post that it passes: an inch, a tape's width. */
const PASSING = 0.025;

/** Whether a tape pulled straight from `p` to `q` meets something that stands in one of `holes`. */
export function blocked(p: Vec, q: Vec, holes: readonly SitedHole[]): boolean {
  return holes.some(({ site, section }) => distanceToSegment(site, p, q) < reach(section) + PASSING);
}

/** Farthest that a section reaches from its centre. */
const reach = (section: Section): number =>
  section.kind === 'post' ? Math.hypot(section.width, section.depth) / 2 : section.diameter / 2;

function distanceToSegment(point: Vec, p: Vec, q: Vec): number {
  const along = subtract(q, p);
  const to = subtract(point, p);
  const run = length(along);
  if (run === 0 || dot(to, along) <= 0) return length(to);
  if (dot(to, along) >= run ** 2) return length(subtract(point, q));
  return Math.abs(cross(along, to)) / run;
}
