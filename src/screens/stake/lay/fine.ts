import type { Length } from '../../../job/length.ts';

/** Digits after the point, of metres: a tenth of a millimetre, finer than any tape, so that nothing is lost by rounding. */
const DIGITS = 4;

/** A length that was worked out, as it is logged. */
export const fine = (m: number): Length => {
  const typed = m.toFixed(DIGITS);
  return { m: Number(typed), typed, units: 'm' };
};
