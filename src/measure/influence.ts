import { PER_NODE } from './model.ts';
import type { Solution } from './solution.ts';
import { InverseColumns } from './sparse-inverse.ts';

/** Metres that a node moves per metre of misreading in one of its own pulls: |Q Jᵀ w|, from the selected inverse. */
export function influenceOfOwn(solution: Solution, k: number, node: number): number {
  const { model, weights } = solution;
  const x = model.unknownOf[node * PER_NODE]!;
  const y = model.unknownOf[node * PER_NODE + 1]!;
  return weights[k]! * Math.hypot(responseWithin(solution, k, x), responseWithin(solution, k, y));
}

/** Σ Q[u, c] J[c] over the entries c of row k, of which the unknown u is one; 0 for what is held. */
function responseWithin({ model, evaluation, inverse }: Solution, k: number, u: number): number {
  if (u === -1) return 0;
  const { pattern, pairStarts, pairSlots } = model.symbolic;
  const begin = pattern.starts[k]!;
  const entries = pattern.starts[k + 1]! - begin;
  let own = 0;
  while (pattern.columns[begin + own] !== u) own++;
  let sum = 0;
  for (let i = 0; i < entries; i++) {
    const pair = i > own ? (i * (i + 1)) / 2 + own : (own * (own + 1)) / 2 + i;
    sum += evaluation.jacobian[begin + i]! * inverse[pairSlots[pairStarts[k]! + pair]!]!;
  }
  return sum;
}

/** The same of any row, given its whole response Q Jᵀ. */
export function influenceFrom(
  { model, weights }: Solution,
  k: number,
  response: Float64Array,
  node: number,
): number {
  const [x, y] = [0, 1].map((axis) => {
    const unknown = model.unknownOf[node * PER_NODE + axis]!;
    return unknown === -1 ? 0 : response[model.symbolic.position[unknown]!]!;
  });
  return weights[k]! * Math.hypot(x!, y!);
}

/** Influences of rows anywhere in the network on one node after another, from single columns of the inverse. */
export class Influences {
  readonly #solution: Solution;
  readonly #columns: InverseColumns;
  readonly #targets: Int32Array;
  readonly #along: Float64Array;

  constructor(solution: Solution) {
    const { symbolic } = solution.model;
    this.#solution = solution;
    this.#columns = new InverseColumns(symbolic, solution.factor);
    this.#targets = new Int32Array(symbolic.pattern.columns.length);
    this.#along = new Float64Array(symbolic.pattern.rows);
  }

  /** Metres that a node moves per metre of misreading in each of `rows`. The array is used again by the next call. */
  on(node: number, rows: readonly number[]): Float64Array {
    const { model, weights } = this.#solution;
    const out = this.#along;
    out.fill(0, 0, rows.length);
    const targets = this.#targetsOf(rows);
    for (const axis of [0, 1]) {
      const unknown = model.unknownOf[node * PER_NODE + axis]!;
      if (unknown === -1) continue;
      const column = this.#columns.at(model.symbolic.position[unknown]!, targets);
      for (let i = 0; i < rows.length; i++) {
        const along = weights[rows[i]!]! * this.#rowTimes(rows[i]!, column);
        out[i] = axis === 0 ? along : Math.sqrt(out[i]! * out[i]! + along * along);
      }
    }
    for (let i = 0; i < rows.length; i++) out[i] = Math.abs(out[i]!);
    return out;
  }

  #targetsOf(rows: readonly number[]): Int32Array {
    const { pattern, position } = this.#solution.model.symbolic;
    let count = 0;
    for (const k of rows) {
      for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
        this.#targets[count++] = position[pattern.columns[p]!]!;
      }
    }
    return this.#targets.subarray(0, count);
  }

  #rowTimes(k: number, column: Float64Array): number {
    const { pattern, position } = this.#solution.model.symbolic;
    const { jacobian } = this.#solution.evaluation;
    let sum = 0;
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      sum += jacobian[p]! * column[position[pattern.columns[p]!]!]!;
    }
    return sum;
  }
}
