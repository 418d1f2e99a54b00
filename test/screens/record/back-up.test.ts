import { describe, expect, test, vi } from 'vitest';
import {
  backupFile,
  backupState,
  handOut,
  outcomeWords,
  type Sharer,
} from '../../../src/screens/record/back-up.ts';
import type { JobRow } from '../../../src/store/db.ts';
import { readBackup } from '../../../src/store/read-backup.ts';
import { sampleLog } from '../../job/sample.ts';

const job: JobRow = {
  id: 'sample-job-1',
  createdAt: '2026-05-02T14:00:00.000Z',
  updatedAt: '2026-05-02T14:00:00.000Z',
  name: 'Garden room',
  entryCount: 11,
  backedUpCount: 0,
  lastBackupAt: null,
};
const file = backupFile(job, sampleLog(), '2026-05-03T08:00:00.000Z');
const name = 'Garden room.swingtape.txt';

const sharer = (share: () => Promise<void>): Sharer => ({ canShare: () => true, share });
const refusal = (reason: string) => () => Promise.reject(new DOMException('no', reason));

test('the file is text, named after the job, and reads back whole', async () => {
  expect([file.name, file.type]).toEqual([name, 'text/plain']);
  const backup = readBackup(await file.text());
  expect(backup.ok && backup.value.log).toEqual(sampleLog());
});

describe('handing it out', () => {
  test('goes to the share sheet in the same turn as the tap', async () => {
    const share = vi.fn(() => Promise.resolve());
    const download = vi.fn();
    const outcome = handOut(file, sharer(share), download);
    expect(share).toHaveBeenCalledExactlyOnceWith({ files: [file], title: name });
    expect(await outcome).toEqual({ how: 'shared', name });
    expect(download).not.toHaveBeenCalled();
  });

  test('closed by the user is no backup, and starts nothing else', async () => {
    const download = vi.fn();
    expect(await handOut(file, sharer(refusal('AbortError')), download)).toEqual({ how: 'closed' });
    expect(download).not.toHaveBeenCalled();
  });

  test.each([
    ['the phone cannot share', {}],
    ['it will not share files', { canShare: () => false, share: () => Promise.resolve() }],
    ['it refuses after all', sharer(refusal('NotAllowedError'))],
  ])('is a download where %s', async (_, phone) => {
    const download = vi.fn();
    expect(await handOut(file, phone, download)).toEqual({ how: 'download', name });
    expect(download).toHaveBeenCalledExactlyOnceWith(file);
  });

  test('does not hide a fault of ours', async () => {
    const broken = sharer(() => Promise.reject(new TypeError('ours')));
    await expect(handOut(file, broken, vi.fn())).rejects.toThrow(TypeError);
  });
});

describe('what is said', () => {
  test('never claims that a file arrived', () => {
    expect(outcomeWords({ how: 'shared', name })).toMatch(/Look there that it arrived/);
    expect(outcomeWords({ how: 'download', name })).toMatch(/was started. Look among your downloads/);
    expect(outcomeWords({ how: 'closed' })).toMatch(/^Not backed up/);
  });

  test('counts the work that no file holds', () => {
    const backed = { ...job, lastBackupAt: job.createdAt, backedUpCount: 11 };
    expect(backupState(job, 11)).toBe('Never backed up: this job is on this phone alone.');
    expect(backupState(backed, 11)).toBe('Nothing was logged since the last backup.');
    expect(backupState(backed, 12)).toBe('1 entry since the last backup.');
    expect(backupState(backed, 14)).toBe('3 entries since the last backup.');
  });
});
