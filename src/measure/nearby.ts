import { pullsByNode } from './mirror.ts';
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
  readonly #mark: Int32Array;
  readonly #reached: Int32Array;
  #stamp = 0;

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#byNode = pullsByNode(solution.model);
    this.#mark = new Int32Array(this.#byNode.length);
    this.#reached = new Int32Array(this.#byNode.length);
  }

  own(node: number): readonly number[] {
    return this.#byNode[node]!;
  }

  /** Those nodes that row k may move by much which are wanted. The array is used again by the next call. */
  reachOf(k: number, isWanted: (node: number) => boolean): Int32Array {
    const count = this.joinsHubs(k) ? this.#reachAll() : this.#reachFromEnds(k);
    let kept = 0;
    for (let i = 0; i < count; i++) {
      const node = this.#reached[i]!;
      if (isWanted(node)) this.#reached[kept++] = node;
    }
    return this.#reached.subarray(0, kept);
  }

  #reachAll(): number {
    for (let i = 0; i < this.#reached.length; i++) this.#reached[i] = i;
    return this.#reached.length;
  }

  #reachFromEnds(k: number): number {
    const { from, to } = this.#solution.model.network.pulls[k]!;
    // What hangs on two pulls takes the whole of a misreading in either, and hands none on.
    if (this.#hangs(from) || this.#hangs(to)) return 0;
    this.#stamp++;
    let count = this.#reach(to, this.#reach(from, 0));
    for (let step = 0, begin = 0; step < STEPS; step++) {
      const end = count;
      for (; begin < end; begin++) count = this.#reachFrom(this.#reached[begin]!, count);
    }
    return count;
  }

  /** Adds what is pulled with a node; gives how many are reached then. */
  #reachFrom(node: number, before: number): number {
    const { pulls } = this.#solution.model.network;
    let count = before;
    for (const row of this.own(node)) {
      const { from, to } = pulls[row]!;
      count = this.#reach(from === node ? to : from, count);
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
    const { from, to } = this.#solution.model.network.pulls[k]!;
    return this.#isHub(from) && this.#isHub(to);
  }

  #hangs(node: number): boolean {
    return this.own(node).length === 2 && !this.#solution.model.network.nodes[node]!.leans;
  }

  #isHub(node: number): boolean {
    const { datum } = this.#solution.model;
    return node === datum.a || node === datum.b || this.own(node).length > HUB_PULLS;
  }
}
