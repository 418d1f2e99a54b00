import type { Graph } from './sparse-order.ts';

/** What an element that is part of another has left. */
const NONE: readonly number[] = [];

/**
 * A graph under elimination, in no more room than it has at first: a node that is eliminated becomes an *element*, which
 * stands for all the edges between the nodes that it was joined to (George & Liu, "The evolution of the minimum degree
 * ordering algorithm", SIAM Review 31(1), 1989, §3). The list of a node names nodes left and elements alike; an element that
 * takes the place of others leaves room for itself.
 */
export class QuotientGraph {
  /** By node left: no less than its neighbours left. */
  readonly degree: Int32Array;
  readonly #starts: Int32Array;
  readonly #ends: Int32Array;
  readonly #lists: Int32Array;
  /** By element: the nodes left that it joins; by node left undefined. */
  readonly #members: (readonly number[] | undefined)[];
  readonly #mark: Int32Array;
  readonly #counted: Int32Array;
  /** By element counted: its members outside the newest element. */
  readonly #outside: Int32Array;

  /** @param leftOut nodes that are not there at all */
  constructor({ nodes, starts, neighbours }: Graph, leftOut: Uint8Array) {
    this.#starts = starts;
    this.#ends = starts.slice(1);
    this.#lists = neighbours.slice();
    this.#members = new Array(nodes).fill(undefined);
    this.#mark = new Int32Array(nodes).fill(-1);
    this.#counted = new Int32Array(nodes).fill(-1);
    this.#outside = new Int32Array(nodes);
    this.degree = new Int32Array(nodes);
    for (let i = 0; i < nodes; i++) {
      this.#keep(i, (j) => leftOut[j] === 0);
      this.degree[i] = this.#ends[i]! - starts[i]!;
    }
  }

  /** Turns a node into an element, and gives the nodes that it joins: those whose degree changes. */
  eliminate(p: number): readonly number[] {
    const joined = this.#joined(p);
    this.#members[p] = joined;
    for (const i of joined) this.#countOutside(i, p);
    for (const i of joined) {
      let degree = joined.length - 1;
      this.#keep(i, (j) => {
        const share = this.#shareOf(j, p);
        degree += share;
        return share > 0;
      });
      this.#lists[this.#ends[i]!++] = p;
      this.degree[i] = degree;
    }
    return joined;
  }

  /** The neighbours of a node; its elements, which the new one stands for, are emptied. */
  #joined(p: number): readonly number[] {
    const joined: number[] = [];
    const join = (i: number) => {
      if (i === p || this.#mark[i] === p) return;
      this.#mark[i] = p;
      joined.push(i);
    };
    for (let at = this.#starts[p]!; at < this.#ends[p]!; at++) {
      const j = this.#lists[at]!;
      const members = this.#members[j];
      if (!members) {
        join(j);
        continue;
      }
      for (const i of members) join(i);
      this.#members[j] = NONE;
    }
    return joined;
  }

  #countOutside(i: number, p: number): void {
    for (let at = this.#starts[i]!; at < this.#ends[i]!; at++) {
      const element = this.#lists[at]!;
      const members = this.#members[element];
      if (!members) continue;
      if (this.#counted[element] !== p) this.#outside[element] = members.length;
      this.#counted[element] = p;
      this.#outside[element]!--;
    }
  }

  /** How many neighbours outside the new element p an entry of a list stands for; 0 if it need not be kept. */
  #shareOf(j: number, p: number): number {
    if (!this.#members[j]) return this.#mark[j] === p ? 0 : 1;
    return j === p ? 0 : Math.max(this.#outside[j]!, 0);
  }

  #keep(i: number, isKept: (j: number) => boolean): void {
    let end = this.#starts[i]!;
    for (let at = end; at < this.#ends[i]!; at++) {
      const j = this.#lists[at]!;
      if (isKept(j)) this.#lists[end++] = j;
    }
    this.#ends[i] = end;
  }
}
