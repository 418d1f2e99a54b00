import type { Symbolic } from './sparse-symbolic.ts';

/**
 * Below this a redundancy is rounding: the residual of such a reading says nothing. It is also where a misreading of a
 * metre would leave less than a millimetre in its own residual.
 */
export const LEAST_REDUNDANCY = 1e-3;

export interface Guards {
  /** By row: share of a misreading that stays in the row's own residual, 0 to 1; 0 when below `LEAST_REDUNDANCY`. */
  readonly redundancy: Float64Array;
  /** Readings less determined unknowns: what the redundancies add up to, rounded to a whole number. */
  readonly degreesOfFreedom: number;
}

/**
 * r = 1 − w J Q Jᵀ, row by row (Baarda 1968).
 *
 * @param jacobian values in the order of the pattern's columns
 * @param weights one per row, 1/σ²; a row of weight 0 guards itself wholly and counts for nothing
 * @param inverse selected inverse, in the slots of `symbolic`
 */
export function guards(
  symbolic: Symbolic,
  jacobian: Float64Array,
  weights: Float64Array,
  inverse: Float64Array,
): Guards {
  const { starts, rows } = symbolic.pattern;
  const redundancy = new Float64Array(rows);
  let total = 0;
  let next = 0;
  for (let k = 0; k < rows; k++) {
    let variance = 0;
    for (let p = starts[k]!; p < starts[k + 1]!; p++) {
      for (let q = starts[k]!; q < p; q++) {
        variance += 2 * jacobian[p]! * jacobian[q]! * inverse[symbolic.pairSlots[next++]!]!;
      }
      variance += jacobian[p]! * jacobian[p]! * inverse[symbolic.pairSlots[next++]!]!;
    }
    const r = 1 - weights[k]! * variance;
    if (weights[k]! > 0) total += r;
    redundancy[k] = r < LEAST_REDUNDANCY ? 0 : Math.min(r, 1);
  }
  return { redundancy, degreesOfFreedom: Math.max(Math.round(total), 0) };
}
