import * as v from 'valibot';
import { type Body, BodySchema, type Entry } from '../job/entry-schema.ts';
import { faultOf } from '../job/schema-problem.ts';
import type { Problem, Result } from '../units/index.ts';
import type { Backup } from './backup-schema.ts';
import { Database, type DatabaseOptions, type JobRow } from './db.ts';
import { BadEntry } from './errors.ts';
import { newId } from './ids.ts';
import { mergeBackup, type Restored } from './restore.ts';
import { appendDraft, type Draft, emptyJob, jobOf, logOf } from './rows.ts';
import { probe } from './self-test.ts';

export interface FieldBookOptions extends DatabaseOptions {
  readonly now?: () => Date;
  readonly newId?: () => string;
}

/**
 * The jobs on this phone. Every method rejects with a `StoreError` whose message is a sentence for the user; every
 * method that writes resolves only after its transaction has completed.
 */
export class FieldBook {
  readonly #database: Database;
  readonly #now: () => Date;
  readonly #newId: () => string;

  constructor(options: FieldBookOptions = {}) {
    const { now = () => new Date(), newId: makeId = newId, ...database } = options;
    this.#database = new Database(database);
    this.#now = now;
    this.#newId = makeId;
  }

  /** Opens a job with its first entries, a plan as a rule; all of them are written or none. */
  async createJob(first: readonly Body[]): Promise<JobRow> {
    const drafts = first.map((body) => this.#draft(body));
    const jobId = this.#newId();
    const createdAt = this.#now().toISOString();
    return this.#database.run('rw', async (tables) => {
      const already = await tables.jobs.get(jobId);
      if (already) return already;
      await tables.jobs.add(emptyJob(jobId, createdAt));
      for (const draft of drafts) await appendDraft(tables, jobId, draft);
      return jobOf(tables, jobId);
    });
  }

  /** All jobs, the one last worked on first. */
  async listJobs(): Promise<JobRow[]> {
    const rows = await this.#database.run('r', (tables) => tables.jobs.toArray());
    return rows.sort((p, q) => (p.updatedAt < q.updatedAt ? 1 : p.updatedAt > q.updatedAt ? -1 : 0));
  }

  job(jobId: string): Promise<JobRow> {
    return this.#database.run('r', (tables) => jobOf(tables, jobId));
  }

  /** The whole log, struck entries and strikes too, in order. */
  loadLog(jobId: string): Promise<Entry[]> {
    return this.#database.run('r', async (tables) => {
      await jobOf(tables, jobId);
      return logOf(tables, jobId);
    });
  }

  /**
   * Writes one entry at the end of the log.
   *
   * @returns the entry as stored
   * @throws {BadEntry} when `body` breaks its schema, or strikes what is not there
   */
  async append(jobId: string, body: Body): Promise<Entry> {
    const draft = this.#draft(body);
    return this.#database.run('rw', (tables) => appendDraft(tables, jobId, draft));
  }

  /** Strikes an entry out, with a reason. To strike a strike restores what it struck. */
  strike(jobId: string, entryId: string, reason: string): Promise<Entry> {
    return this.append(jobId, { kind: 'strike', entry: entryId, reason: reason.trim() });
  }

  /** Notes that a file with the first `entryCount` entries of the log is off the phone. */
  noteBackup(jobId: string, entryCount: number): Promise<JobRow> {
    const lastBackupAt = this.#now().toISOString();
    return this.#database.run('rw', async (tables) => {
      const job = { ...(await jobOf(tables, jobId)), lastBackupAt, backedUpCount: entryCount };
      await tables.jobs.put(job);
      return job;
    });
  }

  /** Merges a backup into the job of the same id, or opens that job. Never overwrites: see `mergeBackup`. */
  restore(backup: Backup): Promise<Result<Restored>> {
    const now = this.#now().toISOString();
    return this.#database.run('rw', (tables) => mergeBackup(tables, backup, now));
  }

  /** Writes, reads back and deletes a probe. Null when all is well, else what the user should know at once. */
  selfTest(): Promise<Problem | null> {
    return probe(this.#database, this.#newId());
  }

  close(): void {
    this.#database.close();
  }

  /** Id and time are settled here, once, so that a second try after a lost connection writes nothing twice. */
  #draft(body: Body): Draft {
    const parsed = v.safeParse(BodySchema, body, { abortEarly: true });
    if (!parsed.success) {
      const fault = faultOf(parsed.issues[0]);
      const field = fault.path || 'Entry';
      throw new BadEntry({
        field,
        text: `${field} ${fault.text}; nothing was written: mend it and save again.`,
      });
    }
    // Through JSON, so that the database holds just what a backup file would: no `undefined`, no −0.
    const plain = JSON.parse(JSON.stringify(parsed.output)) as Body;
    return { id: this.#newId(), at: this.#now().toISOString(), body: plain };
  }
}
