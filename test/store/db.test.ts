import { afterEach, describe, expect, test, vi } from 'vitest';
import { Database, SCHEMA_VERSION } from '../../src/store/db.ts';
import { StorageUnavailable } from '../../src/store/errors.ts';
import { probe } from '../../src/store/self-test.ts';
import { sampleBodies } from '../job/sample.ts';
import { bookOn, fillDisk, type Phone, phone } from './fake-store.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** Opens the database as another program version would, and gives it back open. */
function openRaw(device: Phone, version: number): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = device.indexedDB.open('swingtape', version);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function refuseAccess(): never {
  throw new DOMException('denied', 'SecurityError');
}

const BROWSER_VERSION = SCHEMA_VERSION * 10;

test('asks the browser for commits that reach the disk', async () => {
  const device = phone();
  const book = bookOn(device);
  const { IDBDatabase } = await import('fake-indexeddb');
  const begin = vi.spyOn(IDBDatabase.prototype, 'transaction');
  await book.createJob([sampleBodies.plan]);
  expect(begin).toHaveBeenCalledWith(expect.anything(), 'readwrite', { durability: 'strict' });
});

test('a fault of ours is not called storage trouble', async () => {
  const database = new Database(phone());
  const slip = database.run('r', async () => {
    throw new TypeError('a slip in the code');
  });
  await expect(slip).rejects.toThrow(TypeError);
});

describe('versions', () => {
  test('a window that is updated elsewhere gives way, says so, and writes no more', async () => {
    const device = phone();
    const onNotice = vi.fn();
    const book = bookOn(device, { onNotice });
    const { id } = await book.createJob([sampleBodies.plan]);
    // This would hang if the old window kept its connection open.
    (await openRaw(device, BROWSER_VERSION + 10)).close();
    const sentence =
      'Storage: a newer Swingtape is open in another window; close this window and open Swingtape again.';
    expect(onNotice).toHaveBeenCalledWith(sentence);
    const late = book.append(id, sampleBodies.note);
    await expect(late).rejects.toThrow(StorageUnavailable);
    await expect(late).rejects.toThrow(sentence);
  });

  test('a database left by a newer version is not opened', async () => {
    const device = phone();
    (await openRaw(device, BROWSER_VERSION + 10)).close();
    await expect(bookOn(device).listJobs()).rejects.toThrow(/^Storage: a newer Swingtape is open/);
  });

  test('an old window that does not let go is named, and work goes on once it is closed', async () => {
    const device = phone();
    const old = await openRaw(device, 1);
    const notices: string[] = [];
    const book = bookOn(device, { onNotice: (sentence) => notices.push(sentence) });
    const jobs = book.listJobs();
    await vi.waitFor(() => expect(notices).toHaveLength(1));
    expect(notices[0]).toBe(
      'Storage: another Swingtape window still holds the old version open; close that window and wait a moment.',
    );
    old.close();
    expect(await jobs).toEqual([]);
  });
});

describe('self-test', () => {
  test('says nothing of a store that works, and leaves nothing behind', async () => {
    const device = phone();
    expect(await bookOn(device).selfTest()).toBeNull();
    const raw = await openRaw(device, BROWSER_VERSION);
    const left = await new Promise((resolve) => {
      const count = raw.transaction('probes').objectStore('probes').count();
      count.onsuccess = () => resolve(count.result);
    });
    expect(left).toBe(0);
  });

  test('a full phone', async () => {
    fillDisk('aborted');
    expect(await bookOn(phone()).selfTest()).toMatchObject({
      text: expect.stringContaining('the phone is full'),
    });
  });

  test('a browser that gives no storage', async () => {
    const denied = { ...phone(), indexedDB: { open: refuseAccess } as unknown as IDBFactory };
    expect(await bookOn(denied).selfTest()).toMatchObject({
      field: 'Storage',
      text: 'Storage: this browser gives Swingtape no storage here, as in some private windows; open it in an ordinary window.',
    });
  });

  test('a store that forgets what it was given', async () => {
    const forgetful = { run: async () => undefined } as unknown as Database;
    expect(await probe(forgetful, 'probe-1')).toMatchObject({
      text: expect.stringContaining('does not keep what it is given'),
    });
  });
});
