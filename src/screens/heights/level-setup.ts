import { useState } from 'preact/hooks';
import { ofKind } from '../../job/log.ts';
import type { JobView } from '../../judge/view.ts';
import { useJobBook } from '../job-book.ts';

/** A level is taken in for the night: readings of another day hang on another set-up, common practice. Milliseconds. */
const SETUP_HOLDS_MS = 10 * 3600 * 1000;
const FIRST_SETUP = '1';

/** Where the level stands: the set-up of the last rod reading; a new one after a night, or before there is any. */
export function standingSetup(view: JobView, now: number): string {
  const last = ofKind(view.entries, 'rod').at(-1);
  if (!last) return FIRST_SETUP;
  return now - Date.parse(last.at) > SETUP_HOLDS_MS ? nextSetup(view) : last.body.setup;
}

/** A name that no set-up has had. */
export function nextSetup(view: JobView): string {
  const used = ofKind(view.entries, 'rod').map(({ body }) => Number(body.setup));
  return String(Math.max(0, ...used.filter(Number.isInteger)) + 1);
}

/** Set-ups begun on this page that the log does not know yet, by job: they last from hole to hole and phase to phase. */
const begun = new Map<string, string>();

export interface LevelSetup {
  /** Where the level stands. */
  readonly setup: string;
  /** The level was moved: what is read next hangs on another set-up. */
  onNewSetup(): void;
}

export function useLevelSetup(view: JobView): LevelSetup {
  const { jobId } = useJobBook();
  const [, redraw] = useState(0);
  return {
    setup: setupIn(view, jobId),
    onNewSetup: () => {
      begun.set(jobId, nextSetup(view));
      redraw((count) => count + 1);
    },
  };
}

/** Where the level of a job stands. */
export const setupIn = (view: JobView, jobId: string): string => setupNow(view, begun.get(jobId));

/** The set-up that was begun counts until the log knows it; from then on the log says where the level stands. */
function setupNow(view: JobView, started: string | undefined): string {
  const logged =
    started !== undefined && ofKind(view.entries, 'rod').some(({ body }) => body.setup === started);
  return started === undefined || logged ? standingSetup(view, Date.now()) : started;
}
