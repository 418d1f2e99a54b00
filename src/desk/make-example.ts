import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { writeBackup } from '../store/backup.ts';
import { makeLog } from './example/make-log.ts';

/** Where the example lies; it is served beside the app, and a test holds that it is what this script makes. */
export const EXAMPLE_FILE = new URL('../../public/example-job.swingtape.txt', import.meta.url);

/** The example as a backup file. The same on every run. */
export function makeExample(): string {
  const log = makeLog();
  return writeBackup({ id: 'orchard-yurt-deck', createdAt: log[0]!.at }, log, log.at(-1)!.at);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = makeExample();
  writeFileSync(EXAMPLE_FILE, text);
  console.log(`${fileURLToPath(EXAMPLE_FILE)}: ${text.length} bytes`);
}
