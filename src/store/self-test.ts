import type { Problem } from '../units/index.ts';
import type { Database } from './db.ts';
import { StoreError } from './errors.ts';

/**
 * Does the store keep what it is given? Private windows and full phones are found here, before the first reading is.
 *
 * @returns null when it does, else a sentence
 */
export async function probe(database: Database, id: string): Promise<Problem | null> {
  const written = { id, text: `probe ${id}` };
  try {
    await database.run('rw', ({ probes }) => probes.put(written));
    const read = await database.run('r', ({ probes }) => probes.get(id));
    await database.run('rw', ({ probes }) => probes.delete(id));
    return read?.text === written.text ? null : FORGETFUL;
  } catch (error) {
    if (error instanceof StoreError) return error.problem;
    throw error;
  }
}

const FORGETFUL: Problem = {
  field: 'Storage',
  text: 'Storage: this browser does not keep what it is given, as in a private window; open Swingtape in an ordinary window before you begin.',
};

/** What the browser says of our storage; null where it says nothing. */
export interface StorageState {
  readonly persisted: boolean | null;
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
  /** One plain sentence or two. Never says "safe": only a file off the phone is. */
  readonly text: string;
}

type Storage = Partial<Pick<StorageManager, 'persisted' | 'estimate' | 'persist'>>;

/** Absent on a page served without TLS. */
const browserStorage = (): Storage | undefined => globalThis.navigator?.storage;

export async function storageState(storage: Storage | undefined = browserStorage()): Promise<StorageState> {
  const persisted = (await storage?.persisted?.()) ?? null;
  const estimate = await storage?.estimate?.();
  return {
    persisted,
    usedBytes: estimate?.usage ?? null,
    quotaBytes: estimate?.quota ?? null,
    text: `${PERSISTED_TEXT[String(persisted) as 'true' | 'false' | 'null']} Keep a backup file off this phone.`,
  };
}

/** Asks the browser to keep our data; some ask the user, so call it once there is something worth keeping. */
export async function askToPersist(storage: Storage | undefined = browserStorage()): Promise<StorageState> {
  await storage?.persist?.();
  return storageState(storage);
}

const PERSISTED_TEXT = {
  true: 'The browser has agreed to keep this job until you delete it.',
  false: 'The browser may delete this job when space runs short or after some weeks without use.',
  null: 'This browser does not say whether it will keep this job.',
};
