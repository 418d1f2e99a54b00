import { distance, scale, subtract, type Vec } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { CRITICAL } from '../measure/index.ts';
import { tapeSigma } from '../plan/index.ts';

export interface AllowanceAsked {
  /** Where A and B stand, in the frame of the places. */
  readonly a: Vec;
  readonly b: Vec;
  readonly instruments: Instruments;
}

/**
 * How far a pull between two stakes may be from what it should read before a tape must have been misread: both stakes driven
 * where two tapes from A and B met, each with its error along the pull, and the pull's own. The same bound as of every other
 * reading, in all but one of a thousand.
 *
 * @returns metres; Infinity where two tapes do not fix a stake along the pull
 */
export function checkAllowance(p: Vec, q: Vec, asked: AllowanceAsked): number {
  const run = distance(p, q);
  const along = scale(subtract(q, p), 1 / run);
  const sigma = Math.hypot(
    sigmaAlong(p, along, asked),
    sigmaAlong(q, along, asked),
    tapeSigma(run, asked.instruments),
  );
  return CRITICAL * sigma;
}

/**
 * One sigma along a direction d of a place that two tapes fix. A place x off moves the tapes by u·x and v·x, u and v being
 * their unit vectors; so with d = m u + n v it moves along d by m times the one and n times the other.
 */
function sigmaAlong(at: Vec, { x, y }: Vec, { a, b, instruments }: AllowanceAsked): number {
  const [ra, rb] = [distance(a, at), distance(b, at)];
  const [u, v] = [scale(subtract(at, a), 1 / ra), scale(subtract(at, b), 1 / rb)];
  const sine = u.x * v.y - u.y * v.x;
  const [m, n] = [(x * v.y - y * v.x) / sine, (u.x * y - u.y * x) / sine];
  return Math.abs(sine) < FLAT
    ? Number.POSITIVE_INFINITY
    : Math.hypot(m * tapeSigma(ra, instruments), n * tapeSigma(rb, instruments));
}

/** Tapes that make less of an angle lie in one line: 10 nanoradians are rounding, not geometry. */
const FLAT = 1e-8;
