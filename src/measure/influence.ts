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

/** Influences of rows on nodes that do not touch them. */
export class Influences {
  readonly #solution: Solution;
  readonly #columns: InverseColumns;
  /** Position of each entry of the Jacobian. */
  readonly #position: Int32Array;
  readonly #x: Float64Array;
  readonly #y: Float64Array;
  readonly #out: Float64Array;
  readonly #targets: Int32Array;

  constructor(solution: Solution) {
    const { symbolic } = solution.model;
    const { columns, rows } = symbolic.pattern;
    this.#solution = solution;
    this.#columns = new InverseColumns(symbolic, solution.factor);
    this.#position = columns.map((unknown) => symbolic.position[unknown]!);
    this.#x = new Float64Array(symbolic.size);
    this.#y = new Float64Array(symbolic.size);
    this.#out = new Float64Array(Math.max(rows, solution.model.network.nodes.length));
    this.#targets = new Int32Array(symbolic.size);
  }

  /** Metres that a node moves per metre of misreading in each of `rows`. The array is used again by the next call. */
  on(node: number, rows: readonly number[]): Float64Array {
    const { model, weights, evaluation } = this.#solution;
    const { starts } = model.symbolic.pattern;
    this.#column(node * PER_NODE, this.#x);
    this.#column(node * PER_NODE + 1, this.#y);
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

  #column(place: number, into: Float64Array): void {
    const position = this.#positionOf(place);
    if (position === -1) into.fill(0);
    else this.#columns.whole(position, into);
  }

  /** Metres that each of `nodes` moves per metre of misreading in row k. The array is used again by the next call. */
  of(k: number, nodes: ArrayLike<number>): Float64Array {
    const { model, weights, evaluation } = this.#solution;
    const { starts } = model.symbolic.pattern;
    const from = this.#position.subarray(starts[k]!, starts[k + 1]!);
    const derivatives = evaluation.jacobian.subarray(starts[k]!, starts[k + 1]!);
    let count = 0;
    for (let i = 0; i < nodes.length; i++) {
      for (const place of [nodes[i]! * PER_NODE, nodes[i]! * PER_NODE + 1]) {
        const position = this.#positionOf(place);
        if (position !== -1) this.#targets[count++] = position;
      }
    }
    this.#columns.at(from, derivatives, this.#targets.subarray(0, count), this.#x);
    for (let i = 0; i < nodes.length; i++) {
      const x = this.#movement(nodes[i]! * PER_NODE);
      const y = this.#movement(nodes[i]! * PER_NODE + 1);
      this.#out[i] = weights[k]! * Math.sqrt(x * x + y * y);
    }
    return this.#out;
  }

  #movement(place: number): number {
    const position = this.#positionOf(place);
    return position === -1 ? 0 : this.#x[position]!;
  }

  #positionOf(place: number): number {
    const { unknownOf, symbolic } = this.#solution.model;
    const unknown = unknownOf[place]!;
    return unknown === -1 ? -1 : symbolic.position[unknown]!;
  }
}
