import { QuotientGraph } from './sparse-quotient.ts';

/** An undirected graph: the neighbours of node i are `neighbours[starts[i]]` to `neighbours[starts[i + 1] - 1]`, ascending. */
export interface Graph {
  readonly nodes: number;
  readonly starts: Int32Array;
  readonly neighbours: Int32Array;
}

/**
 * A node with more neighbours than `DENSE_TIMES` × √nodes goes last, unlooked at: a stake that every hole is pulled from
 * would else make each elimination merge the whole job. The same rule and factor as AMD (Amestoy, Davis & Duff, "An
 * approximate minimum degree ordering algorithm", SIAM J. Matrix Anal. Appl. 17(4), 1996, and its code).
 */
const DENSE_TIMES = 10;
/** Below this many neighbours no node is dense, however small the graph. */
const NEVER_DENSE = 16;

/**
 * Order of elimination that keeps the factor sparse: always the node with the fewest neighbours left, by the approximate
 * degree of AMD (Amestoy, Davis & Duff 1996, §4).
 *
 * @returns the nodes, first to last
 */
export function minimumDegreeOrder(graph: Graph): Int32Array {
  const { nodes } = graph;
  const dense = denseNodes(graph);
  const quotient = new QuotientGraph(graph, dense);
  const queue = new DegreeQueue(nodes);
  for (let i = nodes - 1; i >= 0; i--) if (!dense[i]) queue.put(i, quotient.degree[i]!);
  const order = new Int32Array(nodes);
  let count = 0;
  for (let p = queue.take(); p >= 0; p = queue.take()) {
    order[count++] = p;
    for (const i of quotient.eliminate(p)) queue.put(i, quotient.degree[i]!);
  }
  for (let i = 0; i < nodes; i++) if (dense[i]) order[count++] = i;
  return order;
}

function denseNodes({ nodes, starts }: Graph): Uint8Array {
  const limit = Math.max(NEVER_DENSE, DENSE_TIMES * Math.sqrt(nodes));
  const dense = new Uint8Array(nodes);
  for (let i = 0; i < nodes; i++) if (starts[i + 1]! - starts[i]! > limit) dense[i] = 1;
  return dense;
}

/** Nodes by degree. A node whose degree changes is put in again; its older places are skipped when they come up. */
class DegreeQueue {
  readonly #buckets: number[][] = [];
  readonly #degree: Int32Array;
  #lowest = 0;

  constructor(nodes: number) {
    this.#degree = new Int32Array(nodes).fill(-1);
  }

  put(node: number, degree: number): void {
    if (this.#degree[node] === degree) return;
    while (this.#buckets.length <= degree) this.#buckets.push([]);
    this.#degree[node] = degree;
    this.#buckets[degree]!.push(node);
    if (degree < this.#lowest) this.#lowest = degree;
  }

  /** Removes and gives a node of least degree; -1 when none is left. */
  take(): number {
    while (this.#lowest < this.#buckets.length) {
      const node = this.#buckets[this.#lowest]!.pop();
      if (node === undefined) this.#lowest++;
      else if (this.#degree[node] === this.#lowest) {
        this.#degree[node] = -1;
        return node;
      }
    }
    return -1;
  }
}
