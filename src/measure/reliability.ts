import { ellipseOf } from './ellipse.ts';
import { everyInfluence, type Followed, Influences, influenceOfOwn } from './influence.ts';
import { Nearby } from './nearby.ts';
import { LEAST_REDUNDANCY } from './redundancy.ts';
import { placeCovariance, type Solution } from './solution.ts';
import { LANES } from './sparse-inverse.ts';

/**
 * How many sigmas of its own residual a misreading must be worth to be noticed with power 80 % by a test at 0.1 %:
 * 3.2905 + 0.8416 (Baarda, "A testing procedure for use in geodetic networks", 1968).
 */
export const NONCENTRALITY = 4.132;

/** A pull with less redundancy has nothing that guards it: under a tenth of a misreading shows in its residual. */
export const GUARDED_FROM = 0.1;

/** In networks up to so many nodes every pull is weighed for every node. */
const SMALL_NETWORK = 60;
/**
 * In a larger one a node's own pulls are, and of the others those in which much can be misread unnoticed: guarded less than
 * this. On grids of 100 and 1000 posts that finds all but two in a thousand of the places that an unguarded pull moves, and
 * the whole of every other shift. Where a third of the pulls is missing it has found nine in ten, and 70 % of a shift.
 */
const WELL_GUARDED_FROM = 0.2;

/** An unguarded pull moves a point when more than this share of a misreading ends up in the point's place. */
export const MOVES_FROM = 0.1;

/** Smallest misreading that would be noticed, metres; Infinity where nothing guards the reading. */
export function smallestCaught(sigma: number, redundancy: number): number {
  return redundancy > 0 ? (NONCENTRALITY * sigma) / Math.sqrt(redundancy) : Number.POSITIVE_INFINITY;
}

/** Greatest misreading that may go unnoticed, metres; of a pull without a guard what the least redundancy would leave. */
export const unnoticed = (sigma: number, redundancy: number): number =>
  smallestCaught(sigma, Math.max(redundancy, LEAST_REDUNDANCY));

/** How far that moves a point, metres, given metres moved per metre misread; Infinity of a pull without a guard. */
export const shiftOfUnnoticed = (isGuarded: boolean, misreading: number, influence: number): number =>
  !isGuarded && influence > MOVES_FROM ? Number.POSITIVE_INFINITY : influence * misreading;

/**
 * By node: how far the worst pull misreading that would go unnoticed could move it, metres (external reliability).
 * Infinity when a pull without a guard moves it.
 */
export function unseenShifts(solution: Solution): Float64Array {
  const unseen = unseenMisreadings(solution);
  const shifts = new Float64Array(solution.model.network.nodes.length);
  if (shifts.length <= SMALL_NETWORK) {
    everyInfluence(solution, (k, node, influence) => raise(shifts, node, shiftBy(unseen, k, influence)));
    return shifts;
  }
  const nearby = new Nearby(solution);
  for (let node = 0; node < shifts.length; node++) {
    for (const k of nearby.own(node)) {
      raise(shifts, node, shiftBy(unseen, k, influenceOfOwn(solution, k, node)));
    }
  }
  follow(solution, nearby, unseen, shifts);
  return shifts;
}

/** Raises the shifts of nodes by what misreadings elsewhere do to them. */
function follow(solution: Solution, nearby: Nearby, unseen: Unseen, shifts: Float64Array): void {
  const influences = new Influences(solution);
  let waiting: Followed[] = [];
  const weigh = () => {
    influences.of(waiting, (k, node, influence) => raise(shifts, node, shiftBy(unseen, k, influence)));
    waiting = [];
  };
  for (const row of followedRows(solution, nearby, unseen)) {
    const nodes = nearby.reachOf(row, (node) => mayBeWorst(unseen, row, node, shifts));
    if (nodes.length > 0) waiting.push({ row, nodes });
    if (waiting.length === LANES) weigh();
  }
  weigh();
}

/** Readings without any guard come first: what they move needs no more looking at. */
function followedRows({ redundancy }: Solution, nearby: Nearby, { guarded }: Unseen): number[] {
  const rows = [...guarded.keys()].filter((k) => redundancy[k]! < WELL_GUARDED_FROM || nearby.joinsHubs(k));
  return [...rows.filter((k) => guarded[k] === 0), ...rows.filter((k) => guarded[k] === 1)];
}

function raise(shifts: Float64Array, node: number, shift: number): void {
  if (shift > shifts[node]!) shifts[node] = shift;
}

/** What may be misread in each pull without being noticed, by row. */
interface Unseen {
  readonly guarded: Uint8Array;
  /** Greatest misreading, metres; for pulls without a guard what the least redundancy would leave unnoticed. */
  readonly misreading: Float64Array;
  /** By Cauchy and Schwarz a metre misread moves nothing by more than this many, √(w (1 − r)), of its own sigmas. */
  readonly mostPerSigma: Float64Array;
  /** By node, along the worst direction, metres; 0 for what is held or untouched. */
  readonly nodeSigma: Float64Array;
}

function unseenMisreadings(solution: Solution): Unseen {
  const { model, redundancy } = solution;
  const { nodes, placing: rows } = model.network;
  return {
    guarded: new Uint8Array(rows.map((_, k) => (redundancy[k]! >= GUARDED_FROM ? 1 : 0))),
    misreading: new Float64Array(rows.map(({ sigma }, k) => unnoticed(sigma, redundancy[k]!))),
    mostPerSigma: new Float64Array(rows.map(({ sigma }, k) => Math.sqrt(1 - redundancy[k]!) / sigma)),
    nodeSigma: new Float64Array(nodes.map(({ index }) => sigmaOf(solution, index))),
  };
}

function sigmaOf(solution: Solution, node: number): number {
  const covariance = placeCovariance(solution, node);
  return covariance ? ellipseOf(covariance).semiMajor : 0;
}

/** Metres by which the greatest unnoticed misreading of row k moves a node, given metres moved per metre misread. */
const shiftBy = ({ guarded, misreading }: Unseen, k: number, influence: number): number =>
  shiftOfUnnoticed(guarded[k] === 1, misreading[k]!, influence);

/** False where row k cannot move a node by more than is found already. */
function mayBeWorst(unseen: Unseen, k: number, node: number, shifts: Float64Array): boolean {
  const most = unseen.nodeSigma[node]! * unseen.mostPerSigma[k]!;
  return shiftBy(unseen, k, most) > shifts[node]!;
}
