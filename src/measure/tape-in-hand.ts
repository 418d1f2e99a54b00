import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { isKind } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { TapeInHand } from './taped.ts';

/**
 * The tape that the next pull is made with, as far as the log tells: that of the last pull, as warm and as hard as it was
 * pulled then; before there is one, the first of the plan's tapes.
 *
 * @param entries that stand, in order
 * @returns null for a tape without corrections, and for a job that lists no tapes
 */
export function tapeInHand(entries: readonly Entry[], { tapes }: Instruments): TapeInHand | null {
  const [first] = tapes ?? [];
  if (!tapes || !first) return null;
  const body = lastPullWithAChoice(entries)?.body;
  if (!body) return { tape: first, pulling: {} };
  if (body.tape === undefined) return null;
  const tape = tapes.find(({ label }) => label === body.tape);
  if (!tape) return { tape: first, pulling: {} };
  // What hung free is another pull's own; warmth and the arm stay.
  const { spans: _, ...pulling } = body.pulling ?? {};
  return { tape, pulling };
}

/** The last pull since the plan first listed tapes: one before it had no tape to name. */
function lastPullWithAChoice(entries: readonly Entry[]): EntryOf<'pull'> | undefined {
  const listed = entries.findIndex(
    (entry) => isKind(entry, 'plan') && (entry.body.plan.instruments.tapes ?? []).length > 0,
  );
  return entries.slice(listed + 1).findLast((entry) => isKind(entry, 'pull'));
}
