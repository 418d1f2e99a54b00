import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { isKind } from '../job/log.ts';
import type { Plan } from '../job/plan-schema.ts';
import { describeEntry } from '../job/words.ts';

/** Why an entry was struck by Undo, as the log has it. */
export const UNDO_REASON = 'taken back at once';

/**
 * What was just done, in words: an entry that was saved, one that was taken back or struck, or one that counts again because
 * its strike was struck.
 *
 * @param log the whole log, for what a strike speaks of
 */
export function doneWords(entry: Entry, log: readonly Entry[], plan: Plan | null): string {
  if (!isKind(entry, 'strike')) return `Saved: ${describeEntry(entry, plan)}.`;
  const { about, counts } = aboutOf(entry, log);
  const words = about ? describeEntry(about, plan) : 'an entry';
  if (counts) return `Counts again: ${words}.`;
  const { reason } = entry.body;
  return reason === UNDO_REASON ? `Taken back: ${words}.` : `Struck: ${words}. Reason: ${reason}.`;
}

/** Follows strikes of strikes to the entry that they are about; each turns over whether it counts. */
function aboutOf(strike: EntryOf<'strike'>, log: readonly Entry[]): { about: Entry | null; counts: boolean } {
  const target = log.find(({ id }) => id === strike.body.entry);
  if (!target || !isKind(target, 'strike')) return { about: target ?? null, counts: false };
  const { about, counts } = aboutOf(target, log);
  return { about, counts: !counts };
}
