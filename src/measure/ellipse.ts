import type { Covariance, Ellipse } from './types.ts';

/**
 * One-sigma error ellipse of a covariance: eigenvalues and direction of the longer axis (Ghilani, "Adjustment
 * Computations", ch. 19, with the angle from +x instead of north).
 */
export function ellipseOf({ xx, xy, yy }: Covariance): Ellipse {
  const mean = (xx + yy) / 2;
  const spread = Math.hypot((xx - yy) / 2, xy);
  return {
    semiMajor: Math.sqrt(Math.max(mean + spread, 0)),
    // The determinant over the greater eigenvalue: a difference would lose a thin ellipse's short axis to rounding.
    semiMinor: mean + spread > 0 ? Math.sqrt(Math.max((xx * yy - xy * xy) / (mean + spread), 0)) : 0,
    bearing: spread > 0 ? Math.atan2(2 * xy, xx - yy) / 2 : 0,
  };
}
