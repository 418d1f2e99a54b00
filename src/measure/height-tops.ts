import type { HeightNetwork, SolvedHeights } from './height-network.ts';
import { solveInPlace } from './sparse-cholesky.ts';

/** How the heights of the tops that were read hang together. */
export interface TopsCovariance {
  /** `top:3`, of every top with a height. */
  readonly keys: readonly string[];
  /** Square metres, in the order of `keys` both ways. */
  readonly covariance: readonly Float64Array[];
}

const TOP = /^top:/;

export function topsCovariance(network: HeightNetwork, solved: SolvedHeights): TopsCovariance {
  const { symbolic } = network;
  const keys = network.points(solved).flatMap(({ key }) => (TOP.test(key) ? [key] : []));
  const positions = keys.map((key) => network.positionOf(key)!);
  const covariance = positions.map((at) => {
    const column = new Float64Array(symbolic.size);
    column[at] = 1;
    solveInPlace(symbolic, solved.factor, column);
    return new Float64Array(positions.map((other) => column[other]!));
  });
  return { keys, covariance };
}

/**
 * Variance of each top less the mean of some, square metres: C_tt − 2 C_tm + C_mm. Readings from one set-up share its height
 * of instrument, which falls out: among themselves tops are known better than against the benchmark.
 *
 * @param of keys of the tops that make the mean; those without a height are left out
 * @returns by key, for every top with a height; empty when none of `of` has one
 */
export function variancesAgainstMean(
  { keys, covariance }: TopsCovariance,
  of: readonly string[],
): Map<string, number> {
  const members = of.map((key) => keys.indexOf(key)).filter((at) => at >= 0);
  if (members.length === 0) return new Map();
  const withMean = covariance.map((row) => members.reduce((sum, at) => sum + row[at]!, 0) / members.length);
  const ofMean = members.reduce((sum, at) => sum + withMean[at]!, 0) / members.length;
  return new Map(
    keys.map((key, at) => [key, Math.max(covariance[at]![at]! - 2 * withMean[at]! + ofMean, 0)]),
  );
}
