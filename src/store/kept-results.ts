import { Dexie, type DexieOptions, type Table } from 'dexie';
import type { Situation } from '../judge/situation.ts';
import type { Assessment } from '../judge/types.ts';

/** What was worked out of a log, and of which log, by which build of the app. */
export interface Kept {
  readonly jobId: string;
  readonly build: string;
  /** A log only grows and no entry of it changes, so its length and its last entry say which it is. */
  readonly count: number;
  readonly last: string | null;
  /** Without the entries that stand: they are the log again, a quarter of it all. */
  readonly situation: Omit<Situation, 'entries'>;
  readonly assessment: Assessment;
}

const DATABASE_NAME = 'swingtape-kept';

/**
 * Results kept from the last time a job was open, so that a cold start need not work them out before it shows anything.
 * Nothing here is data: a browser that keeps none of it costs the user a moment, so every failure means "not kept". It lies
 * in a database of its own, so that it never holds up a reading on its way to the disk, and is no part of its versions.
 */
export class KeptResults {
  readonly #dexie: Dexie;

  constructor({ name = DATABASE_NAME, ...engine }: { readonly name?: string } & DexieOptions = {}) {
    this.#dexie = new Dexie(name, engine);
    this.#dexie.version(1).stores({ results: 'jobId' });
  }

  async read(jobId: string): Promise<Kept | null> {
    return (await orNothing(this.#results.get(jobId))) ?? null;
  }

  /** Replaces what was kept of that job. */
  async write(kept: Kept): Promise<void> {
    await orNothing(this.#results.put(kept));
  }

  get #results(): Table<Kept, string> {
    return this.#dexie.table('results');
  }
}

async function orNothing<T>(work: PromiseLike<T>): Promise<T | undefined> {
  try {
    return await work;
  } catch (error) {
    // What cannot be stored at all is a fault of ours; all else is the browser's no.
    const ours =
      !(error instanceof Error || error instanceof DOMException) || error.name === 'DataCloneError';
    if (ours) throw error;
    return undefined;
  }
}
