import type { Hold } from '../../../job/entry-schema.ts';
import { listWords } from '../../../judge/words.ts';
import type { ListedHole, ListedTape } from '../../../stakeout/index.ts';
import { formatLength, type Units } from '../../../units/index.ts';

const SIDES: Record<ListedHole['side'], string> = {
  left: 'left of A–B',
  right: 'right of A–B',
  'on-line': 'on the line A–B',
};

/** `left of A–B`, as one walks from A to B. */
export const sideOfLine = ({ side }: Pick<ListedHole, 'side'>): string => SIDES[side];

/** Where both tapes begin, and how the list is meant. */
export const HOOKED =
  'Hook both zero ends, one on A’s nail and one on B’s nail, and carry both tapes from hole to hole. Lengths are nail to nail; left and right are as you walk from A to B.';

/** How one person does it. */
export const ALONE = [
  'At each hole pull the tape from A tight and scratch an arc with a nail held at its reading. Then swing the tape from B at its reading: where it meets the arc goes the stake.',
  'The holes are in an order in which no tape lies against a stake that is driven already.',
  'A check pull can be made alone: hook the zero end on the nail in one stake, and read at the other.',
];

/** What stands above the list on paper. */
export const listIntro = (alone: boolean): string[] => (alone ? [HOOKED, ...ALONE] : [HOOKED]);

/** Held level, or along a slope of unknown rise, which has to be held level instead: somebody must hold up its low end. */
export const wantsSecondHand = (tape: ListedTape, how: Hold['how']): boolean =>
  how === 'level' || isUnknown(tape);

const isUnknown = ({ slope }: ListedTape): boolean => slope === null;

export const isRiseUnknown = ({ tapes }: ListedHole): boolean => tapes.some(isUnknown);

/** In place of the large figure of a tape along the slope that nobody knows. @param level what the tape reads held level, metres */
export const unknownRiseWords = (
  from: string,
  level: number,
  units: Units,
  notes: readonly string[],
): string =>
  `From ${from}’s nail: read heights first. ${[`Held level ${formatLength(level, units)}`, ...notes].join('; ')}.`;

/** What spares one person, who holds the tape level, the second hand; null where it would not, as no rise is known. */
export const slopeAdvice = (rows: readonly ListedHole[]): string | null =>
  rows.every(({ tapes }) => tapes.every(isUnknown))
    ? null
    : 'Hold the tape sloping where its rise is known: nobody then has to hold its low end up.';

/** The tapes that cannot be told along the slope: `A to 3`. */
const unknownRises = (rows: readonly ListedHole[]): string[] =>
  rows.flatMap(({ hole, tapes }) => tapes.filter(isUnknown).map(({ from }) => `${from} to ${hole}`));

/** Beyond this a list says less than its number. */
const MOST_LISTED = 6;

/** What is to be done where the rise is not known; null where it is known everywhere. */
export function riseWords(rows: readonly ListedHole[], alone: boolean): string | null {
  const unknown = unknownRises(rows);
  if (unknown.length === 0)
    return alone
      ? 'The rise of every tape is known: along the slope no tape wants a second hand, as long as it runs straight, without a bend over a hump.'
      : null;
  const all = unknown.length === 2 * rows.length;
  const which = all
    ? 'any tape'
    : unknown.length > MOST_LISTED
      ? `${unknown.length} tapes`
      : `the tapes ${listWords(unknown)}`;
  const cure = 'or read the heights of the ground at A, at B and at the holes first';
  const held = alone
    ? 'Held level they want a second hand, to hold the tape up at its low end and plumb down'
    : 'Hold them level, and plumb down from the tape';
  return `The rise of ${which} is not known. ${held}; ${cure}.`;
}
