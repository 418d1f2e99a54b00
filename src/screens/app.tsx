import { useEffect, useRef, useState } from 'preact/hooks';
import { Frame } from '../ui/frame.tsx';
import type { FirstJob } from './first-job.ts';
import { HomeScreen } from './home/home-screen.tsx';
import { keepPlace, startRoute } from './last-place.ts';
import { lazily } from './lazily.tsx';
import { JOB_SCREEN } from './parts.ts';
import { hrefOf, type Route, readRoute } from './route.ts';

const JobScreen = lazily(JOB_SCREEN, () => (
  <Frame name="Swingtape" jobsHref={hrefOf({ at: 'home' })}>
    <p>Opening the job…</p>
  </Frame>
));

/** @param first what was fetched for the route that the app starts with */
export function App({ first }: { readonly first: FirstJob | null }) {
  const route = useRoute();
  const job = route.at === 'job' ? route.job : null;
  // Good for the first showing only: come back to later, the job is read again.
  const unread = useRef(first);
  useEffect(() => {
    if (unread.current?.job !== job) unread.current = null;
  }, [job]);
  if (route.at === 'home') return <HomeScreen />;
  return <JobScreen key={route.job} route={route} first={unread.current} />;
}

function useRoute(): Route {
  const [route, setRoute] = useState(startRoute);
  useEffect(() => {
    const onChange = () => {
      const next = readRoute(location.hash);
      keepPlace(hrefOf(next));
      setRoute(next);
    };
    addEventListener('hashchange', onChange);
    return () => removeEventListener('hashchange', onChange);
  }, []);
  return route;
}
