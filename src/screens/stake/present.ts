import type { Entry, EntryOf, Thing } from '../../job/entry-schema.ts';
import { isKind, thingKey } from '../../job/log.ts';

export type LoggedPull = EntryOf<'pull'>;

/** What stands on the site now, and which pulls are about it as it stands now. */
export interface Present {
  /** Driven, or pulled to, since A and B were last placed: what stood before does not fit any more. */
  stands(thing: Thing): boolean;
  /** The last pull between two things as they stand now, either way round; null when there is none. */
  pull(one: Thing, other: Thing): LoggedPull | null;
  /** All pulls between two things as they stand now, in order. */
  pulls(one: Thing, other: Thing): readonly LoggedPull[];
  /** Pairs of hole stakes that were pulled between as they stand now, each once. */
  readonly checked: readonly (readonly [Thing, Thing])[];
}

/** @param entries that stand, in order */
export function presentOf(entries: readonly Entry[]): Present {
  const stands = new Map<string, number>();
  const pulls = new Map<string, { entries: LoggedPull[]; stands: string }>();
  const standOf = (key: string) => stands.get(key) ?? 0;
  const standsOf = (pair: readonly string[]) => pair.map(standOf).join();
  for (const entry of entries) {
    if (isKind(entry, 'site')) {
      stands.clear();
      pulls.clear();
    } else if (isKind(entry, 'stand')) {
      const key = thingKey(entry.body.thing);
      stands.set(key, standOf(key) + 1);
    } else if (isKind(entry, 'pull')) {
      const pair = pairOf(entry.body.from.thing, entry.body.to.thing);
      for (const key of pair) stands.set(key, Math.max(standOf(key), 1));
      const before = pulls.get(pair.join(' '));
      const now = standsOf(pair);
      const entries = before?.stands === now ? [...before.entries, entry] : [entry];
      pulls.set(pair.join(' '), { entries, stands: now });
    }
  }
  const pullsOf = (one: Thing, other: Thing): readonly LoggedPull[] => {
    const pair = pairOf(one, other);
    const found = pulls.get(pair.join(' '));
    return found && found.stands === standsOf(pair) ? found.entries : [];
  };
  return {
    stands: (thing) => standOf(thingKey(thing)) > 0,
    pull: (one, other) => pullsOf(one, other).at(-1) ?? null,
    pulls: pullsOf,
    checked: [...pulls.values()].flatMap(({ entries: [first], stands }) => {
      if (!first) return [];
      const { from, to } = first.body;
      const between = from.thing.kind === 'hole-stake' && to.thing.kind === 'hole-stake';
      return between && stands === standsOf(pairOf(from.thing, to.thing))
        ? [[from.thing, to.thing] as const]
        : [];
    }),
  };
}

/** Whether anything was driven or pulled to from where A and B are now. @param entries that stand, in order */
export function isBegun(entries: readonly Entry[]): boolean {
  const placed = entries.findLastIndex((entry) => isKind(entry, 'site'));
  return (
    placed >= 0 && entries.slice(placed).some((entry) => isKind(entry, 'stand') || isKind(entry, 'pull'))
  );
}

const pairOf = (one: Thing, other: Thing): string[] => [thingKey(one), thingKey(other)].sort();
