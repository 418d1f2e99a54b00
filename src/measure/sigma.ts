import type { Instruments } from '../job/plan-schema.ts';
import { tapeSigma as statedSigma } from '../plan/tape.ts';

/** No tape is better than a hundredth of a millimetre; keeps weights finite when an error of 0 was typed. */
const LEAST_SIGMA_M = 1e-5;

/**
 * One sigma of the slope along which a tape was held when nobody measured the rise: a grade of 1 in 10, the slope from
 * which people begin to hold a tape level. A guess; `slopeDoubt` carries it.
 */
const GUESSED_GRADE = 0.1;

/**
 * One sigma of each component of a post's lean when no level was held against that side, metres per metre: a post stood
 * up by eye is within about one degree. A guess, used only where a pull touches such a post above the ground.
 */
export const GUESSED_LEAN = 0.02;

/** A plumb reading is no better than this over any length, metres per metre. */
const LEAST_PLUMB_SIGMA = 1e-5;

/** One sigma of a tape reading, metres: that of the plan's tape, but never nothing. */
export function tapeSigma(reading: number, instruments: Instruments): number {
  return Math.max(statedSigma(reading, instruments), LEAST_SIGMA_M);
}

/**
 * What an unmeasured slope adds to sigma, metres. On a grade g the tape reads L and the plan length is L(1 − g²/2), so
 * the reading can only be too long. With g normal about 0, the root mean square of L g²/2 is L σ_g² √3/2. The reading is
 * not shortened by the mean of it (half a percent of L at `GUESSED_GRADE`): that would be a number nobody measured.
 */
export function slopeDoubt(reading: number): number {
  return (reading * GUESSED_GRADE * GUESSED_GRADE * Math.sqrt(3)) / 2;
}

/** A rise comes from two rod readings or as good; metres. */
export function riseSigma({ rodError }: Instruments): number {
  return Math.SQRT2 * rodSigma({ rodError });
}

export function rodSigma({ rodError }: Pick<Instruments, 'rodError'>): number {
  return Math.max(rodError.m, LEAST_SIGMA_M);
}

export function plumbSigma({ plumbError }: Instruments): number {
  return Math.max(plumbError, LEAST_PLUMB_SIGMA);
}
