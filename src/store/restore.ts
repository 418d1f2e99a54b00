import type { Entry } from '../job/entry-schema.ts';
import { inOrder } from '../job/log.ts';
import { ok, type Result, refuse } from '../units/index.ts';
import type { Backup } from './backup-schema.ts';
import { canonicalJson } from './canonical-json.ts';
import type { JobRow, Tables } from './db.ts';
import { emptyJob, jobName, logOf } from './rows.ts';

export interface Restored {
  readonly jobId: string;
  /** Entries that were new to this phone, and those that it had. */
  readonly added: number;
  readonly already: number;
}

/**
 * The union by id of two logs of one job, in order. Entries are never edited, so two with one id and other contents
 * mean that a file was tampered with or damaged: refused.
 */
export function mergeLogs(mine: readonly Entry[], theirs: readonly Entry[]): Result<Entry[]> {
  const byId = new Map(mine.map((entry) => [entry.id, entry]));
  for (const entry of theirs) {
    const known = byId.get(entry.id);
    if (known && canonicalJson(known) !== canonicalJson(entry)) return refuse('Backup', differs(entry));
    byId.set(entry.id, entry);
  }
  return ok(inOrder([...byId.values()]));
}

const differs = (entry: Entry): string =>
  `Backup: its entry ${entry.id} is not what this phone has under that id, and entries are never edited; nothing was changed: use another copy of the backup.`;

/** Merges a backup into the tables, inside a transaction. On a refusal nothing is written. */
export async function mergeBackup(tables: Tables, backup: Backup, now: string): Promise<Result<Restored>> {
  const { id: jobId, createdAt } = backup.job;
  const known = await tables.jobs.get(jobId);
  const mine = known ? await logOf(tables, jobId) : [];
  const merged = mergeLogs(mine, backup.log);
  if (!merged.ok) return merged;
  const had = new Set(mine.map((entry) => entry.id));
  const fresh = merged.value.filter((entry) => !had.has(entry.id));
  await tables.entries.bulkAdd(fresh.map((entry) => ({ jobId, ...entry })));
  const before: JobRow = known ?? {
    ...emptyJob(jobId, createdAt),
    // A job that came whole out of a file is, so far, backed up by that file.
    lastBackupAt: backup.savedAt,
    backedUpCount: fresh.length,
  };
  if (fresh.length > 0 || !known) {
    const name = jobName(merged.value);
    await tables.jobs.put({ ...before, name, updatedAt: now, entryCount: merged.value.length });
  }
  return ok({ jobId, added: fresh.length, already: backup.log.length - fresh.length });
}
