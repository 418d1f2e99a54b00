import { Dexie, type DexieOptions, type Table, type Transaction } from 'dexie';
import type { Entry } from '../job/entry-schema.ts';
import { inWords, isLostConnection, NEWER_VERSION, OTHER_WINDOW, StorageUnavailable } from './errors.ts';

/** A job as the list of jobs shows it. All of it but the id can be derived from the log, or is about backups. */
export interface JobRow {
  readonly id: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly updatedAt: string;
  /** Follows the plan that stands. */
  readonly name: string;
  readonly entryCount: number;
  /** Entries that were in the last backup; the log only grows, so the rest are the work since then. */
  readonly backedUpCount: number;
  readonly lastBackupAt: string | null;
}

export interface EntryRow extends Entry {
  readonly jobId: string;
}

export interface Tables {
  readonly jobs: Table<JobRow, string>;
  readonly entries: Table<EntryRow, [jobId: string, id: string]>;
  /** Written and read at start to see that the store works; else empty. */
  readonly probes: Table<{ readonly id: string; readonly text: string }, string>;
}

/** Raised by one, with an `upgrade`, whenever the tables change shape. */
export const SCHEMA_VERSION = 1;
/** Dexie multiplies its own version numbers by ten for the browser. */
const BROWSER_VERSION_FACTOR = 10;

const DATABASE_NAME = 'swingtape';

export interface DatabaseOptions {
  readonly name?: string;
  /** Called with a sentence for the user when another window holds up this one, or makes it out of date. */
  readonly onNotice?: (sentence: string) => void;
  /** The browser's own unless given; tests give one each. */
  readonly indexedDB?: IDBFactory;
  readonly IDBKeyRange?: typeof globalThis.IDBKeyRange;
}

/** The database, with a connection that heals itself once. */
export class Database {
  readonly #dexie: Dexie;
  readonly #notice: (sentence: string) => void;
  #outdated = false;

  constructor({ name = DATABASE_NAME, onNotice = () => {}, ...engine }: DatabaseOptions = {}) {
    // A phone's battery dies outdoors: ask that a commit is on disk, not only handed to the system.
    const options: DexieOptions = { ...engine, chromeTransactionDurability: 'strict' };
    this.#notice = onNotice;
    this.#dexie = new Dexie(name, options);
    this.#dexie.version(SCHEMA_VERSION).stores({
      jobs: 'id',
      entries: '[jobId+id], [jobId+seq]',
      probes: 'id',
    });
    this.#dexie.on('blocked', () => this.#notice(OTHER_WINDOW));
    this.#dexie.on('versionchange', () => this.#giveWay());
  }

  /**
   * Runs `work` in one transaction and resolves only after it has completed: before that nothing is saved. A lost
   * connection is closed, reopened and tried once more, so `work` must give the same result when it runs twice.
   *
   * @throws {StoreError} whatever `work` throws of that class, or what the browser's error means to the user
   */
  async run<T>(mode: 'r' | 'rw', work: (tables: Tables) => Promise<T>): Promise<T> {
    try {
      return await this.#attempt(mode, work);
    } catch (error) {
      if (!isLostConnection(error) || this.#outdated) throw inWords(error);
    }
    this.#close();
    try {
      return await this.#attempt(mode, work);
    } catch (error) {
      throw inWords(error);
    }
  }

  close(): void {
    this.#dexie.close();
  }

  async #attempt<T>(mode: 'r' | 'rw', work: (tables: Tables) => Promise<T>): Promise<T> {
    await this.#open();
    const dexie = this.#dexie;
    const tables: Tables = {
      jobs: dexie.table('jobs'),
      entries: dexie.table('entries'),
      probes: dexie.table('probes'),
    };
    return await new Promise((resolve, reject) => {
      let begun: Transaction | null = null;
      const fail = (error: unknown) => reject(begun?.idbtrans?.error ?? error);
      // The scope is itself `async`: by that Dexie knows to keep the transaction through the awaits of `work`.
      const scope = async (transaction: Transaction) => {
        begun = transaction;
        // On a full disk the requests may never settle, and `work` with them: the transaction still says so.
        transaction.on('abort', () => fail(new DOMException('The transaction was aborted.', 'AbortError')));
        return await work(tables);
      };
      dexie.transaction(mode, Object.values(tables), scope).then(resolve, fail);
    });
  }

  async #open(): Promise<void> {
    if (this.#outdated) throw new StorageUnavailable(NEWER_VERSION);
    if (!this.#dexie.isOpen()) await this.#dexie.open();
    // Dexie opens a database of a later version without a word, and would then write rows of an old shape into it.
    if (this.#dexie.backendDB().version > SCHEMA_VERSION * BROWSER_VERSION_FACTOR) this.#giveWay();
    if (this.#outdated) throw new StorageUnavailable(NEWER_VERSION);
  }

  #close(): void {
    this.#dexie.close({ disableAutoOpen: false });
  }

  /** A newer version wants the database: every append is a finished transaction, so nothing is lost by closing. */
  #giveWay(): void {
    this.#outdated = true;
    this.#dexie.close();
    this.#notice(NEWER_VERSION);
  }
}
