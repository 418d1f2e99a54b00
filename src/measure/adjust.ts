import { bendOf, chiSquareOf, type Evaluation, emptyEvaluation, evaluate, type Model } from './model.ts';
import { addNormal, factorise, setDiagonal, solveInPlace } from './sparse-cholesky.ts';

/**
 * Every unknown is taken to lie within this of where the iteration stands, one sigma, metres: wider than any site. It
 * keeps the equations solvable when the readings leave something undetermined (which then stays where it is, with an
 * uncertainty that gives it away) and pulls nothing towards any place, since at the end of the iteration the step is 0.
 * It makes a variance too small by one part in (`LOOSE_M`/σ)²: one in a million for a place known to a metre.
 */
export const LOOSE_M = 1000;
const RIDGE = 1 / (LOOSE_M * LOOSE_M);

/**
 * The iteration ends with the step that would lower χ² by less. Such a step moves every place by less than 1e-7 of its
 * sigma, and what is left after it is smaller by another power of convergence: on 200 random networks below 2e-11 m.
 */
const DONE = 1e-14;
/** Below this share of χ², a change of it is rounding; the step is then taken unlooked at. */
const ROUNDING = 1e-12;
/** Four rounds do for honest readings. Random pulls that contradict each other by metres have needed up to 40. */
const MOST_ROUNDS = 200;
/** After so many rounds, or a step that failed, residuals are not small and the bend of the equations is counted too. */
const PLAIN_ROUNDS = 8;
/** Damping relative to the greatest diagonal element: where it starts once a plain step fails, and how it changes. */
const FIRST_DAMPING = 1e-4;
const HARDER = 8;
const EASIER = 1 / 5;
/** Damping below this does nothing that matters and is dropped; above, no step is left. */
const LEAST_DAMPING = 1e-9;
const MOST_DAMPING = 1e12;

/** With more damping than this a small gain says nothing of how near the best fit is. */
const TELLING_DAMPING = 1;

export interface Settled {
  readonly state: Float64Array;
  readonly evaluation: Evaluation;
  readonly chiSquare: number;
  /** False when the rounds ran out, or no step helped any more. */
  readonly settled: boolean;
  readonly rounds: number;
}

/**
 * Least squares by Gauss–Newton. Where a step does not lower the weighted sum of squares, or rounds go on, the second
 * derivatives are counted too (Newton) and the step is damped until it does (Levenberg 1944). The sum never rises: pulls
 * that contradict each other by metres end in a best fit, not in a runaway.
 *
 * @param weights one per row, 1/σ²; 0 leaves a row out
 */
export function settle(model: Model, start: Float64Array, weights: Float64Array): Settled {
  const stepper = new Stepper(model, weights);
  let state: Float64Array = start;
  let now = emptyEvaluation(model);
  let trial = emptyEvaluation(model);
  evaluate(model, state, now);
  let chiSquare = chiSquareOf(now.residual, weights);
  let damping = 0;
  let bending = false;
  let round = 1;
  for (; round <= MOST_ROUNDS && damping <= MOST_DAMPING; round++) {
    bending ||= round > PLAIN_ROUNDS;
    const gain = stepper.step(now, damping, bending);
    const next = stepper.moved(state);
    evaluate(model, next, trial);
    const nextChiSquare = chiSquareOf(trial.residual, weights);
    if (gain >= 0 && gain <= DONE && damping <= TELLING_DAMPING) {
      return { state: next, evaluation: trial, chiSquare: nextChiSquare, settled: true, rounds: round };
    }
    if (gain > 0 && (nextChiSquare < chiSquare || gain <= ROUNDING * chiSquare)) {
      state = next;
      [now, trial] = [trial, now];
      chiSquare = nextChiSquare;
      damping = damping * EASIER < LEAST_DAMPING ? 0 : damping * EASIER;
    } else {
      bending = true;
      damping = Math.max(damping * HARDER, FIRST_DAMPING);
    }
  }
  return { state, evaluation: now, chiSquare, settled: false, rounds: round };
}

/** Holds the scratch arrays of one iteration. */
class Stepper {
  readonly #model: Model;
  readonly #weights: Float64Array;
  readonly #matrix: Float64Array;
  readonly #work: Float64Array;
  readonly #step: Float64Array;

  constructor(model: Model, weights: Float64Array) {
    const { size, rowIndex } = model.symbolic;
    this.#model = model;
    this.#weights = weights;
    this.#matrix = new Float64Array(rowIndex.length);
    this.#work = new Float64Array(size);
    this.#step = new Float64Array(size);
  }

  /**
   * Computes the next step.
   *
   * @returns how much it would lower χ² if the equations were straight; -1 when there is no step to take
   */
  step(at: Evaluation, damping: number, bending: boolean): number {
    const { symbolic } = this.#model;
    setDiagonal(symbolic, RIDGE, this.#matrix);
    addNormal(symbolic, at.jacobian, this.#weights, this.#matrix);
    if (damping > 0) this.#damp(damping);
    if (bending) {
      const bend = bendOf(this.#model, this.#weights, at);
      addNormal(symbolic, bend.across, bend.weights, this.#matrix);
    }
    this.#gradient(at);
    const gradient = this.#step.slice();
    if (!factorise(symbolic, this.#matrix, this.#work)) {
      this.#work.fill(0);
      this.#step.fill(0);
      return -1;
    }
    solveInPlace(symbolic, this.#matrix, this.#step);
    let gain = 0;
    for (let i = 0; i < gradient.length; i++) gain += gradient[i]! * this.#step[i]!;
    return gain;
  }

  #damp(damping: number): void {
    const { columnStarts, size } = this.#model.symbolic;
    let greatest = 0;
    for (let j = 0; j < size; j++) greatest = Math.max(greatest, this.#matrix[columnStarts[j]!]!);
    for (let j = 0; j < size; j++) this.#matrix[columnStarts[j]!]! += damping * greatest;
  }

  /** Jᵀ W v, by position, into the step. */
  #gradient({ jacobian, residual }: Evaluation): void {
    const { pattern, position } = this.#model.symbolic;
    this.#step.fill(0);
    for (let k = 0; k < pattern.rows; k++) {
      const pull = this.#weights[k]! * residual[k]!;
      if (pull === 0) continue;
      for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
        this.#step[position[pattern.columns[p]!]!]! += pull * jacobian[p]!;
      }
    }
  }

  moved(state: Float64Array): Float64Array {
    const { unknownOf, symbolic } = this.#model;
    const next = state.slice();
    for (let i = 0; i < next.length; i++) {
      const unknown = unknownOf[i]!;
      if (unknown !== -1) next[i]! += this.#step[symbolic.position[unknown]!]!;
    }
    return next;
  }
}

/**
 * The factor of the normal matrix at a settled state, in the slots of the model's factor. Should rounding make it
 * indefinite (readings whose weights lie further apart than a double can hold), the ridge is raised until it is not.
 */
export function factorAt(model: Model, evaluation: Evaluation, weights: Float64Array): Float64Array {
  const { size, rowIndex } = model.symbolic;
  const factor = new Float64Array(rowIndex.length);
  for (let ridge = RIDGE; ; ridge *= RAISED) {
    setDiagonal(model.symbolic, ridge, factor);
    addNormal(model.symbolic, evaluation.jacobian, weights, factor);
    if (factorise(model.symbolic, factor, new Float64Array(size))) return factor;
    if (ridge > HOPELESS) throw new Error('the normal matrix holds something that is not a number');
  }
}

const RAISED = 1000;
/** Above every weight that a reading can have. */
const HOPELESS = 1e40;
