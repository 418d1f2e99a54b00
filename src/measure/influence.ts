import { length } from '../geometry/point.ts';
import { PER_NODE } from './model.ts';
import type { Solution } from './solution.ts';
import { InverseColumns, LANES } from './sparse-inverse.ts';

/** Metres that a node moves per metre of misreading in one of its own pulls: |Q Jᵀ w|, from the selected inverse. */
export function influenceOfOwn(solution: Solution, k: number, node: number): number {
  const { model, weights } = solution;
  const x = model.unknownOf[node * PER_NODE]!;
  const y = model.unknownOf[node * PER_NODE + 1]!;
  return weights[k]! * length({ x: responseWithin(solution, k, x), y: responseWithin(solution, k, y) });
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

/** The unit vectors of so many nodes' places are solved for side by side. */
const NODES_AT_ONCE = LANES / 2;

/**
 * Metres that every node moves per metre of misreading in every pull and offset, whether they touch or not: the whole inverse,
 * two columns for each node. For small networks.
 *
 * @param found is told of every reading that counts and every node that is not held
 */
export function everyInfluence(
  solution: Solution,
  found: (row: number, node: number, influence: number) => void,
): void {
  const { model, factor } = solution;
  const { symbolic, unknownOf } = model;
  const columns = new InverseColumns(symbolic, factor);
  const everywhere = symbolic.position;
  const inverse = new Float64Array(LANES * symbolic.size);
  const unit = (place: number) => {
    const unknown = unknownOf[place]!;
    return unknown === -1 ? NOTHING : { positions: [symbolic.position[unknown]!], values: [1] };
  };
  for (let first = 0; first < model.byNode.length; first += NODES_AT_ONCE) {
    const nodes = [first, first + 1].filter((node) => node < model.byNode.length);
    const right = nodes.flatMap((node) => [unit(node * PER_NODE), unit(node * PER_NODE + 1)]);
    columns.at(right, everywhere, inverse);
    for (const [i, node] of nodes.entries()) tellInfluences(solution, node, inverse, 2 * i, found);
  }
}

const NOTHING = { positions: [], values: [] };

/** @param inverse by position, the columns of the node's x and y in two lanes from `lane` on */
function tellInfluences(
  { model, evaluation, weights }: Solution,
  node: number,
  inverse: Float64Array,
  lane: number,
  found: (row: number, node: number, influence: number) => void,
): void {
  const { pattern, position } = model.symbolic;
  const rows = model.network.placing.length;
  for (let k = 0; k < rows; k++) {
    if (weights[k] === 0) continue;
    let x = 0;
    let y = 0;
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      const at = LANES * position[pattern.columns[p]!]! + lane;
      x += evaluation.jacobian[p]! * inverse[at]!;
      y += evaluation.jacobian[p]! * inverse[at + 1]!;
    }
    found(k, node, weights[k]! * Math.sqrt(x * x + y * y));
  }
}

/** A reading and the nodes to which its misreading is followed. */
export interface Followed {
  readonly row: number;
  readonly nodes: ArrayLike<number>;
}

/** Influences of readings on nodes, whether they touch them or not. */
export class Influences {
  readonly #solution: Solution;
  readonly #columns: InverseColumns;
  /** Position of each entry of the Jacobian. */
  readonly #position: Int32Array;
  /** Position of each number of a state, -1 where it is held or untouched. */
  readonly #positionOf: Int32Array;
  /** Scratch: the positions of all the nodes to which readings are followed at once. */
  readonly #targets: Int32Array;
  /** How every unknown that is asked for answers to a reading, before its weight, by position and lane. */
  readonly #response: Float64Array;

  constructor(solution: Solution) {
    const { symbolic, unknownOf } = solution.model;
    this.#solution = solution;
    this.#columns = new InverseColumns(symbolic, solution.factor);
    this.#position = symbolic.pattern.columns.map((unknown) => symbolic.position[unknown]!);
    this.#positionOf = unknownOf.map((unknown) => (unknown === -1 ? -1 : symbolic.position[unknown]!));
    this.#targets = new Int32Array(2 * LANES * solution.model.network.nodes.length);
    this.#response = new Float64Array(LANES * symbolic.size);
  }

  /**
   * Metres that nodes move per metre of misreading, of up to `LANES` readings at once.
   *
   * @param found is told of every reading and every node to which it is followed
   */
  of(followed: readonly Followed[], found: (row: number, node: number, influence: number) => void): void {
    const { model, weights, evaluation } = this.#solution;
    const { starts } = model.symbolic.pattern;
    const right = followed.map(({ row }) => ({
      positions: this.#position.subarray(starts[row]!, starts[row + 1]!),
      values: evaluation.jacobian.subarray(starts[row]!, starts[row + 1]!),
    }));
    this.#columns.at(right, this.#positionsOf(followed), this.#response);
    followed.forEach(({ row, nodes }, lane) => {
      for (let i = 0; i < nodes.length; i++) {
        const x = this.#responseOf(nodes[i]! * PER_NODE, lane);
        const y = this.#responseOf(nodes[i]! * PER_NODE + 1, lane);
        found(row, nodes[i]!, weights[row]! * Math.sqrt(x * x + y * y));
      }
    });
  }

  /** Where the nodes have their unknowns, with repeats. */
  #positionsOf(followed: readonly Followed[]): Int32Array {
    let count = 0;
    for (const { nodes } of followed) {
      for (let i = 0; i < nodes.length; i++) {
        const x = this.#positionOf[nodes[i]! * PER_NODE]!;
        const y = this.#positionOf[nodes[i]! * PER_NODE + 1]!;
        if (x !== -1) this.#targets[count++] = x;
        if (y !== -1) this.#targets[count++] = y;
      }
    }
    return this.#targets.subarray(0, count);
  }

  #responseOf(place: number, lane: number): number {
    const position = this.#positionOf[place]!;
    return position === -1 ? 0 : this.#response[LANES * position + lane]!;
  }
}
