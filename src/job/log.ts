import type { Entry, EntryKind, EntryOf, Thing } from './entry-schema.ts';
import type { Plan } from './plan-schema.ts';

/** The log in its one true order, whatever order it arrived in: by Lamport counter, then by id. */
export function inOrder<E extends Entry>(log: readonly E[]): E[] {
  return [...log].sort((p, q) => p.seq - q.seq || (p.id < q.id ? -1 : p.id > q.id ? 1 : 0));
}

/** Reason given for each struck entry, by the entry's id. A strike can itself be struck, which restores the entry. */
export function struck(log: readonly Entry[]): Map<string, string> {
  const out = new Map<string, string>();
  // A strike is always younger than what it strikes, so walking backwards meets the strike of a strike first.
  for (const { id, body } of inOrder(ofKind(log, 'strike')).reverse()) {
    if (!out.has(id)) out.set(body.entry, body.reason);
  }
  return out;
}

/**
 * Entries that stand (are not struck), in the order in which they hold; strikes themselves are left out. That is the order
 * of the log, but for stands that are known to have begun earlier: such a one comes before the pull that found it there.
 */
export function standing(log: readonly Entry[]): Entry[] {
  const gone = struck(log);
  return backdated(inOrder(log).filter((entry) => entry.body.kind !== 'strike' && !gone.has(entry.id)));
}

function backdated(entries: Entry[]): Entry[] {
  const places = entries.flatMap((entry, at) => {
    const since = isKind(entry, 'stand') ? entry.body.since : undefined;
    const found = since === undefined ? -1 : entries.findIndex(({ id }) => id === since);
    return found >= 0 && found < at ? [[entry, found] as const] : [];
  });
  if (places.length === 0) return entries;
  const early = new Set<Entry>(places.map(([entry]) => entry));
  return entries.flatMap((entry, at) => [
    ...places.filter(([, found]) => found === at).map(([stand]) => stand),
    ...(early.has(entry) ? [] : [entry]),
  ]);
}

export function isKind<K extends EntryKind>(entry: Entry, kind: K): entry is EntryOf<K> {
  return entry.body.kind === kind;
}

export function ofKind<K extends EntryKind>(entries: readonly Entry[], kind: K): EntryOf<K>[] {
  return entries.filter((entry): entry is EntryOf<K> => isKind(entry, kind));
}

/** The plan that stands: the last `plan` entry, or null before there is one. */
export function currentPlan(entries: readonly Entry[]): Plan | null {
  return ofKind(entries, 'plan').at(-1)?.body.plan ?? null;
}

/** One text per thing, for maps: `stake:A`, `hole-stake:3`, `post:3`. */
export function thingKey(thing: Thing): string {
  return thing.kind === 'stake' || thing.kind === 'nail'
    ? `${thing.kind}:${thing.label}`
    : `${thing.kind}:${thing.hole}`;
}
