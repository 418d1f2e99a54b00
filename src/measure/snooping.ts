import { CRITICAL } from '../plan/luck.ts';
import { solveInPlace } from './sparse-cholesky.ts';
import type { Symbolic } from './sparse-symbolic.ts';
import type { Suspicion } from './types.ts';

/** A reading with less redundancy than this is not tested: what little shows in its residual is not to be built on. */
const TESTED_FROM = 0.01;

/**
 * Suspects are not told apart while the likelier is less than this many times as likely as the other. The likelihoods of
 * "k alone is wrong" and "l alone is wrong" are as exp((w_k² − w_l²)/2).
 */
const ODDS = 100;
export const ALIKE_WITHIN = 2 * Math.log(ODDS);

/** Below this correlation of their tests, a misreading of one reading does not show as one of the other. */
const STANDS_IN_FROM = 0.5;

/** After this many, the log needs a person, not more arithmetic. */
const MOST_SUSPICIONS = 10;

/** What the tests need of an adjustment, be it of pulls or of rod readings. Arrays are by row. */
export interface Tested {
  readonly symbolic: Symbolic;
  readonly jacobian: Float64Array;
  /** Reading less predicted. */
  readonly residual: Float64Array;
  /** 0 for what is left out. */
  readonly weights: Float64Array;
  readonly variances: Float64Array;
  /** A misreading greater than this is hard to believe where another reading would explain it too. */
  readonly mostMisread: Float64Array;
  readonly chiSquare: number;
  readonly factor: Float64Array;
  readonly redundancy: Float64Array;
  /** Null for a guess, which nobody read and so nobody misread. */
  readonly entries: readonly (string | null)[];
  /** The same readings settled with other weights. */
  without(weights: Float64Array): Tested;
}

/** |residual| over its own sigma, 0 where redundancy is 0; of any row. */
export function standardised(
  { residual, weights, redundancy }: Pick<Tested, 'residual' | 'weights' | 'redundancy'>,
  k: number,
): number {
  const r = redundancy[k]!;
  return r > 0 ? (Math.abs(residual[k]!) * Math.sqrt(weights[k]!)) / Math.sqrt(r) : 0;
}

/**
 * Data snooping (Baarda 1968): the reading with the greatest standardised residual beyond `CRITICAL` is suspected; with it
 * left out, the rest is settled again and searched for another. A reading that fits what all the others say in the end was
 * suspected only because another was wrong, and is cleared, if what was found after it explains the readings without it
 * (`isCleared`). Leaving out is a thought experiment: it changes nothing in
 * `tested`.
 */
export function suspicionsOf(tested: Tested): Suspicion[] {
  const suspects: Found[] = [];
  let current = tested;
  while (suspects.length < MOST_SUSPICIONS) {
    const worst = greatestResidual(current);
    if (worst === -1) break;
    const bends = standardised(current, worst) > STRAIGHT_TO;
    const found = bends ? toldByTrial(current, worst) : toldByResiduals(current, worst);
    suspects.push({ ...found, before: current });
    current = found.rest;
  }
  return suspects
    .filter((suspect, i) => !isCleared(suspect, suspects.slice(i + 1), current))
    .map(({ rows, rest }) => ({
      // A station and an offset were written down as one.
      entries: [...new Set(rows.flatMap((k) => tested.entries[k] ?? []))],
      misreading: rest.residual[rows[0]!]!,
    }));
}

/** Rows one of which is believed wrong, likeliest first, and everything settled without that. */
interface Suspects {
  readonly rows: readonly number[];
  readonly rest: Tested;
}

/** Suspects and what they were found in. */
interface Found extends Suspects {
  readonly before: Tested;
}

function leavingOut(tested: Tested, ...rows: readonly number[]): Tested {
  const weights = tested.weights.slice();
  for (const row of rows) weights[row] = 0;
  return tested.without(weights);
}

/**
 * Whether what was found later is why an earlier suspect looked wrong. Then it fits once all suspects are left out, and
 * leaving out the later ones instead of it explains the readings about as well: were it `ODDS` times less likely, an inch
 * that stands out at 7 sigmas would be cleared by what luck shows at 3.4 where, without it, too little guards the place.
 */
function isCleared({ rows, rest, before }: Found, later: readonly Found[], allOut: Tested): boolean {
  if (later.length === 0 || !fits(allOut, rows[0]!)) return false;
  const instead = leavingOut(before, ...later.map((other) => other.rows[0]!));
  return instead.chiSquare <= rest.chiSquare + ALIKE_WITHIN;
}

/** True when a row that was left out agrees with what the others predict of it. */
function fits(rest: Tested, row: number): boolean {
  const own = rest.variances[row]!;
  const predicted = rowTimes(rest, row, responseTo(rest, row));
  return Math.abs(rest.residual[row]!) <= CRITICAL * Math.sqrt(own + predicted);
}

function isTested({ weights, redundancy, entries }: Tested, k: number): boolean {
  return weights[k]! > 0 && redundancy[k]! >= TESTED_FROM && entries[k] !== null;
}

function greatestResidual(tested: Tested): number {
  let worst = -1;
  let greatest = CRITICAL;
  for (let k = 0; k < tested.residual.length; k++) {
    if (!isTested(tested, k)) continue;
    const w = standardised(tested, k);
    if (w > greatest) {
      greatest = w;
      worst = k;
    }
  }
  return worst;
}

/** The worst, then the rows whose misreading would explain the residuals about as well, likeliest first. */
function toldByResiduals(tested: Tested, worst: number): Suspects {
  const { weights, redundancy } = tested;
  const least = standardised(tested, worst) ** 2 - ALIKE_WITHIN;
  const response = responseTo(tested, worst);
  const alike: number[] = [];
  for (let k = 0; k < weights.length; k++) {
    if (k === worst || !isTested(tested, k) || standardised(tested, k) ** 2 < least) continue;
    const shared = Math.abs(rowTimes(tested, k, response)) * Math.sqrt(weights[k]! * weights[worst]!);
    const correlation = shared / Math.sqrt(redundancy[k]! * redundancy[worst]!);
    if (correlation >= STANDS_IN_FROM) alike.push(k);
  }
  alike.sort((p, q) => standardised(tested, q) - standardised(tested, p));
  return { rows: [worst, ...alike], rest: leavingOut(tested, worst) };
}

/**
 * A standardised residual beyond this is a misreading of feet, over which the distance equations bend: residuals then
 * point to about the right reading, and leaving out each of the likeliest tells which it is.
 */
const STRAIGHT_TO = 30;
/** How many are tried, and how large a share of the greatest standardised residual they must have. */
const MOST_TRIED = 6;
const TRIED_FROM = 0.6;

function toldByTrial(tested: Tested, worst: number): Suspects {
  const least = TRIED_FROM * standardised(tested, worst);
  const tried = [...tested.weights.keys()]
    .filter((k) => isTested(tested, k) && standardised(tested, k) >= least)
    .sort((p, q) => standardised(tested, q) - standardised(tested, p))
    .slice(0, MOST_TRIED)
    .map((row) => ({ row, rest: leavingOut(tested, row) }))
    .sort((p, q) => p.rest.chiSquare - q.rest.chiSquare);
  const best = tried[0]!;
  const alike = tried.filter(({ rest }) => rest.chiSquare <= best.rest.chiSquare + ALIKE_WITHIN);
  const odd = alike.map(({ row, rest }) => Math.abs(rest.residual[row]!) > tested.mostMisread[row]!);
  const ranked = [...alike.filter((_, i) => !odd[i]), ...alike.filter((_, i) => odd[i])];
  return { rows: ranked.map(({ row }) => row), rest: ranked[0]!.rest };
}

/** Q Jᵀ of one row, by position: how every unknown answers to it, before its weight. */
function responseTo({ symbolic, factor, jacobian }: Tested, k: number): Float64Array {
  const { pattern, position, size } = symbolic;
  const out = new Float64Array(size);
  for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
    out[position[pattern.columns[p]!]!] = jacobian[p]!;
  }
  solveInPlace(symbolic, factor, out);
  return out;
}

function rowTimes({ symbolic, jacobian }: Tested, k: number, column: Float64Array): number {
  const { pattern, position } = symbolic;
  let sum = 0;
  for (let p = pattern.starts[k]!; p < pattern.starts[k + 1]!; p++) {
    sum += jacobian[p]! * column[position[pattern.columns[p]!]!]!;
  }
  return sum;
}
