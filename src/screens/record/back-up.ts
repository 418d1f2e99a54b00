import type { Entry } from '../../job/entry-schema.ts';
import { BACKUP_TYPE, backupFileName, writeBackup } from '../../store/backup.ts';
import type { JobRow } from '../../store/db.ts';

/** The part of `Navigator` that gives files to other apps. */
export interface Sharer {
  readonly canShare?: (data: ShareData) => boolean;
  readonly share?: (data: ShareData) => Promise<void>;
}

/** What became of a backup. Nobody but the user can see whether a file arrived, and none of these claims to. */
export type Outcome =
  | { readonly how: 'shared' | 'download'; readonly name: string }
  | { readonly how: 'closed' };

/**
 * Hands the backup file out: to the phone's share sheet where that takes files, else as a download. It is called from a
 * tap and must not wait for anything before it shares: browsers open the sheet only just after a tap.
 *
 * @param download starts a download of a file
 */
export async function handOut(file: File, sharer: Sharer, download: (file: File) => void): Promise<Outcome> {
  const data = { files: [file], title: file.name };
  if (!sharer.share || !sharer.canShare?.(data)) {
    download(file);
    return { how: 'download', name: file.name };
  }
  try {
    await sharer.share(data);
    return { how: 'shared', name: file.name };
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    if (error.name === 'AbortError') return { how: 'closed' };
    // The browser will not share after all, for whatever reason; a download still brings the file out.
    download(file);
    return { how: 'download', name: file.name };
  }
}

export const backupFile = (
  job: Pick<JobRow, 'id' | 'createdAt'>,
  log: readonly Entry[],
  savedAt: string,
): File => new File([writeBackup(job, log, savedAt)], backupFileName(log), { type: BACKUP_TYPE });

export function outcomeWords(outcome: Outcome): string {
  switch (outcome.how) {
    case 'shared':
      return `“${outcome.name}” was handed to the app you chose. Look there that it arrived, before you count on it.`;
    case 'download':
      return `A download of “${outcome.name}” was started. Look among your downloads that it is there, and put a copy somewhere off this phone.`;
    case 'closed':
      return 'Not backed up: sharing was closed before a place was chosen.';
  }
}

/** What is known of backups, counted in entries: work that is not in any file. */
export function backupState({ lastBackupAt, backedUpCount }: JobRow, entryCount: number): string {
  if (lastBackupAt === null) return 'Never backed up: this job is on this phone alone.';
  const since = entryCount - backedUpCount;
  if (since <= 0) return 'Nothing was logged since the last backup.';
  return `${since} ${since === 1 ? 'entry' : 'entries'} since the last backup.`;
}
