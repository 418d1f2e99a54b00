import type { JobRow } from '../../store/db.ts';

type Backups = Pick<JobRow, 'entryCount' | 'backedUpCount' | 'lastBackupAt'>;

/** Entries that are on this phone alone. Counts work, not days: a job that has not changed since needs no new backup. */
export const notBackedUp = ({ entryCount, backedUpCount, lastBackupAt }: Backups): number =>
  lastBackupAt === null ? entryCount : Math.max(0, entryCount - backedUpCount);

const entries = (count: number): string => `${count} ${count === 1 ? 'entry' : 'entries'}`;

/** For the list of jobs: `never backed up`, `12 entries since the last backup`, `backed up`. */
export function backupWords(job: Backups): string {
  if (job.lastBackupAt === null) return 'never backed up';
  const since = notBackedUp(job);
  return since > 0 ? `${entries(since)} since the last backup` : 'backed up';
}

/** About an hour's work at the stakes: more than anybody would care to measure again. */
const REMIND_FROM = 20;

/** The job with most to lose, where that is more than a little; else null. */
export function jobToBackUp<J extends Backups>(jobs: readonly J[]): J | null {
  const [most] = [...jobs].sort((p, q) => notBackedUp(q) - notBackedUp(p));
  return most && notBackedUp(most) >= REMIND_FROM ? most : null;
}

/** `“Shed”: 57 entries are on this phone alone.` */
export const reminderWords = (job: Backups & Pick<JobRow, 'name'>): string =>
  `“${job.name}”: ${entries(notBackedUp(job))} are on this phone alone. A phone that is lost, or cleared, takes them along.`;

/** `12 entries added, 40 were here already.` */
export function restoredWords({
  added,
  already,
}: {
  readonly added: number;
  readonly already: number;
}): string {
  if (added === 0) return `Nothing to add: all ${entries(already)} of it were here already.`;
  const here = already === 0 ? '' : `, ${already} ${already === 1 ? 'was' : 'were'} here already`;
  return `${entries(added)} added${here}.`;
}
