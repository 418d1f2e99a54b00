import { useRef } from 'preact/hooks';
import type { Plan } from '../../job/plan-schema.ts';
import { useJobBook } from '../job-book.ts';
import { samePlan } from './plan-edits.ts';

export type ChangePlan = (edit: (plan: Plan) => Plan) => void;

/**
 * Writes each change of the plan as one `plan` entry. Leaving a field by tapping another makes two changes before the
 * first is on disk: each is made to the plan as the one before it leaves it, and they are written one after the other.
 */
export function usePlanEdits(): ChangePlan {
  const { situation, append } = useJobBook();
  const stands = useRef(situation.plan);
  const latest = useRef(situation.plan);
  const waiting = useRef(0);
  const written = useRef<Promise<unknown>>(Promise.resolve());
  stands.current = situation.plan;
  if (waiting.current === 0) latest.current = situation.plan;

  return (edit) => {
    const before = latest.current;
    if (!before) return;
    const plan = edit(before);
    if (samePlan(before, plan)) return;
    latest.current = plan;
    waiting.current += 1;
    const write = async () => {
      let onDisk = false;
      try {
        onDisk = (await append({ kind: 'plan', plan })) !== null;
      } finally {
        waiting.current -= 1;
        // Not on disk: the next change starts from what is. What was typed still stands in its field.
        if (!onDisk && waiting.current === 0) latest.current = stands.current;
      }
    };
    // After a fault too: the browser has told the console of it, and the next change must not wait for ever.
    written.current = written.current.then(write, write);
  };
}
