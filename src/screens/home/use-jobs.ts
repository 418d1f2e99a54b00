import { useCallback, useEffect, useState } from 'preact/hooks';
import type { JobRow } from '../../store/db.ts';
import { StoreError } from '../../store/errors.ts';
import { useServices } from '../services.ts';

export interface Jobs {
  /** Null until they are read, so that a phone with jobs never looks like one without, even for a moment. */
  readonly jobs: readonly JobRow[] | null;
  readonly trouble: string | null;
  reload(): Promise<void>;
}

/** The jobs on this phone, the one last worked on first; read again when the page comes back to the front. */
export function useJobs(): Jobs {
  const { book } = useServices();
  const [jobs, setJobs] = useState<readonly JobRow[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const reload = useCallback(async () => {
    try {
      setJobs(await book.listJobs());
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      setTrouble(error.message);
    }
  }, [book]);
  useEffect(() => {
    void reload();
    const onVisible = () => {
      if (document.visibilityState === 'visible') void reload();
    };
    document.addEventListener('visibilitychange', onVisible);
    return () => document.removeEventListener('visibilitychange', onVisible);
  }, [reload]);
  return { jobs, trouble, reload };
}
