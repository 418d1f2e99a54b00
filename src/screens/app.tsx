import { useEffect, useState } from 'preact/hooks';
import { Frame } from '../ui/frame.tsx';
import { HomeScreen } from './home/home-screen.tsx';
import { keepPlace, lastPlace } from './last-place.ts';
import { lazily } from './lazily.tsx';
import { type FirstLog, JOB_SCREEN } from './parts.ts';
import { hrefOf, type Route, readRoute } from './route.ts';

const JobScreen = lazily(JOB_SCREEN, () => (
  <Frame name="Swingtape" jobsHref={hrefOf({ at: 'home' })}>
    <p>Opening the job…</p>
  </Frame>
));

/** @param first what was fetched for the route that the app starts with */
export function App({ first }: { readonly first: FirstLog }) {
  const route = useRoute();
  if (route.at === 'home') return <HomeScreen />;
  const log = first?.job === route.job ? first.log : null;
  return <JobScreen key={route.job} route={route} log={log} />;
}

/** The address's fragment; without one, where the user was last, as after the phone threw the app out of memory. */
export const startRoute = (): Route => readRoute(location.hash || lastPlace());

function useRoute(): Route {
  const [route, setRoute] = useState(startRoute);
  useEffect(() => {
    if (location.hash === '') history.replaceState(null, '', hrefOf(route));
    const onChange = () => {
      const next = readRoute(location.hash);
      keepPlace(hrefOf(next));
      setRoute(next);
    };
    addEventListener('hashchange', onChange);
    return () => removeEventListener('hashchange', onChange);
  }, [route]);
  return route;
}
