import { type Part, part } from './part.ts';
import type { PhaseProps } from './phase-props.ts';
import type { Phase } from './route.ts';

/** Each phase in a file of its own, so that the page of jobs is there at once. */
export const PHASE_SCREENS: Readonly<Record<Phase, Part<PhaseProps>>> = {
  plan: part(async () => (await import('./plan/plan-screen.tsx')).PlanScreen),
  stake: part(async () => (await import('./stake/stake-screen.tsx')).StakeScreen),
  dig: part(async () => (await import('./dig/dig-screen.tsx')).DigScreen),
  set: part(async () => (await import('./set/set-screen.tsx')).SetScreen),
  pour: part(async () => (await import('./pour/pour-screen.tsx')).PourScreen),
  record: part(async () => (await import('./record/record-screen.tsx')).RecordScreen),
};
