import { distance, type SitePoint, subtract } from '../geometry/point.ts';
import type { EntryOf, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import { sineBetween } from '../stakeout/squarest.ts';
import { crossesWell } from '../stakeout/string-cover.ts';
import { type JobView, pointOf, stakeOf } from './view.ts';

/** A way back to a hole's centre that was read while its stake stood. */
export interface RecordedTie {
  /** A place along a string between two things, or two tapes that cross. */
  readonly how: 'string' | 'tapes';
  readonly things: readonly [Thing, Thing];
  /** What was read of the place along the string; null for tapes. */
  readonly read: EntryOf<'offset'> | null;
}

/** `tapes from A and B; string nail S1a to nail S1b`. */
export const tiesWords = (ties: readonly RecordedTie[]): string =>
  ties
    .map(({ how, things }) => {
      const [one, other] = things.map((thing) => thingName(thing));
      return how === 'tapes' ? `tapes from ${one} and ${other}` : `string ${one} to ${other}`;
    })
    .join('; ');

/** So many ties are asked for before a hole is dug: one may be knocked by the digging (common practice). */
export const TIES_WANTED = 2;

/** What stands this far outside the hole's edge outlives its digging: a foot, room for the bar and the feet. */
const SURVIVES_BEYOND = 0.3;

/**
 * The ties of a hole that its log has, no two of which hang on the same stake or nail: places read along a string, then
 * pairs of tapes that cross at 30° or more, squarest first. Only what was read to its stake as it stands now counts, from
 * what stands clear of its digging and is not believed to have moved, and no reading that is believed wrong.
 */
export function recordedTies(view: JobView, hole: string): RecordedTie[] {
  const used = new Set<string>();
  const ties: RecordedTie[] = [];
  const take = (tie: RecordedTie) => {
    const keys = tie.things.map(thingKey);
    if (keys.some((key) => used.has(key))) return;
    for (const key of keys) used.add(key);
    ties.push(tie);
  };
  for (const tie of stringTies(view, hole)) take(tie);
  for (const tie of tapeTies(view, hole)) take(tie);
  return ties;
}

function stringTies(view: JobView, hole: string): RecordedTie[] {
  const stake = stakeOf(hole);
  return view.book.offsetsOf(stake).flatMap(({ entry, index }): RecordedTie[] => {
    const { from, to, station, offset, side } = entry.body;
    const whole = station !== undefined && (side === 'on' || offset !== undefined);
    const still = [stake, from, to].every((thing) => view.book.standAt(thing) < index);
    if (!whole || !still || view.suspects.has(entry.id)) return [];
    if (!survives(view, from) || !survives(view, to)) return [];
    return [{ how: 'string', things: [from, to], read: entry }];
  });
}

/** All pairs of tapes to the stake that cross well, squarest first. */
function tapeTies(view: JobView, hole: string): RecordedTie[] {
  const at = pointOf(view, stakeOf(hole))?.fix?.place ?? view.sited.get(hole)?.site;
  if (!at) return [];
  const tapes = view
    .pullsOf(stakeOf(hole))
    .filter(({ end, result }) => !view.suspects.has(result.entry) && survives(view, end))
    .flatMap(({ end }) => {
      const place = placeOf(view, end);
      return place ? [{ thing: end, line: subtract(at, place) }] : [];
    });
  return tapes
    .flatMap((one, i) => tapes.slice(i + 1).map((other) => ({ one, other })))
    .filter(({ one, other }) => crossesWell(one.line, other.line))
    .map(({ one, other }) => ({
      things: [one.thing, other.thing] as const,
      sine: sineBetween(one.line, other.line),
    }))
    .sort((p, q) => q.sine - p.sine)
    .map(({ things }): RecordedTie => ({ how: 'tapes', things, read: null }));
}

/** A stake or nail that is not believed to have moved, clear of the digging of every hole. */
function survives(view: JobView, thing: Thing): boolean {
  if (thing.kind !== 'stake' && thing.kind !== 'nail') return false;
  const place = placeOf(view, thing);
  if (!place || view.shaken.stakes.some((stake) => thingKey(stake) === thingKey(thing))) return false;
  return isClearOfDigging(view, thing, place);
}

/** Worked out once for each view and thing, though every hole asks. */
const clear = new WeakMap<JobView, Map<string, boolean>>();

function isClearOfDigging(view: JobView, thing: Thing, place: SitePoint): boolean {
  const known = clear.get(view) ?? new Map<string, boolean>();
  clear.set(view, known);
  const key = thingKey(thing);
  const before = known.get(key);
  if (before !== undefined) return before;
  const isClear = [...view.sited.values()].every(
    ({ site, holeDiameter }) => distance(place, site) >= holeDiameter / 2 + SURVIVES_BEYOND,
  );
  known.set(key, isClear);
  return isClear;
}

/** Where a stake or nail stands: as measured, else where it is meant to; null where nothing says. */
function placeOf(view: JobView, thing: Thing): SitePoint | null {
  const measured = pointOf(view, thing)?.fix?.place;
  if (measured) return measured;
  const key = thingKey(thing);
  return view.laid?.references.find((reference) => thingKey(reference.thing) === key)?.site ?? null;
}
