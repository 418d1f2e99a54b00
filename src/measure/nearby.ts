import { pullsByNode } from './mirror.ts';
import type { Solution } from './solution.ts';

/** In networks up to so many nodes every pull is weighed for every node. */
const SMALL_NETWORK = 60;
/** A node with more pulls than this is a stake that holds the whole network: pulls between two such can move anything. */
const HUB_PULLS = 16;

/** Which pulls can move a node by much: its own, those between hubs, and `others`. */
export class Nearby {
  readonly #solution: Solution;
  readonly #byNode: readonly (readonly number[])[];
  /** Pulls between stakes that hold the whole network. */
  readonly betweenHubs: readonly number[];

  readonly #all: number[];
  readonly #mark: Int32Array;
  #stamp = 0;

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#all = solution.model.network.pulls.map((_, k) => k);
    this.#mark = new Int32Array(solution.model.rows);
    this.#byNode = pullsByNode(solution.model);
    this.betweenHubs = solution.model.network.pulls.flatMap(({ from, to }, k) =>
      this.#isHub(from) && this.#isHub(to) ? [k] : [],
    );
  }

  own(node: number): readonly number[] {
    return this.#byNode[node]!;
  }

  /** In a small network all pulls; else those at the node's partners: a misreading fades with each step. */
  others(node: number): number[] {
    if (this.#byNode.length <= SMALL_NETWORK) return this.#all;
    const stamp = ++this.#stamp;
    const out: number[] = [];
    for (const k of this.own(node)) this.#mark[k] = stamp;
    for (const k of this.own(node)) {
      const { from, to } = this.#solution.model.network.pulls[k]!;
      const other = from === node ? to : from;
      if (this.#isHub(other)) continue;
      for (const row of this.own(other)) {
        if (this.#mark[row] !== stamp) out.push(row);
        this.#mark[row] = stamp;
      }
    }
    return out;
  }

  #isHub(node: number): boolean {
    const { datum } = this.#solution.model;
    return node === datum.a || node === datum.b || this.#byNode[node]!.length > HUB_PULLS;
  }
}
