import type { JobRow } from '../../store/db.ts';
import { hrefOf } from '../route.ts';

/** The jobs on this phone, the one last worked on first. */
export function JobList({ jobs }: { readonly jobs: readonly JobRow[] }) {
  return (
    <ul class="job-list" aria-label="Jobs on this phone">
      {jobs.map((job) => (
        <li key={job.id}>
          <a class="job-link" href={hrefOf({ at: 'job', job: job.id, phase: 'plan', hole: null })}>
            <strong>{job.name}</strong>
            <span>
              {new Date(job.updatedAt).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}
              {', '}
              {backupWords(job)}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}

/** Counts work, not days: a job that has not changed since needs no new backup. */
function backupWords({ entryCount, backedUpCount, lastBackupAt }: JobRow): string {
  if (lastBackupAt === null) return 'never backed up';
  const since = entryCount - backedUpCount;
  return since > 0 ? `${since} ${since === 1 ? 'entry' : 'entries'} since the last backup` : 'backed up';
}
