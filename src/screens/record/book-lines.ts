import type { Entry } from '../../job/entry-schema.ts';
import { inOrder, isKind, struck } from '../../job/log.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { describeEntry } from '../../job/words.ts';
import { changedParts } from '../plan-changes.ts';

/** One line of the field book as it is shown. */
export interface BookLine {
  /** The entry that a strike of this line strikes: of a run of plan changes, the last. */
  readonly id: string;
  readonly at: string;
  readonly text: string;
  /** Why it was struck; null while it stands. */
  readonly struck: string | null;
  /** Entries that this one line stands for. */
  readonly count: number;
}

/**
 * The field book, newest first: every entry, struck ones too. Plan changes that follow one another, all standing or all
 * struck alike, are one line: putting in a drawing makes dozens.
 *
 * @param plan the plan that stands, for the names of faces and piers
 */
export function bookLines(log: readonly Entry[], plan: Plan | null): BookLine[] {
  const reasons = struck(log);
  const texts = new Map<string, string>();
  const lines: BookLine[] = [];
  let run = null as PlanRun | null;
  let before = null as Plan | null;
  for (const entry of inOrder(log)) {
    const reason = reasons.get(entry.id) ?? null;
    texts.set(entry.id, describeEntry(entry, plan));
    if (!isKind(entry, 'plan')) {
      run = null;
      lines.push({ id: entry.id, at: entry.at, text: textOf(entry, texts), struck: reason, count: 1 });
      continue;
    }
    const first = before;
    before = reason === null ? entry.body.plan : before;
    if (run && run.reason === reason) {
      run = { ...run, count: run.count + 1 };
      lines.pop();
    } else {
      run = { reason, count: 1, before: first };
    }
    const text = planText(entry.body.plan, describeEntry(entry, plan), run);
    lines.push({ id: entry.id, at: entry.at, text, struck: reason, count: run.count });
  }
  return lines.reverse();
}

interface PlanRun {
  readonly reason: string | null;
  readonly count: number;
  /** The plan that stood before the run; null where it is the first. */
  readonly before: Plan | null;
}

/** `Plan “Orchard deck”: 8 posts on a ring`, then what the run changed and how many changes it was. */
function planText(plan: Plan, words: string, { before, count }: PlanRun): string {
  const parts = before ? changedParts(before, plan) : [];
  const changed = parts.length === 0 ? '' : `; changed: ${parts.join(', ')}`;
  return words + changed + (count === 1 ? '' : ` (${count} changes in a row)`);
}

/** A strike says what it struck. */
function textOf({ id, body }: Entry, texts: ReadonlyMap<string, string>): string {
  const what = body.kind === 'strike' ? texts.get(body.entry) : undefined;
  if (body.kind !== 'strike' || what === undefined) return texts.get(id) ?? '';
  return `Struck: ${what}: ${body.reason}`;
}
