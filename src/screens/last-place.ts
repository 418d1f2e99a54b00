import { type Route, readRoute } from './route.ts';
import { withSmallStore } from './small-store.ts';

/**
 * Remembers which screen was open, for the next cold start. It is a convenience and no data: where the browser refuses
 * this small store (a private window, cookies forbidden), the app simply starts on the page of jobs.
 */
const KEY = 'swingtape.place';

export function keepPlace(fragment: string): void {
  withSmallStore((storage) => storage.setItem(KEY, fragment));
}

/** Where the app starts: the address's fragment; without one, where the user was last. */
export const startRoute = (): Route => readRoute(location.hash || lastPlace());

/** The fragment kept last, or an empty one. */
export const lastPlace = (): string => withSmallStore((storage) => storage.getItem(KEY)) ?? '';
