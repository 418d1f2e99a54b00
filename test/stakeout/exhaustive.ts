import type { Vec } from '../../src/geometry/point.ts';
import type { Instruments } from '../../src/job/plan-schema.ts';
import type { Hole } from '../../src/plan/index.ts';
import { CLEAR, worstDrms } from './brute-force.ts';
import { barredBox, forbids, type Yard } from './yard-rules.ts';

/** All pairs of grid points with A in one rectangle and B in another, in steps of the grid: least and greatest of ax, ay, bx, by. */
type Box = readonly [least: readonly number[], greatest: readonly number[]];

/** What a search of all pairs on a grid came to. */
export interface Searched {
  /** A pair on the grid that is better than asked for; null when there is none. */
  readonly better: { readonly a: Vec; readonly b: Vec; readonly worst: number } | null;
  /** The best pair on the grid that the search looked at, which need not be the best of all. */
  readonly bestMet: number;
  /** Boxes looked into. */
  readonly boxes: number;
}

/**
 * Whether any pair of places on a square grid has a worst DRMS below `limit`, over every place that the tape allows.
 *
 * Exhaustive by bounds: pairs of places are taken together in boxes, A in one rectangle and B in another. No pair of a box is
 * better than its bound: at each hole the tapes are no shorter than the rectangles' nearest points, and their angle is
 * within the angles under which circles round the rectangles are seen, so its sine is no greater than over that range. A
 * box whose bound reaches `limit` holds nothing better and is dropped; any other is halved, down to single pairs, which
 * are judged by the textbook formula. So each pair on the grid is either judged or lies in a box that cannot be better.
 * (Branch and bound: Land and Doig, Econometrica 28(3), 1960.)
 *
 * @param yard lines on the ground, whose rules every pair has to keep as well
 */
export function searchGrid(
  holes: readonly Hole[],
  instruments: Instruments,
  step: number,
  limit: number,
  yard: Yard = [],
): Searched {
  const reach = instruments.tapeLength.m;
  const stack: Box[] = [domain(holes, reach, step)];
  const bound = boundOf(holes, instruments, step);
  let bestMet = Infinity;
  let boxes = 0;
  for (let box = stack.pop(); box; box = stack.pop()) {
    boxes++;
    const [least, greatest] = box;
    if (bound(box, limit) || barredBox(yard, holes, scaled(least, step), scaled(greatest, step))) continue;
    const middle = least.map((low, k) => Math.floor((low + greatest[k]!) / 2) * step);
    const [a, b] = [
      { x: middle[0]!, y: middle[1]! },
      { x: middle[2]!, y: middle[3]! },
    ];
    const worst = forbids(yard, holes, a, b) ? Infinity : worstDrms(a, b, holes, instruments);
    bestMet = Math.min(bestMet, worst);
    if (worst < limit) return { better: { a, b, worst }, bestMet, boxes };
    stack.push(...halves(box));
  }
  return { better: null, bestMet, boxes };
}

const scaled = (index: readonly number[], step: number): number[] => index.map((k) => k * step);

/** All grid points from which the tape reaches every hole lie in this square. */
function domain(holes: readonly Hole[], reach: number, step: number): Box {
  const ends = (of: (place: Vec) => number): readonly [number, number] => {
    const values = holes.map(({ place }) => of(place));
    return [
      Math.ceil((Math.max(...values) - reach) / step),
      Math.floor((Math.min(...values) + reach) / step),
    ];
  };
  const [x0, x1] = ends(({ x }) => x);
  const [y0, y1] = ends(({ y }) => y);
  return [
    [x0, y0, x0, y0],
    [x1, y1, x1, y1],
  ];
}

/** Along its longest side, so that both halves hold whole grid points; none of a single pair, which has been judged. */
function halves([least, greatest]: Box): Box[] {
  const sides = least.map((low, k) => greatest[k]! - low);
  const longest = Math.max(...sides);
  if (longest === 0) return [];
  const k = sides.indexOf(longest);
  const cut = Math.floor((least[k]! + greatest[k]!) / 2);
  return [
    [least, greatest.with(k, cut)],
    [least.with(k, cut + 1), greatest],
  ];
}

/** Tells of a box that no pair in it is allowed and better than `limit`. */
function boundOf(
  holes: readonly Hole[],
  { tapeError, tapeErrorPerMetre, tapeLength }: Instruments,
  step: number,
) {
  const spots = holes.map(({ place, holeDiameter }) => ({ ...place, clear: holeDiameter / 2 + CLEAR }));
  const reach = tapeLength.m;
  const constant = 2 * tapeError.m ** 2;
  const growing = tapeErrorPerMetre ** 2;
  return ([least, greatest]: Box, limit: number): boolean => {
    const [ax, ay, bx, by] = least.map((low, k) => ((low + greatest[k]!) / 2) * step) as [
      number,
      number,
      number,
      number,
    ];
    const [aw, ah, bw, bh] = least.map((low, k) => ((greatest[k]! - low) / 2) * step) as [
      number,
      number,
      number,
      number,
    ];
    const [aRound, bRound] = [Math.hypot(aw, ah), Math.hypot(bw, bh)];
    for (let i = 0; i < spots.length; i++) {
      const { x, y, clear } = spots[i]!;
      const [ux, uy, vx, vy] = [ax - x, ay - y, bx - x, by - y];
      const nearA = Math.hypot(Math.max(0, Math.abs(ux) - aw), Math.max(0, Math.abs(uy) - ah));
      const nearB = Math.hypot(Math.max(0, Math.abs(vx) - bw), Math.max(0, Math.abs(vy) - bh));
      const farA = Math.hypot(Math.abs(ux) + aw, Math.abs(uy) + ah);
      const farB = Math.hypot(Math.abs(vx) + bw, Math.abs(vy) + bh);
      const away = Math.max(nearA, nearB) > reach || Math.min(farA, farB) < clear;
      const angle = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
      const give = halfSeen(aRound, ux, uy) + halfSeen(bRound, vx, vy);
      const sine = greatestSine(angle, give);
      const variance = constant + growing * (Math.max(nearA, clear) ** 2 + Math.max(nearB, clear) ** 2);
      if (away || sine <= 0 || variance >= (limit * sine) ** 2) {
        // The hole that ruled this box out is likely to rule out the next one too.
        if (i > 0) [spots[0], spots[i]] = [spots[i]!, spots[0]!];
        return true;
      }
    }
    return false;
  };
}

/** Half the angle under which a circle is seen from a hole, so far away. */
const halfSeen = (radius: number, x: number, y: number): number => {
  const far = Math.hypot(x, y);
  return radius < far ? Math.asin(radius / far) : Math.PI;
};

/** Greatest sine of the angles that are within `give` of `angle`; at most 0 where the hole lies on the right of A–B for all of them. */
function greatestSine(angle: number, give: number): number {
  const quarter = Math.PI / 2;
  const off = Math.min(Math.abs(angle - quarter), 2 * Math.PI - Math.abs(angle - quarter));
  return off <= give ? 1 : Math.cos(off - give);
}
