import type { JobRow } from '../../store/db.ts';
import { ButtonLink } from '../../ui/index.ts';
import { hrefOf } from '../route.ts';
import { jobToBackUp, reminderWords } from './backup-words.ts';

/** Asks for a backup of the job with most to lose. */
export function BackUpReminder({ jobs }: { readonly jobs: readonly JobRow[] }) {
  const job = jobToBackUp(jobs);
  if (!job) return null;
  return (
    <section aria-label="Backup">
      <p>{reminderWords(job)}</p>
      <ButtonLink href={hrefOf({ at: 'job', job: job.id, phase: 'record', hole: null })}>
        Go to its backup
      </ButtonLink>
    </section>
  );
}
