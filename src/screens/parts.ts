import type { Entry } from '../job/entry-schema.ts';
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

/** The log of the job that the app starts with; null where it starts elsewhere, or could not be read. */
export type FirstLog = { readonly job: string; readonly log: readonly Entry[] } | null;

/**
 * Fetches all that the first screen needs at once, where each part by itself would only ask for the next. Never rejects:
 * what did not come is asked for again by the screen that wants it, and there its trouble is told.
 */
export async function fetchFirst(
  route: Route,
  loadLog: (job: string) => Promise<readonly Entry[]>,
): Promise<FirstLog> {
  if (route.at === 'home') return null;
  const [log] = await Promise.allSettled([
    loadLog(route.job),
    JOB_SCREEN.load(),
    PHASE_SCREENS[route.phase].load(),
  ]);
  return log.status === 'fulfilled' ? { job: route.job, log: log.value } : null;
}
