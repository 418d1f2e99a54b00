import { IDBDatabase, IDBFactory, IDBKeyRange, IDBObjectStore, IDBRequest } from 'fake-indexeddb';
import { vi } from 'vitest';
import { FieldBook, type FieldBookOptions } from '../../src/store/field-book.ts';

/** A phone of its own: several field books opened with it are windows on one database. */
export function phone() {
  return { indexedDB: new IDBFactory(), IDBKeyRange };
}

export type Phone = ReturnType<typeof phone>;

/** A clock that moves a second at each look. */
function clock(start = '2026-05-02T14:00:00.000Z'): () => Date {
  let at = Date.parse(start);
  return () => {
    at += 1000;
    return new Date(at);
  };
}

export const bookOn = (device: Phone, options: FieldBookOptions = {}): FieldBook =>
  new FieldBook({ ...device, now: clock(), ...options });

/** What Safari says when it has cut off a page that was in the background. */
export const connectionLost = () =>
  new DOMException(
    'Connection to Indexed Database server lost. Refresh the page to try again',
    'UnknownError',
  );

/**
 * A connection that can be cut. To be made before the database is opened, since Dexie holds on to the function.
 *
 * @returns `cut(error)`: so many transactions fail to begin with that error; and how many have failed
 */
export function brittleConnection() {
  const begin = IDBDatabase.prototype.transaction;
  const faults: Error[] = [];
  let failed = 0;
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
    const fault = faults.shift();
    if (!fault) return begin.apply(this, args);
    failed++;
    throw fault;
  });
  return {
    cut: (error: () => Error, times = 1) => faults.push(...Array.from({ length: times }, error)),
    failed: () => failed,
    mend: () => faults.splice(0),
  };
}

/**
 * A full disk: the transaction aborts with the quota error when the job's row is put, which comes after the entry's
 * `add`. By the standard the request then fails with a bare AbortError; Chrome's requests say nothing at all.
 *
 * @param after so many rows still fit
 */
export function fillDisk(request: 'aborted' | 'silent', after = 0): void {
  const put = IDBObjectStore.prototype.put;
  let rows = 0;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    value: unknown,
  ) {
    const real = put.call(this, value);
    rows++;
    if (rows <= after) return real;
    const { transaction } = this;
    queueMicrotask(() => {
      Object.assign(transaction, { error: new DOMException('The disk is full', 'QuotaExceededError') });
      transaction.abort();
    });
    return request === 'aborted' ? real : new IDBRequest();
  });
}
