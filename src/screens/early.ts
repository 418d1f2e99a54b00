import { startRoute } from './last-place.ts';
import { JOB_SCREEN } from './parts.ts';
import { PHASE_SCREENS } from './phase-screens.ts';
import { hrefOf } from './route.ts';

// Imported before all else, so that the files of the first screen are on their way while the rest of this one still starts.
// A file that does not come is asked for again by the screen that wants it, and there its trouble is told.
const route = startRoute();
// From the first moment the address says where the app is.
if (location.hash === '') history.replaceState(null, '', hrefOf(route));
if (route.at === 'job') {
  // Named by one module of it: the file that the phases share would else be found only when one of them has come.
  const shared = import('../judge/assess.ts');
  void Promise.allSettled([JOB_SCREEN.load(), PHASE_SCREENS[route.phase].load(), shared]);
}
