import { Dexie } from 'dexie';
import type { Entry } from '../job/entry-schema.ts';
import { currentPlan, inOrder, standing, struck } from '../job/log.ts';
import type { EntryRow, JobRow, Tables } from './db.ts';
import { BadEntry, UnknownJob } from './errors.ts';

// Steps that run inside a transaction, and may run twice: see `Database.run`.

/** An entry before it has its place in the log. */
export type Draft = Omit<Entry, 'seq'>;

const NO_PLAN_NAME = 'Job without a plan';

export function emptyJob(id: string, at: string): JobRow {
  return {
    id,
    createdAt: at,
    updatedAt: at,
    name: NO_PLAN_NAME,
    entryCount: 0,
    backedUpCount: 0,
    lastBackupAt: null,
  };
}

export async function jobOf(tables: Tables, jobId: string): Promise<JobRow> {
  const job = await tables.jobs.get(jobId);
  if (!job) throw new UnknownJob(jobId);
  return job;
}

/** Rows of a job between the ends of its Lamport counter. */
const rowsOf = (tables: Tables, jobId: string) =>
  tables.entries.where('[jobId+seq]').between([jobId, Dexie.minKey], [jobId, Dexie.maxKey]);

export async function logOf(tables: Tables, jobId: string): Promise<Entry[]> {
  return inOrder((await rowsOf(tables, jobId).toArray()).map(entryOf));
}

const entryOf = ({ id, seq, at, body }: EntryRow): Entry => ({ id, seq, at, body });

export async function appendDraft(tables: Tables, jobId: string, draft: Draft): Promise<Entry> {
  const job = await jobOf(tables, jobId);
  const already = await tables.entries.get([jobId, draft.id]);
  if (already) return entryOf(already);
  if (draft.body.kind === 'strike') await refuseVainStrike(tables, jobId, draft.body.entry);
  // Read and written in one rw transaction, so that two windows cannot take the same number.
  const last = await rowsOf(tables, jobId).last();
  const entry: Entry = { ...draft, seq: numberAfter(last) };
  await tables.entries.add({ jobId, ...entry });
  await tables.jobs.put({
    ...job,
    updatedAt: entry.at,
    entryCount: job.entryCount + 1,
    name: await nameAfter(tables, job, entry),
  });
  return entry;
}

function numberAfter(last: EntryRow | undefined): number {
  const seq = (last?.seq ?? 0) + 1;
  if (Number.isSafeInteger(seq)) return seq;
  const text =
    'Entry: the last one in this job bears the largest number there is, so none can follow it; begin the job again as a new one, and keep this one to look things up in.';
  throw new BadEntry({ field: 'Entry', text });
}

async function refuseVainStrike(tables: Tables, jobId: string, target: string): Promise<void> {
  const log = await logOf(tables, jobId);
  const say = (text: string) => new BadEntry({ field: 'Strike', text: `Strike: ${text}` });
  if (!log.some((entry) => entry.id === target))
    throw say('there is no such entry in this job; choose one from the field book.');
  if (struck(log).has(target)) throw say('that entry is struck already; strike the strike to bring it back.');
}

/** Only a plan, or a strike of one, can change the job's name. */
async function nameAfter(tables: Tables, job: JobRow, entry: Entry): Promise<string> {
  if (entry.body.kind !== 'plan' && entry.body.kind !== 'strike') return job.name;
  return jobName(await logOf(tables, job.id));
}

export const jobName = (log: readonly Entry[]): string => currentPlan(standing(log))?.name ?? NO_PLAN_NAME;
