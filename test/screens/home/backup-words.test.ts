import { expect, test } from 'vitest';
import {
  backupWords,
  jobToBackUp,
  notBackedUp,
  restoredWords,
} from '../../../src/screens/home/backup-words.ts';

const job = (entryCount: number, backedUpCount = 0, lastBackupAt: string | null = null) => ({
  entryCount,
  backedUpCount,
  lastBackupAt,
});
const AT = '2026-05-02T14:00:00Z';

test('counts the entries that no file has', () => {
  expect(notBackedUp(job(40))).toBe(40);
  expect(notBackedUp(job(40, 28, AT))).toBe(12);
  expect(notBackedUp(job(40, 40, AT))).toBe(0);
});

test('says it for the list of jobs', () => {
  expect(backupWords(job(3))).toBe('never backed up');
  expect(backupWords(job(3, 2, AT))).toBe('1 entry since the last backup');
  expect(backupWords(job(3, 3, AT))).toBe('backed up');
});

test('picks the job with most to lose, and none while there is little', () => {
  const [little, much, more] = [job(19), job(30, 5, AT), job(26)];
  expect(jobToBackUp([little])).toBeNull();
  expect(jobToBackUp([little, much, more])).toBe(more);
  expect(jobToBackUp([])).toBeNull();
});

test('says what a backup brought', () => {
  expect(restoredWords({ added: 12, already: 40 })).toBe('12 entries added, 40 were here already.');
  expect(restoredWords({ added: 1, already: 1 })).toBe('1 entry added, 1 was here already.');
  expect(restoredWords({ added: 0, already: 40 })).toMatch(/^Nothing to add: all 40 entries/);
});
