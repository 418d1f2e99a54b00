import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { inOrder, ofKind } from '../../src/job/log.ts';
import { writeBackup } from '../../src/store/backup.ts';
import type { Backup } from '../../src/store/backup-schema.ts';
import type { FieldBook } from '../../src/store/field-book.ts';
import { readBackup } from '../../src/store/read-backup.ts';
import { mergeLogs } from '../../src/store/restore.ts';
import { entry, sampleBodies, samplePlan } from '../job/sample.ts';
import { bookOn, phone } from './fake-store.ts';

const note = (text: string): Body => ({ kind: 'note', text });
const texts = (log: readonly Entry[]) => ofKind(log, 'note').map((e) => e.body.text);

/** A job's backup, through the file's text, as it travels. */
async function backupOf(book: FieldBook, jobId: string): Promise<Backup> {
  const text = writeBackup(await book.job(jobId), await book.loadLog(jobId), '2026-05-02T18:00:00.000Z');
  const backup = readBackup(text);
  if (!backup.ok) throw new Error(backup.problem.text);
  return backup.value;
}

describe('restoring', () => {
  test('onto a new phone brings the whole job, under its own id and name', async () => {
    const mine = bookOn(phone());
    const { id, createdAt } = await mine.createJob([sampleBodies.plan, sampleBodies.pull]);
    const backup = await backupOf(mine, id);
    const other = bookOn(phone());
    expect(await other.restore(backup)).toEqual({ ok: true, value: { jobId: id, added: 2, already: 0 } });
    expect(await other.loadLog(id)).toEqual(await mine.loadLog(id));
    expect(await other.listJobs()).toMatchObject([
      { id, createdAt, name: 'Garden room', entryCount: 2, backedUpCount: 2, lastBackupAt: backup.savedAt },
    ]);
  });

  test('a second time adds nothing and touches nothing', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    const backup = await backupOf(book, id);
    const before = await book.job(id);
    expect(await book.restore(backup)).toEqual({ ok: true, value: { jobId: id, added: 0, already: 1 } });
    expect(await book.job(id)).toEqual(before);
  });

  test('an old file takes nothing away from the work since', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan]);
    const backup = await backupOf(book, id);
    await book.append(id, note('since then'));
    await book.restore(backup);
    expect(texts(await book.loadLog(id))).toEqual(['since then']);
  });

  test('two phones that worked apart end with the same log, and go on counting above both', async () => {
    const one = bookOn(phone());
    const two = bookOn(phone());
    const { id } = await one.createJob([sampleBodies.plan]);
    await two.restore(await backupOf(one, id));
    await one.append(id, note('on one'));
    for (const text of ['on two', 'and again']) await two.append(id, note(text));
    const fromOne = await backupOf(one, id);
    const fromTwo = await backupOf(two, id);
    expect(await one.restore(fromTwo)).toMatchObject({ value: { added: 2, already: 1 } });
    expect(await two.restore(fromOne)).toMatchObject({ value: { added: 1, already: 1 } });
    expect(await one.loadLog(id)).toEqual(await two.loadLog(id));
    const greatest = Math.max(...(await one.loadLog(id)).map((e) => e.seq));
    expect((await one.append(id, note('later'))).seq).toBe(greatest + 1);
    expect((await one.job(id)).entryCount).toBe(5);
  });

  test('a plan changed elsewhere renames the job', async () => {
    const one = bookOn(phone());
    const { id } = await one.createJob([sampleBodies.plan]);
    const two = bookOn(phone());
    await two.restore(await backupOf(one, id));
    await two.append(id, { kind: 'plan', plan: { ...samplePlan, name: 'Wider room' } });
    await one.restore(await backupOf(two, id));
    expect((await one.job(id)).name).toBe('Wider room');
  });

  test('a file whose entry differs from ours under one id is refused, and nothing changes', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan, note('ours')]);
    const backup = await backupOf(book, id);
    const [plan, ours] = backup.log as [Entry, Entry];
    const forged = { ...backup, log: [plan, { ...ours, body: note('theirs') }, entry(9, note('new'))] };
    const before = [await book.job(id), await book.loadLog(id)];
    expect(await book.restore(forged)).toEqual({
      ok: false,
      problem: {
        field: 'Backup',
        text: `Backup: its entry ${ours.id} is not what this phone has under that id, and entries are never edited; nothing was changed: use another copy of the backup.`,
      },
    });
    expect([await book.job(id), await book.loadLog(id)]).toEqual(before);
  });

  test('the same entries in a job of another id are another job', async () => {
    const book = bookOn(phone());
    const { id } = await book.createJob([sampleBodies.plan, note('a')]);
    const backup = await backupOf(book, id);
    const copy = { ...backup, job: { ...backup.job, id: 'copy-00000001' } };
    expect(await book.restore(copy)).toMatchObject({ value: { added: 2 } });
    expect(texts(await book.loadLog(id))).toEqual(['a']);
    expect(texts(await book.loadLog('copy-00000001'))).toEqual(['a']);
  });
});

describe('merging logs: the union by id, whoever asks, in any order, any number of times', () => {
  /** Entries of one job, any of which a phone may have or lack. */
  const all = Array.from({ length: 12 }, (_, i) => entry(1 + (i >> 1), note(`n${i}`), `entry-${1000 + i}`));
  const some = fc.shuffledSubarray(all);
  const merge = (p: readonly Entry[], q: readonly Entry[]): Entry[] => {
    const merged = mergeLogs(p, q);
    if (!merged.ok) throw new Error(merged.problem.text);
    return merged.value;
  };

  test('commutative, associative, idempotent', () => {
    fc.assert(
      fc.property(some, some, some, (a, b, c) => {
        expect(merge(a, b)).toEqual(merge(b, a));
        expect(merge(merge(a, b), c)).toEqual(merge(a, merge(b, c)));
        expect(merge(a, a)).toEqual(inOrder(a));
        const ids = new Set([...a, ...b].map((e) => e.id));
        expect(new Set(merge(a, b).map((e) => e.id))).toEqual(ids);
      }),
    );
  });
});
