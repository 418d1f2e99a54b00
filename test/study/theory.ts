import { normalCdf } from '../../src/judge/normal.ts';
import { chiSquareChance } from '../../src/measure/chi-square.ts';
import type { PullResult } from '../../src/measure/index.ts';

/** What the theory of the tests promises, for one misread pull and for clean jobs. */

/** Two-sided 0.1 % point of the normal distribution (Baarda 1968): stated here anew, so that the tool's own is held to it. */
export const BEYOND_LUCK = 3.2905;

/** Share of clean tests beyond 3.2905 on either side: Baarda's α₀. */
export const ALPHA = 2 * normalCdf(-BEYOND_LUCK);

/**
 * Chance that a pull's own test notices its misreading: the standardised residual is normal about √λ = misreading √r / σ
 * (Baarda, "A testing procedure for use in geodetic networks", 1968). Tests of other pulls can only add to it.
 */
export function power({ redundancy, sigma }: PullResult, misreading: number): number {
  const shift = (Math.abs(misreading) * Math.sqrt(redundancy)) / sigma;
  return normalCdf(shift - BEYOND_LUCK) + normalCdf(-shift - BEYOND_LUCK);
}

/** Terms of the sum below: for λ up to 200 what is left out is below 1e-12. */
const TERMS = 300;

/**
 * Chance that a chi-square test with 2 degrees of freedom at level α₀ notices what exact readings would make χ² = λ:
 * non-central chi-square as a Poisson mixture (Abramowitz & Stegun, "Handbook of Mathematical Functions", 1964, 26.4.25).
 */
export function powerOf2(lambda: number): number {
  const limit = -2 * Math.log(MOVE_ALPHA);
  let weight = Math.exp(-lambda / 2);
  let sum = 0;
  for (let j = 0; j < TERMS; j++) {
    sum += weight * chiSquareChance(limit, 2 + 2 * j);
    weight *= lambda / 2 / (j + 1);
  }
  return sum;
}

/** A move is believed beyond this chance by luck, for each moment that is looked at. */
const MOVE_ALPHA = 0.001;

/** Bounds of a chance. */
export interface Between {
  readonly least: number;
  readonly most: number;
}

/**
 * Chance that the misread pull k has the greatest standardised residual of all. Against one other pull l, whose test is
 * correlated with k's by ρ, it loses with Φ(−√λ √((1 − |ρ|)/2)): the difference of the two tests is normal about
 * √λ (1 − |ρ|) with variance 2 (1 − |ρ|) (derived, not published). Losing to any is at least losing to the likeliest
 * and at most the sum.
 *
 * ρ is read off two adjustments of the same readings, without and with the misreading: residuals move by R δ, and w_l
 * moves by ρ times as much as w_k.
 */
export function namedFirst(
  clean: readonly PullResult[],
  spoilt: readonly PullResult[],
  entry: string,
): Between {
  const after = new Map(spoilt.map((pull) => [pull.entry, pull]));
  const moved = new Map(clean.map((pull) => [pull.entry, shiftOf(pull, after.get(pull.entry))]));
  const own = moved.get(entry);
  if (own === undefined) throw new RangeError(`no pull ${entry}`);
  let worst = 0;
  let sum = 0;
  for (const [other, shift] of moved) {
    if (other === entry) continue;
    const alike = Math.min(Math.abs(shift / own), 1);
    const loses = normalCdf(-Math.abs(own) * Math.sqrt((1 - alike) / 2));
    worst = Math.max(worst, loses);
    sum += loses;
  }
  return { least: Math.max(1 - sum, 0), most: 1 - worst };
}

/** By how many of its own sigmas a residual moved. */
function shiftOf({ residual, sigma, redundancy }: PullResult, after: PullResult | undefined): number {
  if (!after || redundancy === 0) return 0;
  return (after.residual - residual) / (sigma * Math.sqrt(redundancy));
}
