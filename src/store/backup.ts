import type { Entry } from '../job/entry-schema.ts';
import { currentPlan, inOrder, standing } from '../job/log.ts';
import { BACKUP_FORMAT, BACKUP_VERSION, type Backup } from './backup-schema.ts';
import { canonicalJson } from './canonical-json.ts';
import { safeFileName } from './file-name.ts';
import { sha256 } from './sha256.ts';

/** Browsers share text files, and not JSON ones; a phone's files app opens it for reading. */
export const BACKUP_TYPE = 'text/plain';

/**
 * The backup file of a job, for `readBackup` and for eyes: one line per entry.
 *
 * @param savedAt ISO 8601, UTC
 */
export function writeBackup(
  job: { readonly id: string; readonly createdAt: string },
  log: readonly Entry[],
  savedAt: string,
): string {
  const backup: Backup = {
    format: BACKUP_FORMAT,
    version: BACKUP_VERSION,
    savedAt,
    job: { id: job.id, createdAt: job.createdAt },
    log: inOrder(log),
  };
  const { log: entries, ...head } = backup;
  const lines = Object.entries(head).map(([key, value]) => `  "${key}": ${JSON.stringify(value)},`);
  const rows = entries.map((entry) => `    ${JSON.stringify(entry)}`).join(',\n');
  const logLines = entries.length === 0 ? '  "log": [],' : `  "log": [\n${rows}\n  ],`;
  return ['{', ...lines, logLines, `  "checksum": "${checksumOf(backup)}"`, '}', ''].join('\n');
}

/** SHA-256 of a backup's canonical JSON, its own checksum left out. */
export function checksumOf({ checksum: _, ...rest }: Backup): string {
  return sha256(canonicalJson(rest));
}

/** `<job name>.swingtape.txt`, without what file systems forbid. */
export const backupFileName = (log: readonly Entry[]): string =>
  safeFileName(currentPlan(standing(log))?.name ?? '', 'swingtape.txt');
