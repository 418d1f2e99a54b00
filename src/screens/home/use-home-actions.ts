import { useState } from 'preact/hooks';
import { StoreError } from '../../store/errors.ts';
import type { Units } from '../../units/index.ts';
import { hrefOf, type Phase } from '../route.ts';
import { useServices } from '../services.ts';

/** Where the example lies beside the page; it is kept on the phone with the rest of the app. */
const EXAMPLE_FILE = 'example-job.swingtape.txt';

export interface HomeActions {
  /** Why the last action came to nothing, in a sentence; null when it did not. */
  readonly problem: string | null;
  create(name: string, units: Units): void;
  openExample(): void;
  restore(file: File): void;
}

/** The ways into a job. Each ends by going there, or by a sentence. */
export function useHomeActions(): HomeActions {
  const { book } = useServices();
  const [problem, setProblem] = useState<string | null>(null);
  const attempt = async (work: () => Promise<string | null>) => {
    try {
      setProblem(await work());
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      setProblem(error.message);
    }
  };
  const bringIn = async (text: string, phase: Phase): Promise<string | null> => {
    const { readBackup } = await import('../../store/read-backup.ts');
    const backup = readBackup(text);
    if (!backup.ok) return backup.problem.text;
    const restored = await book.restore(backup.value);
    if (!restored.ok) return restored.problem.text;
    goTo(restored.value.jobId, phase);
    return null;
  };
  return {
    problem,
    create: (name, units) =>
      void attempt(async () => {
        const { defaultPlan } = await import('../../plan/index.ts');
        const job = await book.createJob([{ kind: 'plan', plan: { ...defaultPlan(units), name } }]);
        goTo(job.id, 'plan');
        return null;
      }),
    openExample: () =>
      void attempt(async () => {
        const response = await fetch(EXAMPLE_FILE);
        if (!response.ok) return 'The example job is not on this phone: open the app once with a signal.';
        return bringIn(await response.text(), 'set');
      }),
    restore: (file) => void attempt(async () => bringIn(await file.text(), 'record')),
  };
}

function goTo(job: string, phase: Phase): void {
  location.hash = hrefOf({ at: 'job', job, phase, hole: null });
}
