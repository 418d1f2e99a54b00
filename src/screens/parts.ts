import type { Entry } from '../job/entry-schema.ts';
import type { FieldBook } from '../store/field-book.ts';
import type { Kept, KeptResults } from '../store/kept-results.ts';
import type { JobScreenProps } from './job-screen.tsx';
import { type Part, part } from './part.ts';
import type { PhaseProps } from './phase-props.ts';
import type { Phase, Route } from './route.ts';

/** What is not in the first file, so that the page of jobs is there at once. */
export const JOB_SCREEN: Part<JobScreenProps> = part(
  async () => (await import('./job-screen.tsx')).JobScreen,
);

export const PHASE_SCREENS: Readonly<Record<Phase, Part<PhaseProps>>> = {
  plan: part(async () => (await import('./plan/plan-screen.tsx')).PlanScreen),
  stake: part(async () => (await import('./stake/stake-screen.tsx')).StakeScreen),
  dig: part(async () => (await import('./dig/dig-screen.tsx')).DigScreen),
  set: part(async () => (await import('./set/set-screen.tsx')).SetScreen),
  pour: part(async () => (await import('./pour/pour-screen.tsx')).PourScreen),
  record: part(async () => (await import('./record/record-screen.tsx')).RecordScreen),
};

/** The job that the app starts with, as read from the disk. */
export interface FirstJob {
  readonly job: string;
  readonly log: readonly Entry[];
  readonly kept: Kept | null;
}

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
