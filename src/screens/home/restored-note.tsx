import type { JobRow } from '../../store/db.ts';
import type { Restored } from '../../store/restore.ts';
import { restoredWords } from './backup-words.ts';

export interface RestoredNoteProps {
  readonly restored: Restored;
  readonly jobs: readonly JobRow[];
}

/** What a backup file brought. */
export function RestoredNote({ restored, jobs }: RestoredNoteProps) {
  const name = jobs.find(({ id }) => id === restored.jobId)?.name;
  return (
    <section role="status" aria-label="Restored">
      <p>
        <strong>{name === undefined ? 'Restored' : `“${name}” is restored`}.</strong>{' '}
        {restoredWords(restored)}
      </p>
    </section>
  );
}
