import { type Route, readRoute } from './route.ts';

/**
 * Remembers which screen was open, for the next cold start. It is a convenience and no data: where the browser refuses
 * this small store (a private window, cookies forbidden), the app simply starts on the page of jobs.
 */
const KEY = 'swingtape.place';

export function keepPlace(fragment: string): void {
  withStorage((storage) => storage.setItem(KEY, fragment));
}

/** Where the app starts: the address's fragment; without one, where the user was last. */
export const startRoute = (): Route => readRoute(location.hash || lastPlace());

/** The fragment kept last, or an empty one. */
export const lastPlace = (): string => withStorage((storage) => storage.getItem(KEY)) ?? '';

function withStorage<T>(work: (storage: Storage) => T): T | null {
  try {
    return work(localStorage);
  } catch (error) {
    // Refused or full: SecurityError or QuotaExceededError, both of them DOMExceptions.
    if (error instanceof DOMException) return null;
    throw error;
  }
}
