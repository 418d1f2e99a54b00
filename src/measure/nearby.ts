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
  #stamp = 0;

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#byNode = pullsByNode(solution.model);
    this.#mark = new Int32Array(this.#byNode.length);
  }

  own(node: number): readonly number[] {
    return this.#byNode[node]!;
  }

  /** Nodes that row k may move by much. */
  reachOf(k: number): number[] {
    const { network } = this.#solution.model;
    const { from, to } = network.pulls[k]!;
    if (this.joinsHubs(k)) return network.nodes.map(({ index }) => index);
    // What hangs on two pulls takes the whole of a misreading in either, and hands none on.
    if (this.#hangs(from) || this.#hangs(to)) return [];
    const stamp = ++this.#stamp;
    const reached: number[] = [];
    let edge = [from, to];
    for (let step = 0; step <= STEPS; step++) {
      const next: number[] = [];
      for (const node of edge) {
        if (this.#mark[node] === stamp || this.#isHub(node)) continue;
        this.#mark[node] = stamp;
        reached.push(node);
        for (const row of this.own(node)) next.push(network.pulls[row]!.from, network.pulls[row]!.to);
      }
      edge = next;
    }
    return reached;
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
