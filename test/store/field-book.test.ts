import { Dexie } from 'dexie';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { ofKind } from '../../src/job/log.ts';
import { BadEntry, StorageFull, StorageUnavailable, UnknownJob } from '../../src/store/errors.ts';
import { sampleBodies, samplePlan } from '../job/sample.ts';
import { bookOn, brittleConnection, connectionLost, fillDisk, phone } from './fake-store.ts';

const note = (text: string): Body => ({ kind: 'note', text });
const planNamed = (name: string): Body => ({ kind: 'plan', plan: { ...samplePlan, name } });
const texts = (log: readonly Entry[]) => ofKind(log, 'note').map((e) => e.body.text);

afterEach(() => {
  vi.restoreAllMocks();
});

describe('a job', () => {
  test('begins with its first entries and is named after its plan', async () => {
    const book = bookOn(phone());
    const job = await book.createJob([sampleBodies.plan, sampleBodies.site]);
    expect(job).toMatchObject({ name: 'Garden room', entryCount: 2, backedUpCount: 0, lastBackupAt: null });
    const log = await book.loadLog(job.id);
    expect(log.map((e) => [e.seq, e.body.kind])).toEqual([
      [1, 'plan'],
      [2, 'site'],
    ]);
    expect(log[0]!.body).toEqual(sampleBodies.plan);
    expect(await book.job(job.id)).toEqual(job);
  });

  test('is not begun at all when one of its first entries is bad', async () => {
    const book = bookOn(phone());
    await expect(book.createJob([sampleBodies.plan, note('')])).rejects.toThrow(BadEntry);
    expect(await book.listJobs()).toEqual([]);
  });

  test('follows the name of the plan that stands, back again when that plan is struck', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([planNamed('First')]);
    const second = await book.append(id, planNamed('Second'));
    expect((await book.job(id)).name).toBe('Second');
    await book.strike(id, second.id, 'wrong drawing');
    expect((await book.job(id)).name).toBe('First');
  });

  test('that was worked on last comes first in the list', async () => {
    const book = bookOn(phone());
    const first = await book.createJob([planNamed('First')]);
    await book.createJob([planNamed('Second')]);
    expect((await book.listJobs()).map((job) => job.name)).toEqual(['Second', 'First']);
    await book.append(first.id, note('back here'));
    expect((await book.listJobs()).map((job) => job.name)).toEqual(['First', 'Second']);
  });

  test('whose numbers are used up takes no entry more, and says so', async () => {
    const book = bookOn(phone());
    const at = '2026-05-01T08:00:00.000Z';
    const last: Entry = { id: 'entry-0001', seq: Number.MAX_SAFE_INTEGER, at, body: note('the last') };
    const id = 'job-00000001';
    await book.restore({
      format: 'swingtape-job',
      version: 2,
      savedAt: at,
      job: { id, createdAt: at },
      log: [last],
    });
    await expect(book.append(id, note('one more'))).rejects.toThrow(
      /^Entry: the last one in this job bears the largest number/,
    );
    expect(await book.loadLog(id)).toEqual([last]);
  });

  test('that is not on this phone is said to be so', async () => {
    const book = bookOn(phone());
    await expect(book.job('gone')).rejects.toThrow(UnknownJob);
    await expect(book.append('gone', note('a'))).rejects.toThrow(UnknownJob);
    await expect(book.noteBackup('gone', 1)).rejects.toThrow(UnknownJob);
    await expect(book.loadLog('gone')).rejects.toThrow(/^Job: “gone” is not on this phone; open it from/);
  });

  test('counts the work since its last backup', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan, note('a')]);
    const noted = await book.noteBackup(id, 2);
    expect(noted).toMatchObject({ entryCount: 2, backedUpCount: 2, lastBackupAt: expect.any(String) });
    await book.append(id, note('b'));
    expect(await book.job(id)).toMatchObject({
      entryCount: 3,
      backedUpCount: 2,
      lastBackupAt: noted.lastBackupAt,
    });
  });
});

describe('append', () => {
  test('keeps order, also when many are sent at once', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    const sent = Array.from({ length: 30 }, (_, i) => `n${i}`);
    await Promise.all(sent.map((text) => book.append(id, note(text))));
    const log = await book.loadLog(id);
    expect(log.map((e) => e.seq)).toEqual(Array.from({ length: 31 }, (_, i) => i + 1));
    expect(texts(log)).toEqual(sent);
  });

  test('from two windows at once never gives one number twice', async () => {
    const device = phone();
    const one = bookOn(device);
    const two = bookOn(device);
    const { id } = await one.createJob([sampleBodies.plan]);
    await Promise.all(Array.from({ length: 40 }, (_, i) => (i % 2 ? one : two).append(id, note(`n${i}`))));
    const log = await two.loadLog(id);
    expect(log).toHaveLength(41);
    expect(new Set(log.map((e) => e.seq)).size).toBe(41);
    expect(new Set(log.map((e) => e.id)).size).toBe(41);
    expect((await one.job(id)).entryCount).toBe(41);
  });

  test('is on disk when it says so: another window sees it at once', async () => {
    const device = phone();
    const one = bookOn(device);
    const { id } = await one.createJob([sampleBodies.plan]);
    const saved = await one.append(id, sampleBodies.pull);
    expect((await bookOn(device).loadLog(id)).at(-1)).toEqual(saved);
  });

  test('takes its time from the clock, and its order does not depend on it', async () => {
    const times = ['2026-05-02T10:00:00.000Z', '2026-05-02T10:00:01.000Z', '2025-01-01T00:00:00.000Z'];
    const now = () => new Date(times.shift() ?? '2024-01-01T00:00:00.000Z');
    const book = bookOn(phone(), { now });
    const { id } = await book.createJob([note('first')]);
    await book.append(id, note('after the clock was set back'));
    expect(texts(await book.loadLog(id))).toEqual(['first', 'after the clock was set back']);
  });

  test('refuses what breaks the schema, names the field, and writes nothing', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    const far = { ...sampleBodies.pull, reading: { m: 1, typed: '18 6', units: 'ft-in-16' } } as Body;
    await expect(book.append(id, far)).rejects.toMatchObject({
      name: 'BadEntry',
      problem: {
        field: 'reading',
        text: 'reading has a typed text and metres that disagree; nothing was written: mend it and save again.',
      },
    });
    await expect(book.append(id, { kind: 'nonsense' } as unknown as Body)).rejects.toThrow(BadEntry);
    expect(await book.loadLog(id)).toHaveLength(1);
  });

  test('stores what a backup would hold: no undefined members, no minus zero', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([]);
    const body = { kind: 'pour', hole: '4', bags: -0, note: undefined } as unknown as Body;
    const saved = await book.append(id, body);
    expect(Object.keys(saved.body)).toEqual(['kind', 'hole', 'bags']);
    expect(saved.body).toStrictEqual({ kind: 'pour', hole: '4', bags: 0 });
  });
});

describe('strike', () => {
  test('names an entry and says why', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([note('a')]);
    const target = (await book.loadLog(id))[0]!;
    const saved = await book.strike(id, target.id, '  wrong hole ');
    expect(saved.body).toEqual({ kind: 'strike', entry: target.id, reason: 'wrong hole' });
  });

  test.each(['', '   '])('without a reason (%j) is refused', async (reason) => {
    const book = bookOn(phone());
    const { id } = await book.createJob([note('a')]);
    const target = (await book.loadLog(id))[0]!;
    await expect(book.strike(id, target.id, reason)).rejects.toThrow(
      /^reason must not be empty; nothing was written/,
    );
  });

  test('of an unknown entry, or of one in another job, or a second time, is refused', async () => {
    const book = bookOn(phone());
    const mine = await book.createJob([note('a')]);
    const other = await book.createJob([note('b')]);
    const [target] = await book.loadLog(mine.id);
    await expect(book.strike(mine.id, 'nobody-here', 'x')).rejects.toThrow(/^Strike: there is no such entry/);
    await expect(book.strike(other.id, target!.id, 'x')).rejects.toThrow(BadEntry);
    await book.strike(mine.id, target!.id, 'x');
    await expect(book.strike(mine.id, target!.id, 'x')).rejects.toThrow(
      /^Strike: that entry is struck already/,
    );
    expect(await book.loadLog(mine.id)).toHaveLength(2);
    expect(await book.loadLog(other.id)).toHaveLength(1);
  });
});

describe('when the browser cuts the connection', () => {
  test.each([
    ['as Safari does', connectionLost],
    ['with InvalidStateError', () => new DOMException('The connection is closing.', 'InvalidStateError')],
  ])('%s, it is opened again and the entry is written once', async (_, error) => {
    const connection = brittleConnection();
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    connection.cut(error);
    await book.append(id, note('kept'));
    expect(connection.failed()).toBe(1);
    expect(texts(await book.loadLog(id))).toEqual(['kept']);
  });

  test('after the commit but before the answer, the second try finds the entry and adds no other', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    const transaction = Dexie.prototype.transaction as (...args: unknown[]) => Promise<unknown>;
    vi.spyOn(Dexie.prototype, 'transaction').mockImplementationOnce(async function (
      this: Dexie,
      ...args: unknown[]
    ) {
      await transaction.apply(this, args);
      throw connectionLost();
    } as never);
    const saved = await book.append(id, note('once'));
    const log = await book.loadLog(id);
    expect(texts(log)).toEqual(['once']);
    expect(log.at(-1)).toEqual(saved);
    expect((await book.job(id)).entryCount).toBe(2);
  });

  test('and keeps cutting it, it says so, and later work goes on', async () => {
    const connection = brittleConnection();
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    connection.cut(connectionLost, 100);
    const failed = book.append(id, note('lost'));
    await expect(failed).rejects.toThrow(StorageUnavailable);
    await expect(failed).rejects.toThrow(/what you typed is still here: reload the page and save again\.$/);
    // Once at first, and again after it was opened anew: it does not try for ever.
    expect(connection.failed()).toBeGreaterThanOrEqual(2);
    expect(connection.failed()).toBeLessThan(10);
    connection.mend();
    await book.append(id, note('next'));
    expect(texts(await book.loadLog(id))).toEqual(['next']);
  });
});

describe('when the phone is full', () => {
  test.each(['aborted', 'silent'] as const)(
    '(requests: %s) the entry is refused in words and nothing of it is kept',
    async (request) => {
      const book = bookOn(phone());
      const { id } = await book.createJob([sampleBodies.plan]);
      const before = await book.job(id);
      fillDisk(request);
      const failed = book.append(id, note('too much'));
      await expect(failed).rejects.toThrow(StorageFull);
      await expect(failed).rejects.toThrow(
        /^Storage: this was not saved, because the phone is full; free some space/,
      );
      vi.restoreAllMocks();
      expect(await book.loadLog(id)).toHaveLength(1);
      expect(await book.job(id)).toEqual(before);
      await book.append(id, note('fits again'));
      expect(texts(await book.loadLog(id))).toEqual(['fits again']);
    },
  );
});
