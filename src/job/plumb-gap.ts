import type { PlumbRead } from './entry-schema.ts';
import type { Length } from './length.ts';

/** Thousandths of a millimetre: a gap that is worked out is not rounded to the marks of a tape. */
const DIGITS = 3;

/**
 * The gap that a lean read off a level itself would show over a length: tan of the degrees, or so many marks of the vial.
 *
 * @param over metres
 */
export function plumbGap(read: PlumbRead, over: number): Length {
  const typed = (leanRead(read) * over * 1000).toFixed(DIGITS);
  return { m: Number(typed) / 1000, typed, units: 'mm' };
}

/** A lean as a level told it, metres per metre. */
const leanRead = (read: PlumbRead): number =>
  read.by === 'degrees' ? Math.tan((read.degrees * Math.PI) / 180) : read.marks * read.perMark;
