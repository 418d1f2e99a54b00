import type { ComponentType } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import { Frame } from '../ui/frame.tsx';
import { Problem } from '../ui/problem.tsx';
import type { FirstJob } from './first-job.ts';
import { JobBookContext } from './job-book.ts';
import { JobFrame } from './job-frame.tsx';
import { lazily } from './lazily.tsx';

import type { PhaseProps } from './phase-props.ts';
import { PHASE_SCREENS } from './phase-screens.ts';
import { hrefOf, type Phase, type Route } from './route.ts';
import { TapeInHandScope } from './tape-in-hand.tsx';
import { useJob } from './use-job.ts';

/** The frame is there before the phase is, so that nothing jumps. */
const phase = (name: Phase) =>
  lazily(PHASE_SCREENS[name], () => (
    <JobFrame phase={name}>
      <p>One moment…</p>
    </JobFrame>
  ));

const SCREENS: Record<Phase, ComponentType<PhaseProps>> = {
  plan: phase('plan'),
  stake: phase('stake'),
  dig: phase('dig'),
  set: phase('set'),
  pour: phase('pour'),
  record: phase('record'),
};

export interface JobScreenProps {
  readonly route: Extract<Route, { at: 'job' }>;
  /** The job as it was read when the app started; null where it is still to be read. */
  readonly first: FirstJob | null;
}

/** One job, opened from the disk, at the phase in the address. */
export function JobScreen({ route, first }: JobScreenProps) {
  const job = useJob(route.job, first);
  // Another phase or hole begins at its head, however far the last one was scrolled.
  useLayoutEffect(() => scrollTo(0, 0), [route.phase, route.hole]);
  if (job.at !== 'open') {
    return (
      <Frame name="Swingtape" jobsHref={hrefOf({ at: 'home' })}>
        {job.at === 'loading' ? <p>Opening the job…</p> : <Problem text={job.text} />}
      </Frame>
    );
  }
  const Screen = SCREENS[route.phase];
  return (
    <JobBookContext.Provider value={job.book}>
      {/* A change of phase or hole starts its screen afresh: nothing half-entered is carried over. */}
      <TapeInHandScope>
        <Screen key={`${route.phase}/${route.hole ?? ''}`} hole={route.hole} />
      </TapeInHandScope>
    </JobBookContext.Provider>
  );
}
