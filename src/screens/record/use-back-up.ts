import { useEffect, useState } from 'preact/hooks';
import type { JobRow } from '../../store/db.ts';
import { StoreError } from '../../store/errors.ts';
import { useJobBook } from '../job-book.ts';
import { useServices } from '../services.ts';
import { backupFile, handOut, type Outcome } from './back-up.ts';
import { download } from './download.ts';

export interface BackUp {
  /** Null until it is read. */
  readonly job: JobRow | null;
  readonly outcome: Outcome | null;
  readonly problem: string | null;
  /** To be called straight from a tap. */
  readonly start: () => void;
}

/** Backs the open job up to a file, and notes it once the file is out of our hands. */
export function useBackUp(): BackUp {
  const { jobId, log } = useJobBook();
  const { book } = useServices();
  const [job, setJob] = useState<JobRow | null>(null);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const settle = async (work: () => Promise<JobRow>) => {
    try {
      setJob(await work());
      setProblem(null);
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      setProblem(error.message);
    }
  };
  useEffect(() => void settle(() => book.job(jobId)), [book, jobId]);

  const start = () => {
    if (!job) return;
    const file = backupFile(job, log, new Date().toISOString());
    void handOut(file, navigator, download).then(async (out) => {
      setOutcome(out);
      if (out.how !== 'closed') await settle(() => book.noteBackup(jobId, log.length));
    });
  };
  return { job, outcome, problem, start };
}
