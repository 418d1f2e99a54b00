import type { Symbolic } from './sparse-symbolic.ts';

/**
 * Those elements of the inverse that lie where the factor has entries: every point's own covariance, and that of every
 * pair of points with a reading between them. From the last column to the first, without ever forming the full inverse
 * (Takahashi, Fagan & Chin 1973; Erisman & Tinney, "On computing certain elements of the inverse of a sparse matrix",
 * Communications of the ACM 18(3), 1975).
 *
 * @returns values in the slots of `symbolic`
 */
export function selectedInverse(symbolic: Symbolic, factor: Float64Array): Float64Array {
  const { size, columnStarts, rowIndex } = symbolic;
  const inverse = new Float64Array(factor.length);
  // Scaled column of L, 0 outside the column at hand; and what it gathers, of which only the column's own rows are read.
  const scaled = new Float64Array(size);
  const gathered = new Float64Array(size);
  for (let j = size - 1; j >= 0; j--) {
    const begin = columnStarts[j]!;
    const end = columnStarts[j + 1]!;
    const reciprocal = 1 / factor[begin]!;
    for (let p = begin + 1; p < end; p++) {
      scaled[rowIndex[p]!] = factor[p]! * reciprocal;
      gathered[rowIndex[p]!] = 0;
    }
    for (let p = begin + 1; p < end; p++) gather(symbolic, inverse, rowIndex[p]!, scaled, gathered);
    let own = reciprocal * reciprocal;
    for (let p = begin + 1; p < end; p++) {
      const row = rowIndex[p]!;
      own += scaled[row]! * gathered[row]!;
      inverse[p] = -gathered[row]!;
      scaled[row] = 0;
    }
    inverse[begin] = own;
  }
  return inverse;
}

/** Adds column k of the inverse, and its mirror image, times the scaled column. */
function gather(
  { columnStarts, rowIndex }: Symbolic,
  inverse: Float64Array,
  k: number,
  scaled: Float64Array,
  gathered: Float64Array,
): void {
  const begin = columnStarts[k]!;
  const factor = scaled[k]!;
  let sum = inverse[begin]! * factor;
  for (let q = begin + 1; q < columnStarts[k + 1]!; q++) {
    const row = rowIndex[q]!;
    const value = inverse[q]!;
    sum += value * scaled[row]!;
    gathered[row]! += value * factor;
  }
  gathered[k]! += sum;
}

/** Right-hand sides that are solved for side by side: each entry of the factor is fetched once for all of them. */
export const LANES = 4;

/** A vector of few entries, by position. */
interface FewEntries {
  readonly positions: ArrayLike<number>;
  readonly values: ArrayLike<number>;
}

/** Finds single elements of the inverse that `selectedInverse` does not give, from the paths up the elimination tree. */
export class InverseColumns {
  readonly #symbolic: Symbolic;
  readonly #factor: Float64Array;
  readonly #mark: Int32Array;
  readonly #needed: Int32Array;
  readonly #path: Int32Array;
  #stamp = 0;

  constructor(symbolic: Symbolic, factor: Float64Array) {
    this.#symbolic = symbolic;
    this.#factor = factor;
    this.#mark = new Int32Array(symbolic.size);
    this.#needed = new Int32Array(symbolic.size);
    this.#path = new Int32Array(symbolic.size);
  }

  /**
   * Q b, right at `targets` (positions) and nowhere else, for up to `LANES` vectors b at once: with one entry of 1 a column
   * of the inverse. Only what lies on the paths from these positions to the root is touched: the entries of a column of the
   * factor all lie on its own path.
   *
   * @param into `LANES` numbers per unknown, one for each b; what it held does not matter
   */
  at(right: readonly FewEntries[], targets: ArrayLike<number>, into: Float64Array): void {
    const needed = this.#pathsUp(right, targets);
    for (let i = 0; i < needed.length; i++) into.fill(0, LANES * needed[i]!, LANES * needed[i]! + LANES);
    right.forEach(({ positions, values }, lane) => {
      for (let i = 0; i < positions.length; i++) into[LANES * positions[i]! + lane]! += values[i]!;
    });
    for (let i = 0; i < needed.length; i++) this.#forward(needed[i]!, into);
    for (let i = needed.length - 1; i >= 0; i--) this.#backward(needed[i]!, into);
  }

  /** One column of L y = b; those of all that come before j on its path come first. */
  #forward(j: number, x: Float64Array): void {
    const { columnStarts, rowIndex } = this.#symbolic;
    const factor = this.#factor;
    const begin = columnStarts[j]!;
    const end = columnStarts[j + 1]!;
    const diagonal = factor[begin]!;
    const own = LANES * j;
    const a = x[own]! / diagonal;
    const b = x[own + 1]! / diagonal;
    const c = x[own + 2]! / diagonal;
    const d = x[own + 3]! / diagonal;
    if (a === 0 && b === 0 && c === 0 && d === 0) return;
    x[own] = a;
    x[own + 1] = b;
    x[own + 2] = c;
    x[own + 3] = d;
    for (let p = begin + 1; p < end; p++) {
      const value = factor[p]!;
      const at = LANES * rowIndex[p]!;
      x[at]! -= value * a;
      x[at + 1]! -= value * b;
      x[at + 2]! -= value * c;
      x[at + 3]! -= value * d;
    }
  }

  /** One line of Lᵀ x = y; the lines of all that follow j on its path come first. */
  #backward(j: number, x: Float64Array): void {
    const { columnStarts, rowIndex } = this.#symbolic;
    const factor = this.#factor;
    const begin = columnStarts[j]!;
    const end = columnStarts[j + 1]!;
    const own = LANES * j;
    let a = x[own]!;
    let b = x[own + 1]!;
    let c = x[own + 2]!;
    let d = x[own + 3]!;
    for (let p = begin + 1; p < end; p++) {
      const value = factor[p]!;
      const at = LANES * rowIndex[p]!;
      a -= value * x[at]!;
      b -= value * x[at + 1]!;
      c -= value * x[at + 2]!;
      d -= value * x[at + 3]!;
    }
    const diagonal = factor[begin]!;
    x[own] = a / diagonal;
    x[own + 1] = b / diagonal;
    x[own + 2] = c / diagonal;
    x[own + 3] = d / diagonal;
  }

  /** The positions on the ways to the root, children before parents. */
  #pathsUp(right: readonly FewEntries[], targets: ArrayLike<number>): Int32Array {
    const { parent } = this.#symbolic;
    const stamp = ++this.#stamp;
    const needed = this.#needed;
    let top = needed.length;
    const climb = (starts: ArrayLike<number>) => {
      for (let i = 0; i < starts.length; i++) {
        let length = 0;
        for (let j = starts[i]!; j !== -1 && this.#mark[j] !== stamp; j = parent[j]!) {
          this.#mark[j] = stamp;
          this.#path[length++] = j;
        }
        // A new path goes in front of the paths that it runs into.
        while (length > 0) needed[--top] = this.#path[--length]!;
      }
    };
    for (const { positions } of right) climb(positions);
    climb(targets);
    return needed.subarray(top);
  }
}
