import type { Datum } from './datum.ts';
import { type Network, nodesOf } from './network.ts';
import { offsetEquation } from './offset-equation.ts';
import { analyse, type JacobianPattern, type Symbolic } from './sparse-symbolic.ts';

/** Numbers per node in a state: x, y and the lean's two components, zero where it has none. */
export const PER_NODE = 4;

/**
 * The equations of one network in one datum, laid out for speed: rows are readings (pulls, then offsets, then leans), a
 * *state* holds `PER_NODE` numbers per node, and *unknowns* are those of them that readings determine.
 */
export interface Model {
  readonly network: Network;
  readonly datum: Datum;
  readonly rows: number;
  readonly symbolic: Symbolic;
  /** For each number of a state its unknown, -1 where it is held or untouched. */
  readonly unknownOf: Int32Array;
  /** For each entry of the Jacobian, which derivative it is: index into a row's x y lx ly of `from`, of `to`, of `of`. */
  readonly derivativeOf: Uint8Array;
  /** By row, 1/σ²; 0 for what is left out. */
  readonly weights: Float64Array;
  /** Pulls and offsets that touch each node, by row, without what is left out. */
  readonly byNode: readonly (readonly number[])[];
}

/** Lays out the equations: which unknowns there are and which readings touch them. */
export function modelOf(network: Network, datum: Datum): Model {
  const unknownOf = new Int32Array(network.nodes.length * PER_NODE).fill(-1);
  const held = new Set([datum.a * PER_NODE, datum.a * PER_NODE + 1, datum.b * PER_NODE + 1]);
  const nodeOf: number[] = [];
  const columns: number[] = [];
  const derivatives: number[] = [];
  const touch = (place: number, derivative: number) => {
    if (held.has(place)) return;
    if (unknownOf[place] === -1) unknownOf[place] = nodeOf.push(Math.floor(place / PER_NODE)) - 1;
    columns.push(unknownOf[place]!);
    derivatives.push(derivative);
  };
  const starts = [0];
  for (const { from, to, fromHeight, toHeight } of network.pulls) {
    touchNode(touch, from, fromHeight !== 0, 0);
    touchNode(touch, to, toHeight !== 0, PER_NODE);
    starts.push(columns.length);
  }
  for (const { from, to, of, height } of network.offsets) {
    touchNode(touch, from, false, 0);
    touchNode(touch, to, false, PER_NODE);
    touchNode(touch, of, height !== 0, 2 * PER_NODE);
    starts.push(columns.length);
  }
  for (const { node } of network.leans) {
    touch(node * PER_NODE + 2, 2);
    touch(node * PER_NODE + 3, 3);
    starts.push(columns.length);
  }
  const pattern: JacobianPattern = {
    rows: starts.length - 1,
    unknowns: nodeOf.length,
    starts: new Int32Array(starts),
    columns: new Int32Array(columns),
  };
  return {
    network,
    datum,
    rows: pattern.rows,
    symbolic: analyse(pattern, new Int32Array(nodeOf), network.nodes.length),
    unknownOf,
    derivativeOf: new Uint8Array(derivatives),
    weights: new Float64Array(rowsOf(network).map(({ sigma }) => 1 / (sigma * sigma))),
    byNode: byNodeOf(network),
  };
}

function byNodeOf({ nodes, placing }: Network): number[][] {
  const out: number[][] = nodes.map(() => []);
  placing.forEach((reading, k) => {
    for (const node of nodesOf(reading)) out[node]!.push(k);
  });
  return out;
}

/** The same equations without some readings: their rows stay, and weigh nothing. */
export function withoutRows(model: Model, weights: Float64Array): Model {
  return { ...model, weights, byNode: model.byNode.map((rows) => rows.filter((k) => weights[k]! > 0)) };
}

/** What was read or guessed, in the order of the rows. */
export const rowsOf = ({ pulls, offsets, leans }: Network) => [...pulls, ...offsets, ...leans];

type Touch = (place: number, derivative: number) => void;

function touchNode(touch: Touch, node: number, raised: boolean, first: number): void {
  for (let i = 0; i < (raised ? 4 : 2); i++) touch(node * PER_NODE + i, first + i);
}

/** Shorter than this a distance has no direction that means anything: a thousandth of a millimetre. */
const NO_DISTANCE_M = 1e-6;

/** Readings as computed from a state, and how they change with it. */
export interface Evaluation {
  /** By row: what the reading would be, metres. */
  readonly predicted: Float64Array;
  /** By row: reading less predicted, metres. */
  readonly residual: Float64Array;
  /** In the order of the pattern's columns. */
  readonly jacobian: Float64Array;
  /** By row, pulls only: unit vector from `from` to `to`, and the plan distance. */
  readonly direction: Float64Array;
  readonly distance: Float64Array;
}

export function emptyEvaluation({ rows, network, derivativeOf }: Model): Evaluation {
  return {
    predicted: new Float64Array(rows),
    residual: new Float64Array(rows),
    jacobian: new Float64Array(derivativeOf.length),
    direction: new Float64Array(2 * network.pulls.length),
    distance: new Float64Array(network.pulls.length),
  };
}

/**
 * Readings of a state, row by row, into `out`.
 *
 * A pull reads √((d − gap)² + rise²), d being the plan distance between the two places touched; a post's place at height
 * h is its place at the ground plus h times its lean. For what is read off a string see `offsetEquation`. A plumb reading
 * is the lean along the face's normal times the length it was read over.
 *
 * @param only rows of the pulls and offsets that are wanted; without it, every row
 */
export function evaluate(model: Model, state: Float64Array, out: Evaluation, only?: readonly number[]): void {
  const { pulls, offsets, leans } = model.network;
  const places = pulls.length + offsets.length;
  if (only) {
    for (const k of only) evaluatePlace(model, k, state, out);
    return;
  }
  for (let k = 0; k < places; k++) evaluatePlace(model, k, state, out);
  for (let i = 0; i < leans.length; i++) {
    const { node, normal, over, reading } = leans[i]!;
    const k = places + i;
    const at = node * PER_NODE;
    const predicted = over * (normal.x * state[at + 2]! + normal.y * state[at + 3]!);
    out.predicted[k] = predicted;
    out.residual[k] = reading - predicted;
    const first = model.symbolic.pattern.starts[k]!;
    out.jacobian[first] = over * normal.x;
    out.jacobian[first + 1] = over * normal.y;
  }
}

function evaluatePlace(model: Model, k: number, state: Float64Array, out: Evaluation): void {
  if (k < model.network.pulls.length) evaluatePull(model, k, state, out);
  else evaluateOffset(model, k, state, out);
}

function evaluateOffset(model: Model, k: number, state: Float64Array, out: Evaluation): void {
  const row = model.network.offsets[k - model.network.pulls.length]!;
  const { reach, height, reading } = row;
  const at = (node: number) => ({ x: state[node * PER_NODE]!, y: state[node * PER_NODE + 1]! });
  const o = row.of * PER_NODE;
  const place = {
    x: state[o]! + height * state[o + 2]! + reach.x,
    y: state[o + 1]! + height * state[o + 3]! + reach.y,
  };
  const { predicted, ...by } = offsetEquation(row, place, at(row.from), at(row.to));
  out.predicted[k] = predicted;
  out.residual[k] = reading - predicted;
  const { starts } = model.symbolic.pattern;
  for (let p = starts[k]!; p < starts[k + 1]!; p++) {
    const which = model.derivativeOf[p]!;
    const of = which < PER_NODE ? by.byFrom : which < 2 * PER_NODE ? by.byTo : by.byOf;
    out.jacobian[p] = ((which & 1) === 0 ? of.x : of.y) * ((which & 2) === 0 ? 1 : height);
  }
}

function evaluatePull(model: Model, k: number, state: Float64Array, out: Evaluation): void {
  const pull = model.network.pulls[k]!;
  const f = pull.from * PER_NODE;
  const t = pull.to * PER_NODE;
  const { fromHeight: hf, toHeight: ht } = pull;
  const dx = state[t]! + ht * state[t + 2]! - state[f]! - hf * state[f + 2]! + pull.offset.x;
  const dy = state[t + 1]! + ht * state[t + 3]! - state[f + 1]! - hf * state[f + 3]! + pull.offset.y;
  const distance = Math.sqrt(dx * dx + dy * dy);
  const known = distance > NO_DISTANCE_M;
  const ex = known ? dx / distance : 1;
  const ey = known ? dy / distance : 0;
  const plan = distance - pull.gap;
  const predicted = pull.rise === 0 ? plan : Math.sqrt(plan * plan + pull.rise * pull.rise);
  const slope = pull.rise === 0 ? 1 : plan / predicted;
  out.predicted[k] = predicted;
  out.residual[k] = pull.reading - predicted;
  out.distance[k] = distance;
  out.direction[2 * k] = ex;
  out.direction[2 * k + 1] = ey;
  const { starts } = model.symbolic.pattern;
  for (let p = starts[k]!; p < starts[k + 1]!; p++) {
    const which = model.derivativeOf[p]!;
    const along = slope * ((which & 1) === 0 ? ex : ey);
    const outward = which < PER_NODE ? -along : along;
    out.jacobian[p] = (which & 2) === 0 ? outward : outward * (which < PER_NODE ? hf : ht);
  }
}

/** How the pulls' equations bend, as further rows of weight `weights` that add to the normal matrix. */
export interface Bend {
  /** In the order of the pattern's columns: the tape's other end as it moves across the tape. */
  readonly across: Float64Array;
  /** By row, negative where the tape reads longer than computed. */
  readonly weights: Float64Array;
}

/**
 * The second derivatives that Gauss–Newton leaves out: of ½ w (c − r)² with c the distance, w (c − r)/d square to the tape.
 * They matter only where residuals are not small against distances. Offsets bend only as their string turns, and damping
 * does for that.
 */
export function bendOf(model: Model, weights: Float64Array, { residual, jacobian, ...at }: Evaluation): Bend {
  const across = new Float64Array(jacobian.length);
  const bent = new Float64Array(model.rows);
  const { starts } = model.symbolic.pattern;
  model.network.pulls.forEach(({ fromHeight, toHeight }, k) => {
    bent[k] = (-weights[k]! * residual[k]!) / Math.max(at.distance[k]!, NO_DISTANCE_M);
    for (let p = starts[k]!; p < starts[k + 1]!; p++) {
      const which = model.derivativeOf[p]!;
      const square = (which & 1) === 0 ? -at.direction[2 * k + 1]! : at.direction[2 * k]!;
      const height = which < PER_NODE ? fromHeight : toHeight;
      across[p] = (which < PER_NODE ? -square : square) * ((which & 2) === 0 ? 1 : height);
    }
  });
  return { across, weights: bent };
}

/** Weighted sum of squared residuals. */
export function chiSquareOf(residual: Float64Array, weights: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < residual.length; k++) sum += weights[k]! * residual[k]! * residual[k]!;
  return sum;
}
