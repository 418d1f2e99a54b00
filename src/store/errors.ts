import { Dexie } from 'dexie';
import type { Problem } from '../units/index.ts';

/** Trouble with the store. `message` is the sentence that the user sees; `problem.field` says what it is about. */
export abstract class StoreError extends Error {
  readonly problem: Problem;

  constructor(problem: Problem, cause?: unknown) {
    super(problem.text, cause === undefined ? undefined : { cause });
    this.name = new.target.name;
    this.problem = problem;
  }
}

/** The phone has no room. Nothing of the write was kept. */
export class StorageFull extends StoreError {
  constructor(cause?: unknown) {
    const text =
      'Storage: this was not saved, because the phone is full; free some space, then tap save again. What you typed is still here.';
    super({ field: 'Storage', text }, cause);
  }
}

/** The browser does not give us its database: private window, connection lost for good, or a newer version elsewhere. */
export class StorageUnavailable extends StoreError {
  constructor(text: string = UNAVAILABLE, cause?: unknown) {
    super({ field: 'Storage', text }, cause);
  }
}

/** What was to be written is not a good log entry. Nothing was written. */
export class BadEntry extends StoreError {}

/** No job with that id is on this phone. */
export class UnknownJob extends StoreError {
  constructor(jobId: string) {
    const text = `Job: “${jobId}” is not on this phone; open it from the list of jobs, or restore its backup file.`;
    super({ field: 'Job', text });
  }
}

const UNAVAILABLE =
  'Storage: the browser cut the connection to its own storage; what you typed is still here: reload the page and save again.';
const NO_STORAGE =
  'Storage: this browser gives Swingtape no storage here, as in some private windows; open it in an ordinary window.';
export const NEWER_VERSION =
  'Storage: a newer Swingtape is open in another window; close this window and open Swingtape again.';
export const OTHER_WINDOW =
  'Storage: another Swingtape window still holds the old version open; close that window and wait a moment.';

const CANNOT_OPEN = new Set(['MissingAPIError', 'OpenFailedError', 'SecurityError']);

/**
 * What a browser's or Dexie's error means to the user. On a full disk Chrome aborts the transaction and hides the
 * reason one or two levels down, so the chain of `inner` and `cause` is searched.
 *
 * @returns a `StoreError`; or the error itself when it is no storage trouble but a fault of ours, which must not hide
 */
export function inWords(error: unknown): unknown {
  const ours = !(error instanceof Dexie.DexieError || error instanceof DOMException);
  if (error instanceof StoreError || ours) return error;
  const names = new Set(errorChain(error).map((e) => e.name));
  if (names.has('QuotaExceededError')) return new StorageFull(error);
  if (names.has('VersionError')) return new StorageUnavailable(NEWER_VERSION, error);
  const closed = [...names].some((name) => CANNOT_OPEN.has(name));
  return new StorageUnavailable(closed ? NO_STORAGE : UNAVAILABLE, error);
}

const LOST_NAMES = new Set(['DatabaseClosedError', 'InvalidStateError']);
const LOST_MESSAGE = /connection to indexed database server lost|connection is closing|database is closing/i;

/** True when closing, reopening and trying again may help: Safari cuts the connection of a page in the background. */
export function isLostConnection(error: unknown): boolean {
  return errorChain(error).some((e) => LOST_NAMES.has(e.name) || LOST_MESSAGE.test(e.message));
}

interface ErrorLike {
  readonly name: string;
  readonly message: string;
}

/** Deeper than any wrapping seen, and an end to a chain that loops. */
const CHAIN_LIMIT = 8;

function errorChain(error: unknown): ErrorLike[] {
  const chain: ErrorLike[] = [];
  let next: unknown = error;
  while (typeof next === 'object' && next !== null && chain.length < CHAIN_LIMIT) {
    const { name, message, inner, cause } = next as Record<string, unknown>;
    chain.push({ name: String(name), message: String(message) });
    next = inner ?? cause;
  }
  return chain;
}
