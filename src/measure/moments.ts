import type { Entry, EntryOf, Thing } from '../job/entry-schema.ts';
import { isKind, thingKey } from '../job/log.ts';

/** A gap in the log that begins a new session: long enough for somebody to have driven a barrow into a stake, seconds. */
const NEW_SESSION_S = 3600;

/** The last so many moments are looked at, for each stake: a move that long ago would have shown before. */
const MOST_MOMENTS = 24;

/** When a stake may have been found elsewhere. */
export interface Moment {
  readonly stake: Thing;
  /** Place in the log of the first pull after it. */
  readonly at: number;
}

/**
 * When each stake may have been found elsewhere: at its first pull after a check began. A check begins where lines that were
 * pulled before are pulled again, where one of them is pulled yet again, and after a gap in the log.
 */
export function momentsOf(log: readonly Entry[]): Moment[] {
  const seen = new Set<string>();
  const moments = new Map<string, Moment[]>();
  let check = new Set<string>();
  let waiting = new Set<string>();
  let last: number | null = null;
  for (const [at, entry] of log.entries()) {
    if (!isKind(entry, 'pull')) continue;
    const time = Date.parse(entry.at) / 1000;
    const line = lineOf(entry);
    const again = seen.has(line);
    const rested = last !== null && time - last > NEW_SESSION_S;
    if (rested || (again && (check.size === 0 || check.has(line)))) {
      check = new Set();
      waiting = new Set(moments.keys());
    }
    if (again) check.add(line);
    else if (!rested) check.clear();
    for (const { thing } of [entry.body.from, entry.body.to]) {
      if (thing.kind !== 'stake') continue;
      const key = thingKey(thing);
      const known = moments.get(key) ?? [];
      if (waiting.delete(key)) known.push({ stake: thing, at });
      moments.set(key, known);
    }
    seen.add(line);
    last = time;
  }
  return [...moments.values()].flatMap((list) => list.slice(-MOST_MOMENTS));
}

function lineOf({ body }: EntryOf<'pull'>): string {
  const [from, to] = [thingKey(body.from.thing), thingKey(body.to.thing)];
  return from < to ? `${from} ${to}` : `${to} ${from}`;
}
