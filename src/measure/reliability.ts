import { pullsByNode } from './mirror.ts';
import { PER_NODE } from './model.ts';
import { LEAST_REDUNDANCY } from './redundancy.ts';
import type { Solution } from './solution.ts';
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

/** In a network of more nodes, only pulls near a point are looked at; see `nearbyRows`. */
const SMALL_NETWORK = 60;
/** A node with more pulls than this is a stake that holds the whole network: it makes nothing near. */
const HUB_PULLS = 16;

/**
 * By node: how far the worst pull misreading that would go unnoticed could move it, metres (external reliability).
 * Infinity when a pull without a guard moves it.
 */
export function unseenShifts(solution: Solution): Float64Array {
  const { model } = solution;
  const { network, unknownOf, symbolic } = model;
  const nearby = nearbyRows(solution);
  const columns = new InverseColumns(symbolic, solution.factor);
  const shifts = new Float64Array(network.nodes.length);
  for (const { index } of network.nodes) {
    const x = unknownOf[index * PER_NODE]!;
    if (x === -1) continue;
    const rows = nearby(index);
    const targets = positionsOf(solution, rows);
    const alongX = influences(solution, rows, columns.at(symbolic.position[x]!, targets));
    const y = unknownOf[index * PER_NODE + 1]!;
    const alongY = y === -1 ? null : influences(solution, rows, columns.at(symbolic.position[y]!, targets));
    shifts[index] = worstOf(solution, rows, alongX, alongY);
  }
  return shifts;
}

function positionsOf({ model }: Solution, rows: readonly number[]): number[] {
  const { pattern, position } = model.symbolic;
  const out: number[] = [];
  for (const k of rows) {
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++)
      out.push(position[pattern.columns[p]!]!);
  }
  return out;
}

/** Change of one unknown per metre of each row's reading: Q Jᵀ w. */
function influences({ model, evaluation, weights }: Solution, rows: readonly number[], column: Float64Array) {
  const { pattern, position } = model.symbolic;
  return rows.map((k) => {
    let sum = 0;
    for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
      sum += evaluation.jacobian[p]! * column[position[pattern.columns[p]!]!]!;
    }
    return weights[k]! * sum;
  });
}

function worstOf(
  { redundancy, model }: Solution,
  rows: readonly number[],
  alongX: readonly number[],
  alongY: readonly number[] | null,
): number {
  let worst = 0;
  rows.forEach((k, i) => {
    const influence = Math.hypot(alongX[i]!, alongY ? alongY[i]! : 0);
    const r = redundancy[k]!;
    const unguarded = r < GUARDED_FROM && influence > MOVES_FROM;
    const misreading = unguarded
      ? Number.POSITIVE_INFINITY
      : smallestCaught(model.network.pulls[k]!.sigma, Math.max(r, LEAST_REDUNDANCY));
    worst = Math.max(worst, influence * misreading);
  });
  return worst;
}

/**
 * Which pulls can move a node by much: in a small network all; else those at the node, at its partners, and those
 * between stakes that hold the whole network. A misreading's effect fades with each step away.
 */
function nearbyRows(solution: Solution): (node: number) => number[] {
  const { model } = solution;
  const { nodes, pulls } = model.network;
  if (nodes.length <= SMALL_NETWORK) {
    const all = pulls.map((_, k) => k);
    return () => all;
  }
  const byNode = pullsByNode(model);
  const isHub = (node: number) => byNode[node]!.length > HUB_PULLS;
  const betweenHubs = pulls.flatMap(({ from, to }, k) => (isHub(from) && isHub(to) ? [k] : []));
  return (node) => {
    const near = new Set([...betweenHubs, ...byNode[node]!]);
    for (const k of byNode[node]!) {
      const { from, to } = pulls[k]!;
      const other = from === node ? to : from;
      if (!isHub(other)) for (const row of byNode[other]!) near.add(row);
    }
    return [...near];
  };
}
