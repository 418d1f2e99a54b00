import type { JobRow } from '../../store/db.ts';
import type { Restored } from '../../store/restore.ts';
import { ButtonLink } from '../../ui/index.ts';
import { hrefOf } from '../route.ts';
import { restoredWords } from './backup-words.ts';

export interface RestoredNoteProps {
  readonly restored: Restored;
  readonly jobs: readonly JobRow[];
}

/** What a backup file brought, and the way to its job. */
export function RestoredNote({ restored, jobs }: RestoredNoteProps) {
  const name = jobs.find(({ id }) => id === restored.jobId)?.name;
  return (
    <section role="status" aria-label="Restored">
      <p>
        <strong>{name === undefined ? 'Restored' : `“${name}” is restored`}.</strong>{' '}
        {restoredWords(restored)}
      </p>
      <ButtonLink kind="main" href={hrefOf({ at: 'job', job: restored.jobId, phase: 'record', hole: null })}>
        Open it
      </ButtonLink>
    </section>
  );
}
