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
  /** Position of each entry of the Jacobian. */
  readonly #position: Int32Array;
  readonly #targets: Int32Array;
  readonly #x: Float64Array;
  readonly #y: Float64Array;
  readonly #out: Float64Array;

  constructor(solution: Solution) {
    const { symbolic } = solution.model;
    const { columns, rows } = symbolic.pattern;
    this.#solution = solution;
    this.#columns = new InverseColumns(symbolic, solution.factor);
    this.#position = columns.map((unknown) => symbolic.position[unknown]!);
    this.#targets = new Int32Array(columns.length);
    this.#x = new Float64Array(symbolic.size);
    this.#y = new Float64Array(symbolic.size);
    this.#out = new Float64Array(rows);
  }

  /** Metres that a node moves per metre of misreading in each of `rows`. The array is used again by the next call. */
  on(node: number, rows: readonly number[]): Float64Array {
    const { model, weights, evaluation } = this.#solution;
    const { starts } = model.symbolic.pattern;
    const targets = rows.length > WHOLE_FROM * model.rows ? null : this.#targetsOf(rows);
    this.#column(node * PER_NODE, targets, this.#x);
    this.#column(node * PER_NODE + 1, targets, this.#y);
    for (let i = 0; i < rows.length; i++) {
      const k = rows[i]!;
      let x = 0;
      let y = 0;
      for (let p = starts[k]!; p < starts[k + 1]!; p++) {
        const derivative = evaluation.jacobian[p]!;
        x += derivative * this.#x[this.#position[p]!]!;
        y += derivative * this.#y[this.#position[p]!]!;
      }
      this.#out[i] = weights[k]! * Math.sqrt(x * x + y * y);
    }
    return this.#out;
  }

  #column(place: number, targets: Int32Array | null, into: Float64Array): void {
    const { unknownOf, symbolic } = this.#solution.model;
    const unknown = unknownOf[place]!;
    if (unknown === -1) into.fill(0);
    else if (targets) this.#columns.at(symbolic.position[unknown]!, targets, into);
    else this.#columns.whole(symbolic.position[unknown]!, into);
  }

  #targetsOf(rows: readonly number[]): Int32Array {
    const { starts } = this.#solution.model.symbolic.pattern;
    let count = 0;
    for (const k of rows) {
      for (let p = starts[k]!; p < starts[k + 1]!; p++) this.#targets[count++] = this.#position[p]!;
    }
    return this.#targets.subarray(0, count);
  }
}

/** Where more than this share of all rows is wanted, whole columns cost less than looking for what can be left out. */
const WHOLE_FROM = 0.1;
