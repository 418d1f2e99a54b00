import type { Vec } from '../geometry/point.ts';
import type { Covariance } from '../measure/types.ts';
import { normalCdf } from './normal.ts';

/**
 * Chances that a quantity is within its tolerance, given what was measured and how well.
 *
 * Interval and one-sided forms: JCGM 106:2012, "The role of measurement uncertainty in conformity assessment", clause 7 (from
 * memory).
 */

/** One-sided: the chance that the true value is at least `least`. All in the same unit; `sigma` may be 0. */
export function chanceAtLeast(value: number, sigma: number, least: number): number {
  if (sigma === 0) return value >= least ? 1 : 0;
  return normalCdf((value - least) / sigma);
}

/** Two-sided: the chance that the true error lies within ±`tolerance`. All in the same unit; `sigma` may be 0. */
export function chanceWithin(error: number, sigma: number, tolerance: number): number {
  if (sigma === 0) return Math.abs(error) <= tolerance ? 1 : 0;
  const e = Math.abs(error);
  // Both terms are lower tails, so that a far-out error keeps its small chance and does not cancel to nothing.
  return Math.max(0, normalCdf((tolerance - e) / sigma) - normalCdf((-tolerance - e) / sigma));
}

/** Nothing measurable of a normal variable lies further out: the tail is 1e-17. */
const ALL_SIGMAS = 8.6;
/** A place known to better than a thousandth of its tolerance is taken as known to that: 12 µm of 12 mm. */
const SHARPEST = 1e-3;
/** Nodes on the circle per (radius / least sigma). The rule then errs by less than 1e-9. */
const NODES_PER_SIGMA = 8;
const LEAST_NODES = 32;

/**
 * Chance that a plane normal variable with mean `offset` and any `covariance` lies within `radius` of the origin.
 *
 * In coordinates whitened about the mean the density is exp(−|u|²/2)/2π, which is the divergence of
 * u (1 − exp(−|u|²/2)) / (2π |u|²). So the chance is a line integral of that field across the tolerance circle. Its
 * integrand is analytic and periodic whatever the offset, and equal steps round the circle converge geometrically
 * (Trefethen & Weideman, "The exponentially convergent trapezoidal rule", SIAM Review 56(3), 2014). For no offset and
 * equal sigmas this is Rayleigh's 1 − exp(−R²/2σ²).
 *
 * @param offset metres (or metres per metre), measured minus planned
 * @param covariance same unit squared; may be singular or zero
 * @returns 0 to 1, right to 1e-9 where the least sigma is above a thousandth of `radius`; sharper places are taken at
 *   that thousandth
 */
export function chanceWithinDisc(offset: Vec, covariance: Covariance, radius: number): number {
  const axes = principalAxes(covariance);
  const s1 = Math.max(axes.major, radius * SHARPEST);
  const s2 = Math.max(axes.minor, radius * SHARPEST);
  const m1 = offset.x * axes.along.x + offset.y * axes.along.y;
  const m2 = -offset.x * axes.along.y + offset.y * axes.along.x;
  const beyond = Math.hypot(m1, m2) - radius;
  if (Math.abs(beyond) > ALL_SIGMAS * s1) return beyond < 0 ? 1 : 0;
  const nodes = Math.max(LEAST_NODES, Math.ceil((NODES_PER_SIGMA * radius) / s2));
  let sum = 0;
  for (let i = 0; i < nodes; i++) {
    const angle = (2 * Math.PI * i) / nodes;
    const x = radius * Math.cos(angle);
    const y = radius * Math.sin(angle);
    const u = (x - m1) / s1;
    const v = (y - m2) / s2;
    sum += outflow(u * u + v * v) * ((u * x) / s2 + (v * y) / s1);
  }
  return Math.min(1, Math.max(0, sum / nodes));
}

/** (1 − exp(−q/2)) / q, smooth through q = 0. */
function outflow(q: number): number {
  // Below 1e-9 the next term of the series is under 1e-10 of the first.
  return q < 1e-9 ? 0.5 : -Math.expm1(-q / 2) / q;
}

/** One-sigma half axes of a covariance and the unit vector along the longer. */
export function principalAxes(c: Covariance): { major: number; minor: number; along: Vec } {
  const mean = (c.xx + c.yy) / 2;
  const spread = Math.hypot((c.xx - c.yy) / 2, c.xy);
  const bearing = Math.atan2(2 * c.xy, c.xx - c.yy) / 2;
  return {
    major: Math.sqrt(Math.max(0, mean + spread)),
    // The product form keeps the short axis when it is far below the long one; the difference would cancel.
    minor: mean + spread > 0 ? Math.sqrt(Math.max(0, c.xx * c.yy - c.xy * c.xy) / (mean + spread)) : 0,
    along: { x: Math.cos(bearing), y: Math.sin(bearing) },
  };
}

/** One sigma of a plane vector along the unit vector `n`. */
export function sigmaAlong(c: Covariance, n: Vec): number {
  return Math.sqrt(Math.max(0, c.xx * n.x * n.x + 2 * c.xy * n.x * n.y + c.yy * n.y * n.y));
}
