import { ellipseOf } from './ellipse.ts';
import { pullsByNode } from './mirror.ts';
import { PER_NODE } from './model.ts';
import { LEAST_REDUNDANCY } from './redundancy.ts';
import { responseTo } from './snooping.ts';
import { placeCovariance, type Solution, testedOf } from './solution.ts';
import { InverseColumns } from './sparse-inverse.ts';

/**
 * How many sigmas of its own residual a misreading must be worth to be noticed with power 80 % by a test at 0.1 %:
 * 3.2905 + 0.8416 (Baarda, "A testing procedure for use in geodetic networks", 1968).
 */
export const NONCENTRALITY = 4.132;

/** A pull with less redundancy has nothing that guards it: under a tenth of a misreading shows in its residual. */
export const GUARDED_FROM = 0.1;

/** An unguarded pull moves a point when more than this share of a misreading ends up in the point's place. */
const MOVES_FROM = 0.1;

/** Smallest misreading that would be noticed, metres; Infinity where nothing guards the reading. */
export function smallestCaught(sigma: number, redundancy: number): number {
  return redundancy > 0 ? (NONCENTRALITY * sigma) / Math.sqrt(redundancy) : Number.POSITIVE_INFINITY;
}

/** In networks up to so many nodes every pull is weighed for every node. */
const SMALL_NETWORK = 60;
/** A node with more pulls than this is a stake that holds the whole network: pulls between two such can move anything. */
const HUB_PULLS = 16;

/**
 * By node: how far the worst pull misreading that would go unnoticed could move it, metres (external reliability).
 * Infinity when a pull without a guard moves it.
 */
export function unseenShifts(solution: Solution): Float64Array {
  const { network } = solution.model;
  const nearby = new Nearby(solution);
  const columns = new Columns(solution);
  const tested = testedOf(solution);
  const hubRows = nearby.betweenHubs.map((row) => ({ row, response: responseTo(tested, row) }));
  return Float64Array.from(network.nodes, ({ index }) => {
    let worst = 0;
    for (const k of nearby.own(index))
      worst = Math.max(worst, shiftBy(solution, k, influenceOfOwn(solution, k, index)));
    for (const { row, response } of hubRows) {
      worst = Math.max(worst, shiftBy(solution, row, influenceFrom(solution, row, response, index)));
    }
    if (worst === Number.POSITIVE_INFINITY) return worst;
    const covariance = placeCovariance(solution, index);
    const sigma = covariance ? ellipseOf(covariance).semiMajor : 0;
    const others = nearby.others(index).filter((k) => mostShiftBy(solution, k, sigma) > worst);
    columns.influences(index, others).forEach((influence, i) => {
      worst = Math.max(worst, shiftBy(solution, others[i]!, influence));
    });
    return worst;
  });
}

/** Metres by which the greatest unnoticed misreading of row k moves a node, given metres moved per metre misread. */
function shiftBy({ redundancy, model }: Solution, k: number, influence: number): number {
  const r = redundancy[k]!;
  if (r < GUARDED_FROM && influence > MOVES_FROM) return Number.POSITIVE_INFINITY;
  return influence * smallestCaught(model.network.pulls[k]!.sigma, Math.max(r, LEAST_REDUNDANCY));
}

/**
 * The same without knowing the influence: by Cauchy and Schwarz it is at most σ √(w (1 − r)) for a node of which no
 * coordinate is less well known than σ. For passing over rows that cannot be the worst.
 */
function mostShiftBy({ redundancy, model }: Solution, k: number, sigma: number): number {
  const r = redundancy[k]!;
  const influence = (sigma * Math.sqrt(1 - r)) / model.network.pulls[k]!.sigma;
  if (r < GUARDED_FROM && influence > MOVES_FROM) return Number.POSITIVE_INFINITY;
  return influence * smallestCaught(model.network.pulls[k]!.sigma, Math.max(r, LEAST_REDUNDANCY));
}

/** Metres that a node moves per metre of misreading in one of its own pulls: |Q Jᵀ w|, from the selected inverse. */
function influenceOfOwn(solution: Solution, k: number, node: number): number {
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
function influenceFrom(
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

/** Influences of rows elsewhere in the network, from single columns of the inverse. */
class Columns {
  readonly #solution: Solution;
  readonly #columns: InverseColumns;

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#columns = new InverseColumns(solution.model.symbolic, solution.factor);
  }

  influences(node: number, rows: readonly number[]): number[] {
    if (rows.length === 0) return [];
    const { model, weights } = this.#solution;
    const targets = rows.flatMap((k) => this.#positions(k));
    const along = [0, 1].map((axis) => {
      const unknown = model.unknownOf[node * PER_NODE + axis]!;
      if (unknown === -1) return rows.map(() => 0);
      const column = this.#columns.at(model.symbolic.position[unknown]!, targets);
      return rows.map((k) => this.#rowTimes(k, column));
    });
    return rows.map((k, i) => weights[k]! * Math.hypot(along[0]![i]!, along[1]![i]!));
  }

  #positions(k: number): number[] {
    const { pattern, position } = this.#solution.model.symbolic;
    return Array.from(
      pattern.columns.subarray(pattern.starts[k]!, pattern.starts[k + 1]!),
      (u) => position[u]!,
    );
  }

  #rowTimes(k: number, column: Float64Array): number {
    const { pattern, position } = this.#solution.model.symbolic;
    let sum = 0;
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      sum += this.#solution.evaluation.jacobian[p]! * column[position[pattern.columns[p]!]!]!;
    }
    return sum;
  }
}

/** Which pulls can move a node by much: its own, those between hubs, and `others`. */
class Nearby {
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
