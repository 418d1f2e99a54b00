import { useRef, useState } from 'preact/hooks';
import { StoreError } from '../../store/errors.ts';
import type { Restored } from '../../store/restore.ts';
import { ok, type Result, refuse, type Units } from '../../units/index.ts';
import { hrefOf, type Phase } from '../route.ts';
import { useServices } from '../services.ts';

/** Where the example lies beside the page; it is kept on the phone with the rest of the app. */
const EXAMPLE_FILE = 'example-job.swingtape.txt';

export interface HomeActions {
  /** Why the last action came to nothing, in a sentence; null when it did not. */
  readonly problem: string | null;
  /** What the last backup file brought; null when none was restored just now. */
  readonly restored: Restored | null;
  create(name: string, units: Units): void;
  openExample(): void;
  restore(file: File): void;
}

/**
 * The ways into a job, one at a time: a second tap while one is under way does nothing. Each ends by going there, by saying
 * what was restored, or by a sentence.
 *
 * @param onChange called when the jobs on this phone are not what they were
 */
export function useHomeActions(onChange: () => Promise<void>): HomeActions {
  const { book } = useServices();
  const [problem, setProblem] = useState<string | null>(null);
  const [restored, setRestored] = useState<Restored | null>(null);
  const busy = useRef(false);
  const attempt = async (work: () => Promise<string | null>) => {
    if (busy.current) return;
    busy.current = true;
    setRestored(null);
    try {
      setProblem(await work());
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      setProblem(error.message);
    } finally {
      busy.current = false;
    }
  };
  const bringIn = async (read: () => Promise<Result<string>>): Promise<Result<Restored>> => {
    const text = await read();
    if (!text.ok) return text;
    const { readBackup } = await import('../../store/read-backup.ts');
    const backup = readBackup(text.value);
    return backup.ok ? book.restore(backup.value) : backup;
  };
  return {
    problem,
    restored,
    create: (name, units) =>
      void attempt(async () => {
        const { defaultPlan } = await import('../../plan/index.ts');
        const job = await book.createJob([{ kind: 'plan', plan: { ...defaultPlan(units), name } }]);
        goTo(job.id, 'plan');
        return null;
      }),
    openExample: () =>
      void attempt(async () => {
        const example = await bringIn(readExample);
        if (!example.ok) return example.problem.text;
        goTo(example.value.jobId, 'set');
        return null;
      }),
    restore: (file) =>
      void attempt(async () => {
        const job = await bringIn(() => readFile(file));
        if (!job.ok) return job.problem.text;
        await onChange();
        setRestored(job.value);
        return null;
      }),
  };
}

const NO_EXAMPLE = 'The example job is not on this phone: open the app once with a signal.';

async function readExample(): Promise<Result<string>> {
  try {
    const response = await fetch(EXAMPLE_FILE);
    return response.ok ? ok(await response.text()) : refuse('Example', NO_EXAMPLE);
  } catch (error) {
    // No signal, and not in the phone's cache.
    if (error instanceof TypeError) return refuse('Example', NO_EXAMPLE);
    throw error;
  }
}

/** The text of a file that may be a backup. One too large to be one is refused before it fills the memory. */
async function readFile(file: File): Promise<Result<string>> {
  const { MOST_BACKUP_BYTES } = await import('../../store/read-backup.ts');
  if (file.size > MOST_BACKUP_BYTES)
    return refuse(
      'Backup',
      `Backup: “${file.name}” is larger than ${MOST_BACKUP_BYTES / BYTES_PER_MB} MB, and no job is; choose the right file.`,
    );
  try {
    return ok(await file.text());
  } catch (error) {
    // Such as a file in a cloud that cannot be reached from here.
    if (!(error instanceof DOMException)) throw error;
    return refuse(
      'Backup',
      `Backup: “${file.name}” could not be read from where it lies; copy it onto this phone, then choose it again.`,
    );
  }
}
const BYTES_PER_MB = 1024 * 1024;

function goTo(job: string, phase: Phase): void {
  location.hash = hrefOf({ at: 'job', job, phase, hole: null });
}
