import { useRef, useState } from 'preact/hooks';
import type { Plan } from '../../job/plan-schema.ts';
import { useJobBook } from '../job-book.ts';
import { samePlan } from './plan-edits.ts';

export type ChangePlan = (edit: (plan: Plan) => Plan) => void;

export interface PlanEdits {
  /** The plan as the fields show it: with the changes that are on their way to the disk. */
  readonly plan: Plan;
  readonly change: ChangePlan;
  /** Tries to write the changes that did not reach the disk; null while there are none. */
  readonly saveAgain: (() => void) | null;
}

/**
 * Writes each change of the plan as one `plan` entry. Leaving a field by tapping another makes two changes before the
 * first is on disk: each is made to the plan as the one before it leaves it, and they are written one after the other.
 * A change that could not be written stays in the fields.
 *
 * @param stands the plan that is on disk
 */
export function usePlanEdits(stands: Plan): PlanEdits {
  const { save, append } = useJobBook();
  const [pending, setPending] = useState<Plan | null>(null);
  /** As `pending`, without waiting for the next rendering. */
  const latest = useRef<Plan | null>(null);
  const waiting = useRef(0);
  const written = useRef<Promise<unknown>>(Promise.resolve());

  const keep = (plan: Plan | null) => {
    latest.current = plan;
    setPending(plan);
  };
  const write = (plan: Plan) => {
    keep(plan);
    waiting.current += 1;
    const turn = async () => {
      let onDisk = false;
      try {
        onDisk = (await append({ kind: 'plan', plan })) !== null;
      } finally {
        waiting.current -= 1;
        if (onDisk && waiting.current === 0) keep(null);
      }
    };
    // After a fault too: the browser has told the console of it, and the next change must not wait for ever.
    written.current = written.current.then(turn, turn);
  };
  const change: ChangePlan = (edit) => {
    const before = latest.current ?? stands;
    const plan = edit(before);
    if (!samePlan(before, plan)) write(plan);
  };
  const saveAgain = pending && save.at === 'failed' ? () => write(latest.current ?? pending) : null;
  return { plan: pending ?? stands, change, saveAgain };
}
