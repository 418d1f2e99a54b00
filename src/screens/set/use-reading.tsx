import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Body } from '../../job/entry-schema.ts';
import { describeEntry } from '../../job/words.ts';
import { useJobBook } from '../job-book.ts';
import { NotSaved } from '../not-saved.tsx';
import { useLog } from '../use-log.ts';

export interface Reading {
  /** Logs it, and closes the flow once it is on disk. */
  save(body: Body): Promise<void>;
  /** To stand on the screen instead of the flow while what was read is not saved; else null. */
  readonly notSaved: VNode | null;
}

/** Logs one reading; until it is on disk it stays on the screen, with the reason and the way to try again. */
export function useReading(onClose: () => void): Reading {
  const { situation } = useJobBook();
  const { failed, log } = useLog();
  const [unsaved, setUnsaved] = useState<Body | null>(null);
  const save = async (body: Body) => {
    setUnsaved(body);
    if (await log(body)) onClose();
  };
  const notSaved =
    failed && unsaved ? (
      <NotSaved
        what={describeEntry({ body: unsaved }, situation.plan)}
        onAgain={() => void save(unsaved)}
        onBack={() => setUnsaved(null)}
      />
    ) : null;
  return { save, notSaved };
}
