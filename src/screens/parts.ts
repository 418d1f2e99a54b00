import type { FieldBook } from '../store/field-book.ts';
import type { KeptResults } from '../store/kept-results.ts';
import type { FirstJob } from './first-job.ts';
import type { JobScreenProps } from './job-screen.tsx';
import { type Part, part } from './part.ts';
import { PHASE_SCREENS } from './phase-screens.ts';
import type { Route } from './route.ts';

/** All of a job, in a file of its own. */
export const JOB_SCREEN: Part<JobScreenProps> = part(
  async () => (await import('./job-screen.tsx')).JobScreen,
);

/**
 * Fetches all that the first screen needs at once, where each part by itself would only ask for the next. Never rejects:
 * what did not come is asked for again by the screen that wants it, and there its trouble is told.
 *
 * @returns null where the app starts on the page of jobs, or the log could not be read
 */
export async function fetchFirst(
  route: Route,
  { book, kept }: { readonly book: FieldBook; readonly kept: KeptResults },
): Promise<FirstJob | null> {
  if (route.at === 'home') return null;
  const { job } = route;
  const [log, results] = await Promise.allSettled([
    book.loadLog(job),
    kept.read(job),
    JOB_SCREEN.load(),
    PHASE_SCREENS[route.phase].load(),
  ]);
  if (log.status === 'rejected') return null;
  return { job, log: log.value, kept: results.status === 'fulfilled' ? results.value : null };
}
