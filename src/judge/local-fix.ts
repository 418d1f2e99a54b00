import type { Vec } from '../geometry/point.ts';
import type { Covariance } from '../measure/types.ts';

/** A pull to a place, as that place sees it: unit vector along the tape, and one sigma of the pull and its other end. */
export interface Ray {
  readonly along: Vec;
  readonly sigma: number;
}

/** Non-centrality at which a misreading is noticed: α₀ = 0.001 two-sided, power 80 % (Baarda 1968, from memory). */
const NOTICED = 4.132;
/** Spare below which a pull counts as guarded by nothing: it would have to be 4 m wrong at 1 mm to be noticed. */
const NO_SPARE = 1e-6;

/**
 * How well a place would be fixed by these pulls alone, their other ends taken as they are: the inverse of Σ n nᵀ/σ²,
 * and the worst shift that an unseen misreading of one of them could make. Good enough to choose the next pull by; the
 * adjustment has the last word once it is made.
 *
 * @returns null when the pulls do not fix it
 */
export function localFix(rays: readonly Ray[]): { covariance: Covariance; unseenShift: number } | null {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { along, sigma } of rays) {
    const weight = 1 / (sigma * sigma);
    xx += weight * along.x * along.x;
    xy += weight * along.x * along.y;
    yy += weight * along.y * along.y;
  }
  const determinant = xx * yy - xy * xy;
  // sin² of the angle between two equal pulls: under a ten-thousandth, 0.6°, nothing is fixed across them.
  if (!(determinant > 1e-4 * (xx + yy) * (xx + yy))) return null;
  const covariance = { xx: yy / determinant, xy: -xy / determinant, yy: xx / determinant };
  return { covariance, unseenShift: Math.max(...rays.map((ray) => unseenBy(ray, covariance))) };
}

function unseenBy({ along, sigma }: Ray, c: Covariance): number {
  const gain = { x: c.xx * along.x + c.xy * along.y, y: c.xy * along.x + c.yy * along.y };
  const leverage = (gain.x * along.x + gain.y * along.y) / (sigma * sigma);
  const spare = 1 - leverage;
  if (spare < NO_SPARE) return Number.POSITIVE_INFINITY;
  return ((NOTICED / Math.sqrt(spare)) * Math.hypot(gain.x, gain.y)) / sigma;
}
