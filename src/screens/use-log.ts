import { useRef, useState } from 'preact/hooks';
import type { Body } from '../job/entry-schema.ts';
import { useJobBook } from './job-book.ts';

export interface Log {
  /** The last try was not saved; what was entered must stay on the screen. */
  readonly failed: boolean;
  /** Resolves to true once the entry is on disk. A call while another is under way does nothing and is false. */
  log(body: Body): Promise<boolean>;
}

/** Writes one entry at a time, so that an impatient second tap during a slow write logs nothing twice. */
export function useLog(): Log {
  const { append } = useJobBook();
  const [failed, setFailed] = useState(false);
  const busy = useRef(false);
  const log = async (body: Body) => {
    if (busy.current) return false;
    busy.current = true;
    try {
      const entry = await append(body);
      setFailed(entry === null);
      return entry !== null;
    } finally {
      busy.current = false;
    }
  };
  return { failed, log };
}
