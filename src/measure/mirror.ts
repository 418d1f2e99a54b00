import { mirrored } from '../geometry/circles.ts';
import { distance, type Vec } from '../geometry/point.ts';
import { type Evaluation, emptyEvaluation, evaluate, type Model, PER_NODE } from './model.ts';
import { placeOf, type Solution } from './solution.ts';

/** Two places whose χ² differs by less are not told apart by their pulls: odds of about 2000 to 1 (e^(15/2)). */
export const SIDES_ALIKE = 15;

/** Pulls that touch each node, by row. */
export function pullsByNode({ network }: Model): number[][] {
  const out: number[][] = network.nodes.map(() => []);
  network.pulls.forEach(({ from, to }, k) => {
    out[from]!.push(k);
    out[to]!.push(k);
  });
  return out;
}

/** The other place where a node's pulls might meet. */
export interface Image {
  readonly place: Vec;
  /** How much worse the node's own pulls fit there: change of χ² with all else left as it is. */
  readonly misfit: number;
}

/** Partners nearer to each other than this give no line to mirror in, metres. */
const ONE_PLACE_M = 1e-3;

/**
 * The mirror image of a node in the line through the two partners that stand farthest apart. Two tapes always meet
 * twice; a third from off the line tells which place is meant.
 *
 * @param pulls rows of the pulls at this node
 */
export class Images {
  readonly #solution: Solution;
  readonly #scratch: Evaluation;
  readonly #state: Float64Array;

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#state = solution.state.slice();
    this.#scratch = emptyEvaluation(solution.model);
  }

  of(node: number, pulls: readonly number[]): Image | null {
    const { state } = this.#solution;
    const partners = pulls.map((k) => this.#partner(k, node));
    const first = farthest(state, partners, partners[0]);
    const second = farthest(state, partners, first);
    if (first === undefined || second === undefined) return null;
    const [p, q] = [placeOf(this.#solution, first), placeOf(this.#solution, second)];
    if (distance(p, q) < ONE_PLACE_M) return null;
    const place = mirrored(placeOf(this.#solution, node), p, q);
    return { place, misfit: this.#misfitAt(node, pulls, place) };
  }

  #partner(k: number, node: number): number {
    const { from, to } = this.#solution.model.network.pulls[k]!;
    return from === node ? to : from;
  }

  #misfitAt(node: number, pulls: readonly number[], place: Vec): number {
    const { model, state, evaluation, weights } = this.#solution;
    const at = node * PER_NODE;
    this.#state[at] = place.x;
    this.#state[at + 1] = place.y;
    evaluate(model, this.#state, this.#scratch, pulls);
    this.#state.set(state.subarray(at, at + 2), at);
    let change = 0;
    for (const k of pulls) {
      const there = this.#scratch.residual[k]!;
      const here = evaluation.residual[k]!;
      change += weights[k]! * (there * there - here * here);
    }
    return change;
  }
}

/** The node that stands farthest from another; undefined when there is none to stand anywhere. */
function farthest(
  state: Float64Array,
  nodes: readonly number[],
  from: number | undefined,
): number | undefined {
  if (from === undefined) return undefined;
  let best = from;
  let greatest = 0;
  for (const node of nodes) {
    const dx = state[node * PER_NODE]! - state[from * PER_NODE]!;
    const dy = state[node * PER_NODE + 1]! - state[from * PER_NODE + 1]!;
    const square = dx * dx + dy * dy;
    if (!(square > greatest)) continue;
    greatest = square;
    best = node;
  }
  return best;
}
