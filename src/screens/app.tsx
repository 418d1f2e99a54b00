import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Frame } from '../ui/frame.tsx';
import { Problem } from '../ui/problem.tsx';
import { DigScreen } from './dig/dig-screen.tsx';
import { HomeScreen } from './home/home-screen.tsx';
import { JobBookContext } from './job-book.ts';
import type { PhaseProps } from './phase-props.ts';
import { PlanScreen } from './plan/plan-screen.tsx';
import { PourScreen } from './pour/pour-screen.tsx';
import { RecordScreen } from './record/record-screen.tsx';
import { hrefOf, type Phase, type Route, readRoute } from './route.ts';
import { SetScreen } from './set/set-screen.tsx';
import { StakeScreen } from './stake/stake-screen.tsx';
import { useJob } from './use-job.ts';

const SCREENS: Record<Phase, ComponentType<PhaseProps>> = {
  plan: PlanScreen,
  stake: StakeScreen,
  dig: DigScreen,
  set: SetScreen,
  pour: PourScreen,
  record: RecordScreen,
};

export function App() {
  const route = useRoute();
  return route.at === 'home' ? <HomeScreen /> : <JobScreen key={route.job} route={route} />;
}

function useRoute(): Route {
  const [route, setRoute] = useState(() => readRoute(location.hash));
  useEffect(() => {
    const onChange = () => setRoute(readRoute(location.hash));
    addEventListener('hashchange', onChange);
    return () => removeEventListener('hashchange', onChange);
  }, []);
  return route;
}

function JobScreen({ route }: { readonly route: Extract<Route, { at: 'job' }> }) {
  const job = useJob(route.job);
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
      <Screen key={`${route.phase}/${route.hole ?? ''}`} hole={route.hole} />
    </JobBookContext.Provider>
  );
}
