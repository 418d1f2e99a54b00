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
    if (others.length === 0) return worst;
    const influence = influences.on(index, others);
    for (let i = 0; i < others.length; i++) {
      worst = Math.max(worst, shiftBy(solution, others[i]!, influence[i]!));
    }
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
