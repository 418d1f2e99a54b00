import { ellipseOf } from './ellipse.ts';
import { Influences, influenceFrom, influenceOfOwn } from './influence.ts';
import { Nearby } from './nearby.ts';
import { LEAST_REDUNDANCY } from './redundancy.ts';
import { responseTo } from './snooping.ts';
import { placeCovariance, type Solution, testedOf } from './solution.ts';

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

/**
 * By node: how far the worst pull misreading that would go unnoticed could move it, metres (external reliability).
 * Infinity when a pull without a guard moves it.
 */
export function unseenShifts(solution: Solution): Float64Array {
  const { network } = solution.model;
  const nearby = new Nearby(solution);
  const influences = new Influences(solution);
  const unseen = unseenMisreadings(solution);
  const tested = testedOf(solution);
  const hubRows = nearby.betweenHubs.map((row) => ({ row, response: responseTo(tested, row) }));
  return Float64Array.from(network.nodes, ({ index }) => {
    let worst = 0;
    for (const k of nearby.own(index))
      worst = Math.max(worst, shiftBy(unseen, k, influenceOfOwn(solution, k, index)));
    for (const { row, response } of hubRows) {
      worst = Math.max(worst, shiftBy(unseen, row, influenceFrom(solution, row, response, index)));
    }
    if (worst === Number.POSITIVE_INFINITY) return worst;
    const covariance = placeCovariance(solution, index);
    const sigma = covariance ? ellipseOf(covariance).semiMajor : 0;
    const others = nearby
      .others(index)
      .filter((k) => shiftBy(unseen, k, sigma * unseen.mostPerSigma[k]!) > worst);
    if (others.length === 0) return worst;
    const influence = influences.on(index, others);
    for (let i = 0; i < others.length; i++)
      worst = Math.max(worst, shiftBy(unseen, others[i]!, influence[i]!));
    return worst;
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
