import { nodesOf } from './network.ts';
import type { Solution } from './solution.ts';

/** A node with more pulls than this is a stake that holds the whole network: pulls between two such can move anything. */
const HUB_PULLS = 16;
/** A misreading fades with each step from where it was made; beyond so many it is not followed. */
const STEPS = 5;

/**
 * How far the misreading of a pull is followed in a large network: to everything when it joins two stakes that hold the
 * network, else to what a few pulls lead to from its ends without passing such a stake.
 */
export class Nearby {
  readonly #solution: Solution;
  readonly #byNode: readonly (readonly number[])[];
  /** By row. */
  readonly #nodesOf: readonly (readonly number[])[];
  readonly #mark: Int32Array;
  readonly #reached: Int32Array;
  #stamp = 0;

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#byNode = solution.model.byNode;
    this.#nodesOf = solution.model.network.placing.map(nodesOf);
    this.#mark = new Int32Array(this.#byNode.length);
    this.#reached = new Int32Array(this.#byNode.length);
  }

  own(node: number): readonly number[] {
    return this.#byNode[node]!;
  }

  /**
   * Nodes that row k may move by much.
   *
   * @param isWanted says which of them to give
   */
  reachOf(k: number, isWanted: (node: number) => boolean): number[] {
    const count = this.joinsHubs(k) ? this.#reachAll() : this.#reachFromEnds(k);
    const wanted: number[] = [];
    for (let i = 0; i < count; i++) if (isWanted(this.#reached[i]!)) wanted.push(this.#reached[i]!);
    return wanted;
  }

  #reachAll(): number {
    for (let i = 0; i < this.#reached.length; i++) this.#reached[i] = i;
    return this.#reached.length;
  }

  /** Fills `#reached`; gives how many are. */
  #reachFromEnds(k: number): number {
    const ends = this.#nodesOf[k]!;
    // What hangs on two pulls takes the whole of a misreading in either, and hands none on.
    if (ends.some((node) => this.#hangs(node))) return 0;
    this.#stamp++;
    let count = 0;
    for (const node of ends) count = this.#reach(node, count);
    for (let step = 0, begin = 0; step < STEPS; step++) {
      const end = count;
      for (; begin < end; begin++) count = this.#reachFrom(this.#reached[begin]!, count);
    }
    return count;
  }

  /** Adds what shares a reading with a node; gives how many are reached then. */
  #reachFrom(node: number, before: number): number {
    let count = before;
    for (const row of this.own(node)) {
      for (const other of this.#nodesOf[row]!) count = this.#reach(other, count);
    }
    return count;
  }

  #reach(node: number, count: number): number {
    if (this.#mark[node] === this.#stamp || this.#isHub(node)) return count;
    this.#mark[node] = this.#stamp;
    this.#reached[count] = node;
    return count + 1;
  }

  /** True of a pull between two stakes that hold the network. */
  joinsHubs(k: number): boolean {
    return this.#nodesOf[k]!.every((node) => this.#isHub(node));
  }

  #hangs(node: number): boolean {
    return this.own(node).length === 2 && !this.#solution.model.network.nodes[node]!.leans;
  }

  #isHub(node: number): boolean {
    const { datum } = this.#solution.model;
    return node === datum.a || node === datum.b || this.own(node).length > HUB_PULLS;
  }
}
