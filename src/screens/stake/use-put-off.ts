import { useState } from 'preact/hooks';
import { useJobBook } from '../job-book.ts';

/** Unsure stakes that the user went past on this page, by job: it lasts from hole to hole, each of which starts its screen afresh. */
const putOffOf = new Map<string, ReadonlySet<string>>();
const NONE: ReadonlySet<string> = new Set();

/** Keys of the unsure stakes that wait for later, as `unsureKey` makes them, and the way to add one. */
export function usePutOff(): readonly [ReadonlySet<string>, (key: string) => void] {
  const { jobId } = useJobBook();
  const [, redraw] = useState(0);
  const putOff = (key: string) => {
    putOffOf.set(jobId, new Set([...(putOffOf.get(jobId) ?? NONE), key]));
    redraw((count) => count + 1);
  };
  return [putOffOf.get(jobId) ?? NONE, putOff];
}
