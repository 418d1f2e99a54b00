import { cross, dot, length, subtract, type Vec } from '../geometry/point.ts';
import type { LineInPlace, Section, SitedHole } from '../plan/index.ts';
import { wallBetween } from './ground.ts';

/** A tape needs this much room beside a post that it passes: an inch, a tape's width. */
const PASSING = 0.025;

/** Whether a tape pulled straight from `p` to `q` meets something that stands in one of `holes`, or a house behind one of `walls`. */
export function blocked(
  p: Vec,
  q: Vec,
  holes: readonly SitedHole[],
  walls: readonly LineInPlace[] = [],
): boolean {
  return (
    holes.some(({ site, section }) => distanceToSegment(site, p, q) < reach(section) + PASSING) ||
    wallBetween(walls, p, q) !== undefined
  );
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
