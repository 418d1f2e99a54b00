import { ellipseOf } from './ellipse.ts';
import { Influences, influenceOfOwn } from './influence.ts';
import { Nearby } from './nearby.ts';
import { LEAST_REDUNDANCY } from './redundancy.ts';
import { placeCovariance, type Solution } from './solution.ts';

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
const MOVES_FROM = 0.1;

/** Smallest misreading that would be noticed, metres; Infinity where nothing guards the reading. */
export function smallestCaught(sigma: number, redundancy: number): number {
  return redundancy > 0 ? (NONCENTRALITY * sigma) / Math.sqrt(redundancy) : Number.POSITIVE_INFINITY;
}

/**
 * By node: how far the worst pull misreading that would go unnoticed could move it, metres (external reliability).
 * Infinity when a pull without a guard moves it.
 */
export function unseenShifts(solution: Solution): Float64Array {
  const nearby = new Nearby(solution);
  const influences = new Influences(solution);
  const unseen = unseenMisreadings(solution);
  const { nodes } = solution.model.network;
  const shifts = Float64Array.from(nodes, ({ index }) =>
    nearby
      .own(index)
      .reduce((worst, k) => Math.max(worst, shiftBy(unseen, k, influenceOfOwn(solution, k, index))), 0),
  );
  if (nodes.length <= SMALL_NETWORK) weighAll(solution, influences, unseen, shifts);
  else weighPoorlyGuarded(solution, nearby, influences, unseen, shifts);
  return shifts;
}

function weighAll(solution: Solution, influences: Influences, unseen: Unseen, shifts: Float64Array): void {
  const all = solution.model.network.pulls.map((_, k) => k);
  for (const { index } of solution.model.network.nodes) {
    const covariance = placeCovariance(solution, index);
    if (!covariance || shifts[index] === Number.POSITIVE_INFINITY) continue;
    const sigma = ellipseOf(covariance).semiMajor;
    let worst = shifts[index]!;
    const rows = all.filter((k) => shiftBy(unseen, k, sigma * unseen.mostPerSigma[k]!) > worst);
    if (rows.length === 0) continue;
    const influence = influences.on(index, rows);
    for (let i = 0; i < rows.length; i++) worst = Math.max(worst, shiftBy(unseen, rows[i]!, influence[i]!));
    shifts[index] = worst;
  }
}

function weighPoorlyGuarded(
  { redundancy }: Solution,
  nearby: Nearby,
  influences: Influences,
  unseen: Unseen,
  shifts: Float64Array,
): void {
  redundancy.subarray(0, unseen.misreading.length).forEach((r, k) => {
    if (r >= WELL_GUARDED_FROM && !nearby.joinsHubs(k)) return;
    const reach = nearby.reachOf(k).filter((node) => shifts[node]! < Number.POSITIVE_INFINITY);
    if (reach.length === 0) return;
    const influence = influences.of(k, reach);
    reach.forEach((node, i) => {
      shifts[node] = Math.max(shifts[node]!, shiftBy(unseen, k, influence[i]!));
    });
  });
}

/** What may be misread in each pull without being noticed, by row. */
interface Unseen {
  readonly guarded: Uint8Array;
  /** Greatest misreading, metres; for pulls without a guard what the least redundancy would leave unnoticed. */
  readonly misreading: Float64Array;
  /**
   * By Cauchy and Schwarz a metre misread moves nothing by more than √(w (1 − r)) of its own sigma: for passing over pulls
   * that cannot be the worst for a place.
   */
  readonly mostPerSigma: Float64Array;
}

function unseenMisreadings({ model, redundancy }: Solution): Unseen {
  const { pulls } = model.network;
  const least = (k: number) => Math.max(redundancy[k]!, LEAST_REDUNDANCY);
  return {
    guarded: Uint8Array.from(pulls, (_, k) => (redundancy[k]! >= GUARDED_FROM ? 1 : 0)),
    misreading: Float64Array.from(pulls, ({ sigma }, k) => smallestCaught(sigma, least(k))),
    mostPerSigma: Float64Array.from(pulls, ({ sigma }, k) => Math.sqrt(1 - redundancy[k]!) / sigma),
  };
}

/** Metres by which the greatest unnoticed misreading of row k moves a node, given metres moved per metre misread. */
function shiftBy({ guarded, misreading }: Unseen, k: number, influence: number): number {
  if (guarded[k] === 0 && influence > MOVES_FROM) return Number.POSITIVE_INFINITY;
  return influence * misreading[k]!;
}
