import type { PlanPoint } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { type Hole, type LaidLine, LEAST_BASELINE } from '../plan/index.ts';
import { barredBy, behindWall, throughHouse, wallOf } from './ground.ts';
import { LINE_CLEARANCE, STAKE_CLEARANCE } from './objections.ts';

/** A place for A and one for B, as four numbers: ax, ay, bx, by. */
export type Stakes = readonly [number, number, number, number];

/** How bad a pair of stakes is, the smaller the better: the DRMS of the worst hole, or more than `RULED_OUT`. */
export type Cost = (stakes: Stakes) => number;

/** Added to the metres by which rules are broken: above any DRMS, so that any pair within the rules is better. */
export const RULED_OUT = 1e3;

/**
 * Makes the cost that a search asks for some ten thousand times: the DRMS of the worst hole under the rules that stakes
 * stand clear of holes and spoil, every pull and A–B are within `reach`, and all holes lie left of A–B; where `lines` are
 * given, that no stake stands where they bar it and no tape would run through a house.
 *
 * DRMS² = (σa² + σb²)/sin²γ as in `crossingAt`, here from squared lengths and one cross product: the loop over
 * the holes takes no angle, and a root only of what breaks a rule.
 */
export function costOf(
  holes: readonly Hole[],
  { tapeError, tapeErrorPerMetre }: Instruments,
  reach: number,
  lines: readonly LaidLine[] = [],
): Cost {
  const onGround = lines.length === 0 ? () => 0 : groundRules(holes, lines);
  const a2 = tapeError.m ** 2;
  const b2 = tapeErrorPerMetre ** 2;
  const spots = holes.map(({ place, holeDiameter }) => ({
    x: place.x,
    y: place.y,
    clear: holeDiameter / 2 + STAKE_CLEARANCE,
    beside: holeDiameter / 2 + LINE_CLEARANCE,
  }));
  return ([ax, ay, bx, by]) => {
    const baseline = Math.hypot(bx - ax, by - ay);
    let broken = Math.max(0, baseline - reach, LEAST_BASELINE - baseline) + onGround(ax, ay, bx, by);
    let worst = 0;
    for (const { x, y, clear, beside } of spots) {
      const ux = ax - x;
      const uy = ay - y;
      const vx = bx - x;
      const vy = by - y;
      const da2 = ux * ux + uy * uy;
      const db2 = vx * vx + vy * vy;
      const area = ux * vy - uy * vx;
      const sineSquared = (area * area) / (da2 * db2);
      worst = Math.max(worst, (2 * a2 + b2 * (da2 + db2)) / sineSquared);
      broken += overrun(da2, db2, clear, reach);
      // Twice the area of A, B and the hole, over its base: the height over A–B, positive on the left.
      if (!(area >= beside * baseline)) broken += beside - area / Math.max(baseline, LEAST_BASELINE);
    }
    return broken > 0 ? RULED_OUT + broken : Math.sqrt(worst);
  };
}

/**
 * Metres by which two stakes break the rules of the ground. A hole under a house is reached from nowhere, and asks nothing.
 * Where the holes lie behind every wall is worked out once: a pair of stakes adds only its own two places.
 */
function groundRules(holes: readonly Hole[], lines: readonly LaidLine[]) {
  const places = holes
    .map(({ place }) => place)
    .filter((place) => lines.every((line) => line.kind !== 'house' || barredBy(line, place) === 0));
  const walls = lines.flatMap((line) => {
    const wall = wallOf(line);
    return wall ? [{ wall, behind: places.map(({ x, y }) => behindWall(wall, x, y)) }] : [];
  });
  return (ax: number, ay: number, bx: number, by: number): number => {
    const [a, b] = [
      { x: ax, y: ay },
      { x: bx, y: by },
    ];
    let broken = 0;
    for (const line of lines) broken += barredBy(line, a) + barredBy(line, b);
    for (const { wall, behind } of walls) {
      const [p, q] = [behindWall(wall, ax, ay), behindWall(wall, bx, by)];
      broken += throughHouse(p, q);
      for (const place of behind) broken += throughHouse(p, place) + throughHouse(q, place);
    }
    return broken;
  };
}

/** Metres by which two pulls, given squared, are too long for the tape or too near to the hole. */
function overrun(da2: number, db2: number, clear: number, reach: number): number {
  const far2 = Math.max(da2, db2);
  const near2 = Math.min(da2, db2);
  return (
    (far2 > reach * reach ? Math.sqrt(far2) - reach : 0) +
    (near2 < clear * clear ? clear - Math.sqrt(near2) : 0)
  );
}

export interface Found {
  readonly stakes: Stakes;
  readonly cost: number;
}

/** The `count` cheapest of many, cheapest first; of equals the earlier. */
export function cheapest(all: readonly Stakes[], count: number, cost: Cost): Found[] {
  const best: Found[] = [];
  for (const stakes of all) {
    const found = { stakes, cost: cost(stakes) };
    if (best.length === count && !(found.cost < best[count - 1]!.cost)) continue;
    const at = best.findIndex((other) => found.cost < other.cost);
    best.splice(at < 0 ? best.length : at, 0, found);
    best.length = Math.min(best.length, count);
  }
  return best;
}

/** The walk ends below a centimetre: nobody drives a stake more finely. */
const FINEST_STEP = 0.01;

/**
 * Walks downhill: tries a step along each of `directions`, takes the first that is better, and halves the step when none
 * is (compass search; Kolda, Lewis and Torczon, "Optimization by direct search", SIAM Review 45(3), 2003).
 *
 * @param step first step, metres
 */
export function descend(start: Found, step: number, directions: readonly Stakes[], cost: Cost): Found {
  let best = start;
  for (let size = step; size >= FINEST_STEP; ) {
    const next = firstBetter(best, size, directions, cost);
    if (next) best = next;
    else size /= 2;
  }
  return best;
}

function firstBetter(
  { stakes, cost: limit }: Found,
  size: number,
  directions: readonly Stakes[],
  cost: Cost,
): Found | null {
  for (const [ax, ay, bx, by] of directions) {
    const next: Stakes = [
      stakes[0] + ax * size,
      stakes[1] + ay * size,
      stakes[2] + bx * size,
      stakes[3] + by * size,
    ];
    const found = cost(next);
    // Less than a millionth better is rounding, and would make the walk crawl.
    if (found < limit * (1 - WORTH_A_STEP)) return { stakes: next, cost: found };
  }
  return null;
}

const WORTH_A_STEP = 1e-6;

export const placesOf = ([ax, ay, bx, by]: Stakes): { a: PlanPoint; b: PlanPoint } => ({
  a: { x: ax, y: ay },
  b: { x: bx, y: by },
});
