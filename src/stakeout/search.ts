import type { PlanPoint } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { type Hole, LEAST_BASELINE } from '../plan/index.ts';
import { LINE_CLEARANCE, STAKE_CLEARANCE } from './objections.ts';

/** A place for A and one for B, as four numbers: ax, ay, bx, by. */
export type Stakes = readonly [number, number, number, number];

/** How bad a pair of stakes is; the smaller the better. */
export interface Cost {
  /** By how much the rules are broken in all, metres; 0 when none is. */
  readonly broken: number;
  /** DRMS of the worst hole, metres. */
  readonly worst: number;
}

export const isBetter = (p: Cost, q: Cost): boolean =>
  p.broken < q.broken || (p.broken === q.broken && p.worst < q.worst);

/**
 * Makes the function that the search calls some ten thousand times: the DRMS of the worst hole, and how far the rules
 * are broken: stakes clear of holes and spoil, every pull and A–B within `reach`, all holes left of A–B.
 *
 * DRMS² = (σa² + σb²)/sin²γ as in `crossingAt`, here from squared lengths and one cross product, so that no root and no
 * angle is taken in the loop.
 */
export function costOf(
  holes: readonly Hole[],
  { tapeError, tapeErrorPerMetre }: Instruments,
  reach: number,
): (stakes: Stakes) => Cost {
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
    let broken = excess(baseline - reach) + excess(LEAST_BASELINE - baseline);
    let worst = 0;
    for (const { x, y, clear, beside } of spots) {
      const [ux, uy, vx, vy] = [ax - x, ay - y, bx - x, by - y];
      const [da2, db2] = [ux * ux + uy * uy, vx * vx + vy * vy];
      const area = ux * vy - uy * vx;
      worst = Math.max(worst, ((2 * a2 + b2 * (da2 + db2)) * da2 * db2) / (area * area));
      const far2 = Math.max(da2, db2);
      if (far2 > reach * reach) broken += Math.sqrt(far2) - reach;
      const near2 = Math.min(da2, db2);
      if (near2 < clear * clear) broken += clear - Math.sqrt(near2);
      // Twice the area of A, B and the hole, over its base: the height over A–B, positive on the left.
      const left = area / baseline;
      if (!(left >= beside)) broken += beside - (baseline > 0 ? left : 0);
    }
    return { broken, worst: Math.sqrt(worst) };
  };
}

const excess = (over: number): number => Math.max(over, 0);

export interface Found {
  readonly stakes: Stakes;
  readonly cost: Cost;
}

/**
 * Walks downhill from `start`: tries a step either way along each of `directions`, takes what is better, and halves the
 * step when nothing is (compass search; Kolda, Lewis and Torczon, SIAM Review 45(3), 2003).
 *
 * @param step first step, metres; ends below a centimetre, which no stake is driven to
 */
export function descend(
  start: Stakes,
  step: number,
  directions: readonly Stakes[],
  cost: (stakes: Stakes) => Cost,
): Found {
  let best: Found = { stakes: start, cost: cost(start) };
  for (let size = step; size >= FINEST_STEP; ) {
    const next = firstBetter(best, size, directions, cost);
    if (next) best = next;
    else size /= 2;
  }
  return best;
}

const FINEST_STEP = 0.01;

function firstBetter(
  from: Found,
  size: number,
  directions: readonly Stakes[],
  cost: (stakes: Stakes) => Cost,
): Found | null {
  for (const direction of directions) {
    const stakes = moved(from.stakes, direction, size);
    const found = { stakes, cost: cost(stakes) };
    if (isBetter(found.cost, from.cost)) return found;
  }
  return null;
}

export const moved = (s: Stakes, d: Stakes, size: number): Stakes => [
  s[0] + d[0] * size,
  s[1] + d[1] * size,
  s[2] + d[2] * size,
  s[3] + d[3] * size,
];

export const placesOf = ([ax, ay, bx, by]: Stakes): { a: PlanPoint; b: PlanPoint } => ({
  a: { x: ax, y: ay },
  b: { x: bx, y: by },
});
