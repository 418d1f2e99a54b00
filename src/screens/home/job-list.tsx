import type { JobRow } from '../../store/db.ts';
import { hrefOf } from '../route.ts';
import { backupWords } from './backup-words.ts';

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
