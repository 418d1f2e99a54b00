import type { Symbolic } from './sparse-symbolic.ts';

/** A multiple of the unit matrix, in the slots of `symbolic`. */
export function setDiagonal({ columnStarts, size }: Symbolic, value: number, out: Float64Array): void {
  out.fill(0);
  for (let j = 0; j < size; j++) out[columnStarts[j]!] = value;
}

/**
 * Adds Jᵀ W J, in the slots of `symbolic`.
 *
 * @param jacobian values in the order of `symbolic.pattern.columns`
 * @param weights one per row, 1/σ²
 */
export function addNormal(
  { pattern, pairSlots }: Symbolic,
  jacobian: Float64Array,
  weights: Float64Array,
  out: Float64Array,
): void {
  let next = 0;
  for (let k = 0; k < pattern.rows; k++) {
    const end = pattern.starts[k + 1]!;
    const begin = pattern.starts[k]!;
    const weight = weights[k]!;
    for (let p = begin; p < end; p++) {
      const scaled = weight * jacobian[p]!;
      for (let q = begin; q <= p; q++) out[pairSlots[next++]!]! += scaled * jacobian[q]!;
    }
  }
}

/**
 * Turns a positive definite matrix, in place, into its lower Cholesky factor: up-looking, one row at a time (Davis,
 * "Direct Methods for Sparse Linear Systems", SIAM 2006, §4.7).
 *
 * @param work scratch, one number per unknown, all 0 before and after
 * @returns false when the matrix is not positive definite; `values` is then useless
 */
export function factorise(symbolic: Symbolic, values: Float64Array, work: Float64Array): boolean {
  const { size, columnStarts, rowIndex, rowStarts, rowColumns, rowSlots } = symbolic;
  for (let k = 0; k < size; k++) {
    const begin = rowStarts[k]!;
    const end = rowStarts[k + 1]!;
    for (let p = begin; p < end; p++) work[rowColumns[p]!] = values[rowSlots[p]!]!;
    let pivot = values[columnStarts[k]!]!;
    for (let p = begin; p < end; p++) {
      const i = rowColumns[p]!;
      const slot = rowSlots[p]!;
      const diagonal = columnStarts[i]!;
      const entry = work[i]! / values[diagonal]!;
      work[i] = 0;
      for (let q = diagonal + 1; q < slot; q++) work[rowIndex[q]!]! -= values[q]! * entry;
      pivot -= entry * entry;
      values[slot] = entry;
    }
    if (!(pivot > 0 && pivot < Number.POSITIVE_INFINITY)) return false;
    values[columnStarts[k]!] = Math.sqrt(pivot);
  }
  return true;
}

/** Solves L Lᵀ x = b in place; `x` is by position. */
export function solveInPlace(symbolic: Symbolic, factor: Float64Array, x: Float64Array): void {
  const { size, columnStarts, rowIndex } = symbolic;
  for (let j = 0; j < size; j++) {
    const value = x[j]! / factor[columnStarts[j]!]!;
    x[j] = value;
    if (value === 0) continue;
    for (let p = columnStarts[j]! + 1; p < columnStarts[j + 1]!; p++) x[rowIndex[p]!]! -= factor[p]! * value;
  }
  for (let j = size - 1; j >= 0; j--) {
    let value = x[j]!;
    for (let p = columnStarts[j]! + 1; p < columnStarts[j + 1]!; p++) value -= factor[p]! * x[rowIndex[p]!]!;
    x[j] = value / factor[columnStarts[j]!]!;
  }
}
