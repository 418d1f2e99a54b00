import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { currentPlan, isKind, standing } from '../job/log.ts';
import type { Plan } from '../job/plan-schema.ts';
import { describeEntry } from '../job/words.ts';
import { listWords } from '../judge/words.ts';
import { changedParts } from './plan-changes.ts';

/** Why an entry was struck by Undo, as the log has it. */
export const UNDO_REASON = 'taken back at once';

/**
 * What was just done, in words: an entry that was saved, one that was taken back or struck, or one that counts again because
 * its strike was struck.
 *
 * @param log the whole log, for what a strike speaks of
 */
export function doneWords(entry: Entry, log: readonly Entry[], plan: Plan | null): string {
  if (isKind(entry, 'plan')) return planWords(entry, log);
  if (!isKind(entry, 'strike')) return `Saved: ${describeEntry(entry, plan)}.`;
  const { about, counts } = aboutOf(entry, log);
  const words = about ? describeEntry(about, plan) : 'an entry';
  if (counts) return `Counts again: ${words}.`;
  const { reason } = entry.body;
  return reason === UNDO_REASON ? `Taken back: ${words}.` : `Struck: ${words}. Reason: ${reason}.`;
}

/** What of the plan was changed, for Undo to be no blind step. */
function planWords(entry: EntryOf<'plan'>, log: readonly Entry[]): string {
  const before = currentPlan(standing(log.filter(({ seq }) => seq < entry.seq)));
  const parts = before ? changedParts(before, entry.body.plan) : [];
  return parts.length > 0
    ? `Saved in the plan: ${listWords(parts)}.`
    : `Saved: ${describeEntry(entry, entry.body.plan)}.`;
}

/** Follows strikes of strikes to the entry that they are about; each turns over whether it counts. */
function aboutOf(strike: EntryOf<'strike'>, log: readonly Entry[]): { about: Entry | null; counts: boolean } {
  const target = log.find(({ id }) => id === strike.body.entry);
  if (!target || !isKind(target, 'strike')) return { about: target ?? null, counts: false };
  const { about, counts } = aboutOf(target, log);
  return { about, counts: !counts };
}
