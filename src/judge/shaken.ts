import type { Entry, EntryOf, Thing } from '../job/entry-schema.ts';
import { isKind, ofKind, thingKey } from '../job/log.ts';
import type { Moves } from '../measure/types.ts';

/**
 * The moves that are worth telling. Where a misread pull would explain the readings as well, and it went to a hole and not
 * between two stakes, a slip of the hand is by far the likelier: then it is for the tests of single readings to name it.
 */
export function believedMoves(moves: Moves | null, entries: readonly Entry[]): Moves | null {
  if (!moves?.orMisread) return moves;
  const ids = new Set(moves.moves.map(({ since }) => since));
  const found = ofKind(entries, 'pull').filter(({ id }) => ids.has(id));
  const isReference = ({ kind }: Thing) => kind === 'stake' || kind === 'nail';
  const between = found.some(({ body }) => isReference(body.from.thing) && isReference(body.to.thing));
  return between ? moves : null;
}

/** Stakes that may have moved, and what hangs on them, by `thingKey`. */
export interface Shaken {
  readonly stakes: readonly Thing[];
  readonly things: ReadonlySet<string>;
}

/**
 * What hangs on a stake that is believed to have moved: the stake itself, and whatever was pulled from it, or measured off a
 * string that it held, since it was last known to stand still. That is when the line that found it elsewhere was pulled before: in between, it
 * may have moved at any time.
 *
 * @param entries that stand, in order
 */
export function shakenBy(moves: Moves | null, entries: readonly Entry[]): Shaken {
  const shaken = new Set<string>();
  for (const { stake, since } of moves?.moves ?? []) {
    const key = thingKey(stake);
    shaken.add(key);
    for (const reading of readingsAfter(entries, lastStill(entries, since))) {
      const touched = thingsOf(reading);
      if (touched.includes(key)) for (const thing of touched) shaken.add(thing);
    }
  }
  return { stakes: moves?.moves.map(({ stake }) => stake) ?? [], things: shaken };
}

/** Place in the log of the pull before `since` along the same line; −1 when there was none. */
function lastStill(entries: readonly Entry[], since: string): number {
  const at = entries.findIndex(({ id }) => id === since);
  const found = entries[at];
  if (!found || !isKind(found, 'pull')) return -1;
  const line = lineOf(found);
  return entries.findLastIndex((entry, i) => i < at && isKind(entry, 'pull') && lineOf(entry) === line);
}

type PlaceReading = EntryOf<'pull'> | EntryOf<'offset'>;

const readingsAfter = (entries: readonly Entry[], at: number): PlaceReading[] => {
  const later = entries.slice(at + 1);
  return [...ofKind(later, 'pull'), ...ofKind(later, 'offset')];
};

/** The ends of a tape; or those of a string, and what was measured off it. */
const thingsOf = ({ body }: PlaceReading): string[] =>
  body.kind === 'pull'
    ? [body.from.thing, body.to.thing].map(thingKey)
    : [body.from, body.to, body.of.thing].map(thingKey);

/** One text for a line, either way round. */
export const lineOf = (pull: EntryOf<'pull'>): string => thingsOf(pull).sort().join(' ');
