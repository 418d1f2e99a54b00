import type { EntryOf, Hold } from '../job/entry-schema.ts';
import { lengthWords } from '../job/length.ts';
import type { Situation } from '../judge/situation.ts';
import { readingOn } from '../measure/index.ts';
import { formatLength } from '../units/index.ts';
import { HELD } from './hold-choice.tsx';
import type { PullToRead } from './pull-flow.tsx';
import { alongSlope, riseBetween } from './rise.ts';

/** Stands beside a level length while the tape is held along the slope and the rise is not known. */
export const LEVEL_LENGTH = 'level length; along the slope the tape reads more';

export interface HeldTape {
  /** How the tape is held that reads `m`, or what else `m` is. */
  readonly held: string;
  /** Metres. */
  readonly m: number;
}

/** How a tape is held, and which one where it has corrections of its own: `tape Red, level`. */
export const heldWords = ({ inHand }: Pick<Situation, 'inHand'>, how: Hold['how']): string =>
  inHand ? HELD[how].replace(/^tape/, `tape ${inHand.tape.label},`) : HELD[how];

/**
 * The length to show large for a pull, as the tape in hand reads it, and what it is. Along the slope the tape's own
 * reading is known where a level has read both ends; else the level length is shown, and says that it is no such reading.
 */
export function heldTape(
  situation: Pick<Situation, 'measured' | 'inHand'>,
  { from, to, expected }: PullToRead & { readonly expected: number },
  how: Hold['how'],
): HeldTape {
  const { inHand } = situation;
  if (how === 'level') return levelTape(situation, expected);
  const rise = riseBetween(situation, from, to);
  return rise === null
    ? { held: LEVEL_LENGTH, m: readingOn(inHand, expected) }
    : { held: heldWords(situation, how), m: readingOn(inHand, alongSlope(expected, rise)) };
}

/**
 * What the same tape reads when it is held the other way, where a level has read both ends and it makes a difference:
 * `along the slope 5457 mm`; else null.
 */
export function otherHeldWords(
  situation: Pick<Situation, 'plan' | 'measured' | 'inHand'>,
  { from, to, expected }: PullToRead & { readonly expected: number },
  how: Hold['how'],
): string | null {
  const rise = riseBetween(situation, from, to);
  if (rise === null || !situation.plan) return null;
  const shown = (m: number) => formatLength(readingOn(situation.inHand, m), situation.plan!.units);
  const [level, slope] = [shown(expected), shown(alongSlope(expected, rise))];
  if (level === slope) return null;
  return how === 'level' ? `along the slope ${slope}` : `level ${level}`;
}

/** As `heldTape`, for a tape that is held level. @param length metres */
export const levelTape = (situation: Pick<Situation, 'inHand'>, length: number): HeldTape => ({
  held: heldWords(situation, 'level'),
  m: readingOn(situation.inHand, length),
});

/** What a tape read, and along a slope with which rise: `read 5457 mm, sloping, rise 500 mm`. */
export function readWords(situation: Pick<Situation, 'measured'>, pull: EntryOf<'pull'>['body']): string {
  const { reading, hold } = pull;
  const read = `read ${lengthWords(reading)}`;
  if (hold.how === 'level') return read;
  if (hold.rise) return `${read}, sloping, rise ${lengthWords(hold.rise)}`;
  const rise = riseBetween(situation, pull.from, pull.to);
  return `${read}, sloping, rise ${rise === null ? 'not known' : formatLength(rise, reading.units)}`;
}
