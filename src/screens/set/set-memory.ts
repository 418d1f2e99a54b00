import { useState } from 'preact/hooks';
import { type JobView, postOf } from '../../judge/view.ts';
import { useLevelSetup } from '../heights/level-setup.ts';
import { useJobBook } from '../job-book.ts';
import type { Part, SetChoices } from './step.ts';

/**
 * What was chosen on this page and is no entry of the log, by job: it lasts from hole to hole, each of which starts its
 * screen afresh.
 */
const leftParts = new Set<string>();

const PARTS: readonly Part[] = ['place', 'plumb', 'top'];

export interface SetMemory extends SetChoices {
  /** The level was moved: what is read next hangs on another set-up. */
  onNewSetup(): void;
  /** This part of the post stays as it is, for as long as it stands as it does. */
  onLeave(hole: string, part: Part): void;
}

export function useSetMemory(view: JobView): SetMemory {
  const { jobId } = useJobBook();
  const { setup, onNewSetup } = useLevelSetup(view);
  const [, redraw] = useState(0);
  const keyOf = (hole: string, part: Part) => [jobId, hole, view.book.standAt(postOf(hole)), part].join('/');
  const changed = () => redraw((count) => count + 1);
  return {
    setup,
    left: (hole) => new Set(PARTS.filter((part) => leftParts.has(keyOf(hole, part)))),
    onNewSetup,
    onLeave: (hole, part) => {
      leftParts.add(keyOf(hole, part));
      changed();
    },
  };
}
