import { cross, subtract, type Vec } from '../../src/geometry/point.ts';
import type { Hole, LaidLine } from '../../src/plan/index.ts';

/** Lines on the ground, with their rules written again from their description and by other means: areas and crossings. */
export type Yard = readonly LaidLine[];

/** A house is so deep; it is drawn in on its three sides by what a nail in its wall takes up. Metres. */
const DEEP = 1000;
const GIVE = 0.025;

/** Corners of the ground on which no stake can stand, anticlockwise; a line that bars a side bars very much of it. */
function barredGround({ kind, from, to, noStakes }: LaidLine): Vec[] {
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  const u = { x: (to.x - from.x) / run, y: (to.y - from.y) / run };
  const hand = noStakes === 'left' ? 1 : -1;
  const out = { x: -u.y * hand, y: u.x * hand };
  const at = (s: number, o: number) => ({ x: from.x + u.x * s + out.x * o, y: from.y + u.y * s + out.y * o });
  const [first, last, near] = kind === 'house' ? [GIVE, run - GIVE, GIVE] : [-DEEP, DEEP, 0];
  const corners = [at(first, near), at(last, near), at(last, DEEP), at(first, DEEP)];
  return hand > 0 ? corners : corners.reverse();
}

const inside = (area: readonly Vec[], p: Vec): boolean =>
  area.every((corner, i) => cross(subtract(area[(i + 1) % area.length]!, corner), subtract(p, corner)) > 0);

/** Whether p–q runs over an area: an end lies in it, or it crosses one of its sides. */
function runsOver(area: readonly Vec[], p: Vec, q: Vec): boolean {
  if (inside(area, p) || inside(area, q)) return true;
  return area.some((c, i) => {
    const d = area[(i + 1) % area.length]!;
    const side = (a: Vec, b: Vec, at: Vec) => Math.sign(cross(subtract(b, a), subtract(at, a)));
    return side(c, d, p) * side(c, d, q) < 0 && side(p, q, c) * side(p, q, d) < 0;
  });
}

const areas = (yard: Yard, houses: boolean) =>
  yard
    .filter(({ kind, noStakes }) => noStakes !== null && (!houses || kind === 'house'))
    .map((line) => barredGround(line));

/** Holes that can be reached at all: under a house none can. */
const reached = (yard: Yard, holes: readonly Hole[]) =>
  holes.filter(({ place }) => !areas(yard, true).some((area) => inside(area, place)));

export function forbids(yard: Yard, holes: readonly Hole[], a: Vec, b: Vec): boolean {
  if (areas(yard, false).some((area) => inside(area, a) || inside(area, b))) return true;
  const lines = [
    [a, b] as const,
    ...reached(yard, holes).flatMap(
      ({ place }) =>
        [
          [a, place],
          [b, place],
        ] as const,
    ),
  ];
  return areas(yard, true).some((area) => lines.some(([p, q]) => runsOver(area, p, q)));
}

/**
 * Whether every A of a box, or every B, is forbidden: it lies within barred ground, or a house hides one and the same hole
 * from all of it. Both are true of a whole rectangle when they are true of its corners, for barred ground is convex, and so
 * is the ground that a convex house hides from one point.
 */
export function barredBox(
  yard: Yard,
  holes: readonly Hole[],
  least: readonly number[],
  greatest: readonly number[],
) {
  if (yard.length === 0) return false;
  return [0, 2].some((k) => {
    const corners = [
      { x: least[k]!, y: least[k + 1]! },
      { x: greatest[k]!, y: least[k + 1]! },
      { x: greatest[k]!, y: greatest[k + 1]! },
      { x: least[k]!, y: greatest[k + 1]! },
    ];
    return (
      areas(yard, false).some((area) => corners.every((corner) => inside(area, corner))) ||
      areas(yard, true).some((area) =>
        reached(yard, holes).some(({ place }) => corners.every((corner) => runsOver(area, corner, place))),
      )
    );
  });
}
