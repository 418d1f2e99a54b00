import { mirrored } from '../geometry/circles.ts';
import { add, distance, length, subtract, type Vec } from '../geometry/point.ts';
import { type Evaluation, emptyEvaluation, evaluate, PER_NODE } from './model.ts';
import { offsetEquation } from './offset-equation.ts';
import { placeOf, type Solution } from './solution.ts';

/** Two places whose χ² differs by less are not told apart by their pulls: odds of about 2000 to 1 (e^(15/2)). */
export const SIDES_ALIKE = 15;

/** The other place where a node's readings might meet. */
export interface Image {
  readonly place: Vec;
  /** How much worse the node's own readings fit there: change of χ² with all else left as it is. */
  readonly misfit: number;
}

/** χ² of a place on the other side of a string than was said: left is seldom taken for right. */
const AGAINST_SIDE = 1e6;
/** Nearer to the string than this, metres, it may be. */
const CLEAR_OF_STRING_M = 0.1;

/** Partners nearer to each other than this give no line to mirror in, metres. */
const ONE_PLACE_M = 1e-3;

/** A line to mirror in. */
type Line = readonly [Vec, Vec];

/** The other places where a node's readings might meet: of two, the one that fits better. */
export class Images {
  readonly #solution: Solution;
  readonly #scratch: Evaluation;
  readonly #state: Float64Array;
  readonly #known = new Map<number, Image | null>();

  constructor(solution: Solution) {
    this.#solution = solution;
    this.#state = solution.state.slice();
    this.#scratch = emptyEvaluation(solution.model);
  }

  /** Worked out once, though both who settles the sides and who trusts them ask. */
  of(node: number): Image | null {
    const before = this.#known.get(node);
    if (before !== undefined) return before;
    const found = this.#find(node, this.#solution.model.byNode[node]!);
    this.#known.set(node, found);
    return found;
  }

  #find(node: number, rows: readonly number[]): Image | null {
    const at = placeOf(this.#solution, node);
    const partners = this.#partners(node, rows);
    const lines = [this.#acrossPartners(partners), this.#besideString(node, rows, partners)];
    let best: Image | null = null;
    for (const line of lines) {
      if (!line) continue;
      const place = mirrored(at, line[0], line[1]);
      const misfit = this.#misfitAt(node, rows, place);
      if (!best || misfit < best.misfit) best = { place, misfit };
    }
    return best;
  }

  /** What the node was pulled from. */
  #partners(node: number, rows: readonly number[]): number[] {
    const { pulls } = this.#solution.model.network;
    const partners: number[] = [];
    for (const k of rows) {
      const pull = pulls[k];
      if (pull) partners.push(pull.from === node ? pull.to : pull.from);
    }
    return partners;
  }

  /**
   * The line through the two partners that stand farthest apart. Two tapes always meet twice; a third from off the line
   * tells which place is meant.
   */
  #acrossPartners(partners: readonly number[]): Line | null {
    const { state } = this.#solution;
    const first = farthest(state, partners, partners[0]);
    const second = farthest(state, partners, first);
    if (first === undefined || second === undefined) return null;
    const line = [placeOf(this.#solution, first), placeOf(this.#solution, second)] as const;
    return distance(...line) >= ONE_PLACE_M ? line : null;
  }

  /**
   * A tape and a station, or an offset, meet twice too: on both sides of the line through the tape's other end that lies
   * along the string, or square to it.
   */
  #besideString(node: number, rows: readonly number[], partners: readonly number[]): Line | null {
    const { pulls, offsets } = this.#solution.model.network;
    const partner = partners[0];
    if (partner === undefined || offsets.length === 0) return null;
    const off = rows.flatMap((k) => offsets[k - pulls.length] ?? []).find(({ of }) => of === node);
    if (!off) return null;
    const string = subtract(placeOf(this.#solution, off.to), placeOf(this.#solution, off.from));
    if (length(string) < ONE_PLACE_M) return null;
    const place = placeOf(this.#solution, partner);
    return [place, add(place, off.part === 'station' ? string : { x: -string.y, y: string.x })];
  }

  #misfitAt(node: number, rows: readonly number[], place: Vec): number {
    const { model, state, evaluation, weights } = this.#solution;
    const at = node * PER_NODE;
    this.#state[at] = place.x;
    this.#state[at + 1] = place.y;
    evaluate(model, this.#state, this.#scratch, rows);
    this.#state.set(state.subarray(at, at + 2), at);
    let change =
      this.#againstSide(node, rows, place) - this.#againstSide(node, rows, placeOf({ state }, node));
    for (const k of rows) {
      const [here, there] = [evaluation.residual[k]!, this.#scratch.residual[k]!];
      change += weights[k]! * (there * there - here * here);
    }
    return change;
  }

  /** A station that says on which side of its string a thing was, and not how far off it. */
  #againstSide(node: number, rows: readonly number[], place: Vec): number {
    const { pulls, offsets } = this.#solution.model.network;
    if (offsets.length === 0) return 0;
    const wrong = rows.some((k) => {
      const row = offsets[k - pulls.length];
      if (!row || row.of !== node || row.part !== 'station' || row.side === 0) return false;
      const [from, to] = [placeOf(this.#solution, row.from), placeOf(this.#solution, row.to)];
      const { predicted } = offsetEquation({ part: 'offset', gap: 0 }, add(place, row.reach), from, to);
      return predicted * row.side < -CLEAR_OF_STRING_M;
    });
    return wrong ? AGAINST_SIDE : 0;
  }
}

/** Of some nodes the one that stands farthest from another; undefined where there is no such other. */
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
