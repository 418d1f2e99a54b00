import type { Vec } from '../geometry/point.ts';
import { factorAt, type Settled, settle } from './adjust.ts';
import { type Model, PER_NODE, rowsOf, withoutRows } from './model.ts';
import { guards } from './redundancy.ts';
import type { Tested } from './snooping.ts';
import { InverseColumns, LANES, selectedInverse } from './sparse-inverse.ts';
import { slotAt } from './sparse-symbolic.ts';
import type { Covariance } from './types.ts';

/** A settled adjustment with what is needed of its inverse. */
export interface Solution extends Settled {
  readonly model: Model;
  readonly weights: Float64Array;
  readonly factor: Float64Array;
  /** Elements of the inverse of the normal matrix, in the slots of the factor. */
  readonly inverse: Float64Array;
  /** By row: share of a misreading that stays in the row's own residual, 0 to 1. */
  readonly redundancy: Float64Array;
  readonly degreesOfFreedom: number;
}

/**
 * Solves from a start.
 *
 * @param weights one per row, 1/σ²; 0 leaves a row out
 */
export function solve(model: Model, start: Float64Array, weights: Float64Array): Solution {
  const settled = settle(model, start, weights);
  const factor = factorAt(model, settled.evaluation, weights);
  const inverse = selectedInverse(model.symbolic, factor);
  const { jacobian } = settled.evaluation;
  return {
    ...settled,
    model,
    weights,
    factor,
    inverse,
    ...guards(model.symbolic, jacobian, weights, inverse),
  };
}

/** A post that leans by this much, metres per metre, is seen to lean: nobody reads it as plumb, or the other way round. */
const MOST_MISPLUMBED = 0.1;

/**
 * Solves again with other weights, from a solution with more. What is asked for twice is solved once: the tests for misreadings
 * and whoever then leaves out what they found want the same.
 */
export type SolveAgain = (from: Solution, weights: Float64Array) => Solution;

export function solvingAgain(): SolveAgain {
  const known: Solution[] = [];
  return (from, weights) => {
    const before = known.find((one) => one.weights.every((weight, k) => weight === weights[k]));
    if (before) return before;
    const model = withoutRows(from.model, weights);
    const solution = solve(model, from.state, weights);
    known.push(solution);
    return solution;
  };
}

/** The solution as the tests for misreadings see it. */
export function testedOf(solution: Solution, again: SolveAgain = solvingAgain()): Tested {
  const { model, evaluation, weights, chiSquare, factor, redundancy } = solution;
  const { network } = model;
  return {
    symbolic: model.symbolic,
    jacobian: evaluation.jacobian,
    residual: evaluation.residual,
    weights,
    variances: new Float64Array(rowsOf(network).map(({ sigma }) => sigma * sigma)),
    mostMisread: new Float64Array([
      ...network.placing.map(() => Number.POSITIVE_INFINITY),
      ...network.leans.map(({ over }) => MOST_MISPLUMBED * over),
    ]),
    chiSquare,
    factor,
    redundancy,
    entries: rowsOf(network).map(({ entry }) => entry),
    without: (left) => testedOf(again(solution, left), again),
  };
}

export function placeOf({ state }: Pick<Solution, 'state'>, node: number): Vec {
  return { x: state[node * PER_NODE]!, y: state[node * PER_NODE + 1]! };
}

/** Covariance of a node's place; zero along what is held. Null when no reading touches it. */
export function placeCovariance(solution: Solution, node: number): Covariance | null {
  const { datum, unknownOf } = solution.model;
  if (node === datum.a) return { xx: 0, xy: 0, yy: 0 };
  if (unknownOf[node * PER_NODE] === -1) return null;
  return covarianceAt(solution, node * PER_NODE, node * PER_NODE + 1);
}

export function leanCovariance(solution: Solution, node: number): Covariance | null {
  if (solution.model.unknownOf[node * PER_NODE + 2] === -1) return null;
  return covarianceAt(solution, node * PER_NODE + 2, node * PER_NODE + 3);
}

function covarianceAt(solution: Solution, first: number, second: number): Covariance {
  return {
    xx: covarianceOf(solution, first, first),
    xy: covarianceOf(solution, first, second),
    yy: covarianceOf(solution, second, second),
  };
}

/** Covariance of two numbers of the state that share a reading; 0 where one is held. */
function covarianceOf({ model, inverse }: Solution, a: number, b: number): number {
  const u = model.unknownOf[a]!;
  const v = model.unknownOf[b]!;
  if (u === -1 || v === -1) return 0;
  const slot = slotAt(model.symbolic, model.symbolic.position[u]!, model.symbolic.position[v]!);
  if (slot === -1) throw new RangeError('these two share no reading');
  return inverse[slot]!;
}

/** Covariances of numbers of the state with each other, whether they share a reading or not; 0 for what is held. */
export function covariancesAmong({ model, factor }: Solution, places: readonly number[]): number[][] {
  const { symbolic, unknownOf } = model;
  const columns = new InverseColumns(symbolic, factor);
  const found = new Float64Array(LANES * symbolic.size);
  const positions = places.map((at) => (unknownOf[at] === -1 ? -1 : symbolic.position[unknownOf[at]!]!));
  const free = positions.filter((position) => position !== -1);
  return positions.map((position) => {
    if (position === -1) return positions.map(() => 0);
    columns.at([{ positions: [position], values: [1] }], free, found);
    return positions.map((other) => (other === -1 ? 0 : found[LANES * other]!));
  });
}
