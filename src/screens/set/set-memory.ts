import { useState } from 'preact/hooks';
import { ofKind } from '../../job/log.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { useJobBook } from '../job-book.ts';
import { standingSetup } from './level-step.ts';
import type { Part, SetChoices } from './step.ts';

/**
 * What was chosen on this page and is no entry of the log, by job: it lasts from hole to hole, each of which starts its
 * screen afresh.
 */
const setups = new Map<string, string>();
const leftParts = new Set<string>();

const PARTS: readonly Part[] = ['place', 'plumb', 'top'];

export interface SetMemory extends SetChoices {
  /** The level was moved: what is read next hangs on another set-up. */
  onNewSetup(setup: string): void;
  /** This part of the post stays as it is, for as long as it stands as it does. */
  onLeave(hole: string, part: Part): void;
}

export function useSetMemory(view: JobView): SetMemory {
  const { jobId } = useJobBook();
  const [, redraw] = useState(0);
  const keyOf = (hole: string, part: Part) => [jobId, hole, view.book.standAt(postOf(hole)), part].join('/');
  const changed = () => redraw((count) => count + 1);
  return {
    setup: setupNow(view, setups.get(jobId)),
    left: (hole) => new Set(PARTS.filter((part) => leftParts.has(keyOf(hole, part)))),
    onNewSetup: (setup) => {
      setups.set(jobId, setup);
      changed();
    },
    onLeave: (hole, part) => {
      leftParts.add(keyOf(hole, part));
      changed();
    },
  };
}

/** The set-up that was begun on this page counts until the log knows it; from then on the log says where the level stands. */
function setupNow(view: JobView, begun: string | undefined): string {
  const logged = begun !== undefined && ofKind(view.entries, 'rod').some(({ body }) => body.setup === begun);
  return begun === undefined || logged ? standingSetup(view, Date.now()) : begun;
}
