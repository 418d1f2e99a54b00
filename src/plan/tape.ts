import type { Instruments, TapeSpec } from '../job/plan-schema.ts';

/**
 * One sigma of a pull, metres: σ² = a² + (b·L)², a part that every pull has (reading, holding, touching) and one that
 * grows with its length.
 */
export function tapeSigma(pull: number, { tapeError, tapeErrorPerMetre }: Instruments): number {
  return Math.hypot(tapeError.m, tapeErrorPerMetre * pull);
}

/**
 * A tape that is off by more than this share of its length, or by more than this at its end, is not a tape with an error but
 * a length typed wrong: twenty times what the coarsest class of tapes may be off at a metre (class III, 1 mm; OIML R 35, from
 * memory).
 */
const MOST_OFF = 0.02;
const MOST_ZERO_M = 1;

/** Whether what the plan says of a tape can be so: only then are readings corrected by it. */
export function isTape({ nominal, actual, zero }: Pick<TapeSpec, 'nominal' | 'actual' | 'zero'>): boolean {
  return nominal.m > 0 && Math.abs(actual.m / nominal.m - 1) <= MOST_OFF && Math.abs(zero.m) <= MOST_ZERO_M;
}
