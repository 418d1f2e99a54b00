import { expect } from 'vitest';
import { writeBackup } from '../../src/store/backup.ts';
import type { Backup } from '../../src/store/backup-schema.ts';
import { readBackup } from '../../src/store/read-backup.ts';
import { sampleLog } from '../job/sample.ts';

export const job = { id: 'job-00000001', createdAt: '2026-05-01T08:00:00.000Z' };
export const SAVED_AT = '2026-05-02T18:00:00.000Z';
export const good = writeBackup(job, sampleLog(), SAVED_AT);

export function read(text: string): Backup {
  const result = readBackup(text);
  if (!result.ok) throw new Error(result.problem.text);
  return result.value;
}

export function refusal(text: string): string {
  const result = readBackup(text);
  if (result.ok) throw new Error('accepted');
  expect(result.problem.field).toBe('Backup');
  return result.problem.text;
}

/** The good file with its data changed, and without the checksum, as a person with an editor would. */
export function edited(
  change: (file: Record<string, unknown> & { log: Record<string, unknown>[] }) => void,
): string {
  const file = JSON.parse(good);
  delete file.checksum;
  change(file);
  return JSON.stringify(file);
}
