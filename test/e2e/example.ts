import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../src/desk/ready.mjs';
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
