import { add, cross, distance, scale, subtract, type Vec } from './point.ts';

/** Where two circles meet. `left` lies on the left of a person walking from the first centre to the second. */
export interface Meeting {
  readonly left: Vec;
  readonly right: Vec;
  /** False when the circles do not reach each other (or one lies inside the other): both points are then the nearest miss. */
  readonly meets: boolean;
}

/**
 * Two tapes: the two points at distance `r0` from `c0` and `r1` from `c1` (P. Bourke, "Intersection of two circles",
 * 1997): a = (r0² − r1² + d²)/2d along the line of centres, h = √(r0² − a²) square to it.
 *
 * @returns null when the centres coincide, so that no line joins them
 */
export function circlesMeet(c0: Vec, r0: number, c1: Vec, r1: number): Meeting | null {
  const d = distance(c0, c1);
  if (!(d > 0)) return null;
  const along = (r0 * r0 - r1 * r1 + d * d) / (2 * d);
  const square = r0 * r0 - along * along;
  const u = scale(subtract(c1, c0), 1 / d);
  if (!(square >= 0)) {
    const miss = add(c0, scale(u, nearestMiss(r0, r1, d, along)));
    return { left: miss, right: miss, meets: false };
  }
  const h = Math.sqrt(square);
  const foot = add(c0, scale(u, along));
  const across = { x: -u.y * h, y: u.x * h };
  return { left: add(foot, across), right: subtract(foot, across), meets: true };
}

/**
 * Halfway between the points where two circles that do not meet come nearest: along the line of centres, from the first.
 * Where `along` falls tells which way they miss, and does so for circles that touch but for rounding, too.
 */
function nearestMiss(r0: number, r1: number, d: number, along: number): number {
  if (along > d) return (r0 + d + r1) / 2;
  return along < 0 ? (d - r1 - r0) / 2 : (r0 + d - r1) / 2;
}

/** The image of `p` in the line through `a` and `b`; `p` itself when these coincide. */
export function mirrored(p: Vec, a: Vec, b: Vec): Vec {
  const line = subtract(b, a);
  const square = line.x * line.x + line.y * line.y;
  if (!(square > 0)) return p;
  const k = (2 * cross(line, subtract(p, a))) / square;
  return { x: p.x + k * line.y, y: p.y - k * line.x };
}
