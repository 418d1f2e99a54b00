import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { ROOT } from '../../src/desk/ready.mjs';
import type { Entry } from '../../src/job/entry-schema.ts';
import { currentPlan, standing } from '../../src/job/log.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { describeEntry } from '../../src/job/words.ts';
import { writeBackup } from '../../src/store/backup.ts';
import type { Backup } from '../../src/store/backup-schema.ts';
import { readBackup } from '../../src/store/read-backup.ts';

export const EXAMPLE_FILE = join(ROOT, 'public', 'example-job.swingtape.txt');

/** The example job as it lies beside the app. */
export const readExample = (): Backup => backupIn(readFileSync(EXAMPLE_FILE, 'utf8'));

/** What a backup's text says; a file that cannot be read ends the test with the reason. */
export function backupIn(text: string): Backup {
  const backup = readBackup(text);
  if (!backup.ok) throw new TypeError(backup.problem.text);
  return backup.value;
}

export function planOf(log: readonly Entry[]): Plan {
  const plan = currentPlan(standing(log));
  if (!plan) throw new TypeError('No plan stands');
  return plan;
}

/** The log up to and with its first line that begins with these words: a job that is half done. */
export function upTo(words: string, log: readonly Entry[]): Entry[] {
  const plan = planOf(log);
  const at = log.findIndex((entry) => describeEntry(entry, plan).startsWith(words));
  if (at < 0) throw new RangeError(`No line of the log begins with “${words}”`);
  return log.slice(0, at + 1);
}

/** A backup as a person would choose it from the phone's files. */
export const asFile = (text: string, name = 'job.swingtape.txt') => ({
  name,
  mimeType: 'text/plain',
  buffer: Buffer.from(text),
});

/** Restores a job with this log on the page of jobs, and waits until it is open. Every length of log is another job. */
export async function restoreLog(page: Page, log: readonly Entry[]): Promise<void> {
  const [first, last] = [log[0], log.at(-1)];
  if (!first || !last) throw new RangeError('An empty log is no job');
  const id = `example-up-to-${log.length}`;
  await page.evaluate(() => location.assign('#/'));
  const text = writeBackup({ id, createdAt: first.at }, log, last.at);
  await page.getByLabel('Restore a backup').setInputFiles(asFile(text));
  await page.locator(`a[href*="${id}"]`, { hasText: 'Open it' }).click();
  await page.waitForURL((url) => url.hash.includes(id));
}
