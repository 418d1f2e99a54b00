/**
 * The normal distribution, to about 1e-15.
 *
 * erf by its all-positive series, Abramowitz & Stegun, "Handbook of Mathematical Functions" (1964), 7.1.6; erfc further
 * out by the continued fraction 7.1.14. Both converge to the last digit in a few dozen terms, so there is no fitted
 * polynomial to trust.
 */

const TWO_OVER_ROOT_PI = 2 / Math.sqrt(Math.PI);
/** Below this the series takes under 40 terms and loses nothing; above it the fraction takes under 60 levels. */
const SERIES_TO = 2;
/** erfc(27) is below the smallest double. */
const NOTHING_LEFT = 27;

/** Complementary error function of any real `x`; erfc(0.5) = 0.4795001221869535. */
export function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x);
  if (x < SERIES_TO) return 1 - erfSeries(x);
  return x > NOTHING_LEFT ? 0 : erfcFraction(x);
}

function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; term > sum * Number.EPSILON; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return TWO_OVER_ROOT_PI * Math.exp(-x * x) * sum;
}

/** erfc(x) = exp(−x²)/√π · 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …)))), evaluated from the far end. */
function erfcFraction(x: number): number {
  const levels = 60;
  let tail = x;
  for (let k = levels; k >= 1; k--) tail = x + k / 2 / tail;
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail);
}

/** Chance that a standard normal variable is at or below `z`; Φ(1.96) = 0.9750021. */
export const normalCdf = (z: number): number => erfc(-z * Math.SQRT1_2) / 2;

/** Half-width, in sigmas, of the interval that holds 95 % of a normal variable: Φ⁻¹(0.975). */
export const HALF_WIDTH_95 = 1.959963984540054;

/** Sigmas by which a value clears a one-sided limit at 95 %: Φ⁻¹(0.95). */
export const ONE_SIDED_95 = 1.6448536269514722;
