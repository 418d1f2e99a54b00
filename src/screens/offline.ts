import type { RegisterSWOptions } from 'vite-plugin-pwa/types';

/** Name of the file in which the build lists the cache's keys; it lies in the cache itself. */
export const PRECACHE_LIST = 'precached.json';

/** What a person needs to know of the app's copy on this phone. */
export interface Offline {
  /** Every file of the app was found in the cache, so that it starts without signal. Checked, never assumed. */
  readonly ready: boolean;
  /** A newer version is here and waits to be asked for. */
  readonly updateReady: boolean;
  /** Why the app cannot be kept on this phone; null while nothing is known against it. */
  readonly trouble: string | null;
}

export interface OfflineWatch {
  /** The same object until something changes. */
  readonly state: () => Offline;
  /** Calls back at every change; returns the function that ends it. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Starts the newer version; the page reloads by itself once it has taken over. */
  readonly applyUpdate: () => Promise<void>;
}

/** The part of `CacheStorage` that is used here; a page that came over plain http from elsewhere has none. */
export type Caches = Pick<CacheStorage, 'keys' | 'open'>;

const NOT_SECURE =
  'The app cannot be kept on this phone from this address: open it at one that begins with https.';

/** The function `registerSW` of `virtual:pwa-register`, handed in so that this module runs without a build. */
export type Register = (options: RegisterSWOptions) => () => Promise<void>;

/** Registers the service worker and keeps watch over it. An update is offered, never started unasked. */
export function watchOffline(register: Register, store: Caches | undefined): OfflineWatch {
  let state: Offline = { ready: false, updateReady: false, trouble: store ? null : NOT_SECURE };
  const listeners = new Set<() => void>();
  const change = (part: Partial<Offline>) => {
    state = { ...state, ...part };
    for (const listener of listeners) listener();
  };
  const trouble = (error: unknown) =>
    change({ trouble: `The app could not be kept on this phone: ${reasonOf(error)}.` });
  const check = () => {
    if (store) precacheComplete(store).then((ready) => change({ ready }), trouble);
  };
  const applyUpdate = register({
    onOfflineReady: check,
    onNeedRefresh: () => change({ updateReady: true }),
    onRegisterError: trouble,
    onRegisteredSW: (_url, registration) => {
      if (registration?.active) check();
      if (registration) lookForUpdates(registration, document);
    },
  });
  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    applyUpdate: () => applyUpdate(),
  };
}

/** Whether every file that the build listed is in the cache, under its exact key. */
export async function precacheComplete(store: Caches): Promise<boolean> {
  for (const name of await store.keys()) {
    const cache = await store.open(name);
    const there = await cache.keys();
    const list = there.find(({ url }) => new URL(url).pathname.endsWith(`/${PRECACHE_LIST}`));
    if (!list) continue;
    const response = await cache.match(list);
    const wanted: unknown = await response?.json();
    if (!Array.isArray(wanted) || wanted.length === 0) return false;
    const urls = new Set(there.map(({ url }) => url));
    return wanted.every((key) => typeof key === 'string' && urls.has(new URL(key, list.url).href));
  }
  return false;
}

/** An app left open never looks for a newer version by itself: so it looks each time it comes to the front. */
function lookForUpdates(registration: ServiceWorkerRegistration, page: Document): void {
  page.addEventListener('visibilitychange', () => {
    if (page.visibilityState !== 'visible' || !navigator.onLine) return;
    registration.update().catch((error: unknown) => {
      // No signal, or a host that does not answer: the version on the phone goes on working.
      if (!(error instanceof TypeError)) throw error;
    });
  });
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
