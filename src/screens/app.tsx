import { useEffect, useState } from 'preact/hooks';
import { Frame } from '../ui/frame.tsx';
import { HomeScreen } from './home/home-screen.tsx';
import { keepPlace, lastPlace } from './last-place.ts';
import { lazily } from './lazily.tsx';
import { hrefOf, type Route, readRoute } from './route.ts';

const JobScreen = lazily(
  async () => (await import('./job-screen.tsx')).JobScreen,
  () => (
    <Frame name="Swingtape" jobsHref={hrefOf({ at: 'home' })}>
      <p>Opening the job…</p>
    </Frame>
  ),
);

export function App() {
  const route = useRoute();
  return route.at === 'home' ? <HomeScreen /> : <JobScreen key={route.job} route={route} />;
}

/** The address's fragment; without one, where the user was last, as after the phone threw the app out of memory. */
function useRoute(): Route {
  const [route, setRoute] = useState(() => readRoute(location.hash || lastPlace()));
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
