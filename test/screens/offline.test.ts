// @vitest-environment happy-dom

import type { RegisterSWOptions } from 'vite-plugin-pwa/types';
import { describe, expect, it } from 'vitest';
import { type Caches, PRECACHE_LIST, precacheComplete, watchOffline } from '../../src/screens/offline.ts';

const BASE = 'https://host.example/some/where/';
const LIST = `${BASE}${PRECACHE_LIST}?__WB_REVISION__=1`;

/** A browser's cache storage with these entries in each named cache, as far as the app uses one. */
function cachesOf(contents: Record<string, Record<string, string>>): Caches {
  const open = async (name: string) => {
    const entries = contents[name] ?? {};
    return {
      keys: async () => Object.keys(entries).map((url) => new Request(url)),
      match: async (request: Request) => new Response(entries[request.url]),
    } as unknown as Cache;
  };
  return { keys: async () => Object.keys(contents), open };
}

const complete = {
  other: { [`${BASE}old.js`]: '' },
  precache: {
    [LIST]: JSON.stringify(['index.html?__WB_REVISION__=7', 'assets/index-1.js']),
    [`${BASE}index.html?__WB_REVISION__=7`]: '',
    [`${BASE}assets/index-1.js`]: '',
  },
};

describe('precacheComplete', () => {
  it('is true when every listed file is there', async () => {
    expect(await precacheComplete(cachesOf(complete))).toBe(true);
  });

  it.each([
    ['nothing was cached', {}],
    ['the list is not there', { precache: { [`${BASE}index.html`]: '' } }],
    ['a file is missing', { precache: { [LIST]: '["assets/index-1.js"]' } }],
    [
      'a file is there in another version only',
      {
        precache: { [LIST]: '["index.html?__WB_REVISION__=7"]', [`${BASE}index.html?__WB_REVISION__=6`]: '' },
      },
    ],
    ['the list is empty', { precache: { [LIST]: '[]' } }],
    ['the list is something else', { precache: { [LIST]: '{"index.html":true}' } }],
  ])('is false when %s', async (_case, contents) => {
    expect(await precacheComplete(cachesOf(contents))).toBe(false);
  });
});

function watched(store: Caches | undefined) {
  let options: RegisterSWOptions = {};
  let applied = 0;
  const watch = watchOffline((given) => {
    options = given;
    return async () => {
      applied += 1;
    };
  }, store);
  return { watch, options, applied: () => applied };
}

/** Resolves at the next change. */
const change = (watch: ReturnType<typeof watchOffline>) =>
  new Promise<void>((resolve) => {
    const end = watch.subscribe(() => {
      end();
      resolve();
    });
  });

const registration = (active: boolean) =>
  ({ active: active ? {} : null }) as unknown as ServiceWorkerRegistration;

describe('watchOffline', () => {
  it('promises nothing at first', () => {
    expect(watched(cachesOf(complete)).watch.state()).toEqual({
      ready: false,
      updateReady: false,
      trouble: null,
    });
  });

  it.each([
    ['after the first installation', (o: RegisterSWOptions) => o.onOfflineReady?.()],
    ['at a later start', (o: RegisterSWOptions) => o.onRegisteredSW?.('sw.js', registration(true))],
  ])('is ready once the files were found, %s', async (_when, happens) => {
    const { watch, options } = watched(cachesOf(complete));
    const changed = change(watch);
    happens(options);
    expect(watch.state().ready).toBe(false);
    await changed;
    expect(watch.state().ready).toBe(true);
  });

  it('is not ready when the worker says so but a file is missing', async () => {
    const { watch, options } = watched(cachesOf({ precache: { [LIST]: '["assets/index-1.js"]' } }));
    const changed = change(watch);
    options.onOfflineReady?.();
    await changed;
    expect(watch.state().ready).toBe(false);
  });

  it('offers a newer version and starts it only when asked', async () => {
    const { watch, options, applied } = watched(cachesOf(complete));
    options.onNeedRefresh?.();
    expect(watch.state().updateReady).toBe(true);
    expect(applied()).toBe(0);
    await watch.applyUpdate();
    expect(applied()).toBe(1);
  });

  it('says why when the app cannot be kept', () => {
    const { watch, options } = watched(cachesOf(complete));
    options.onRegisterError?.(new Error('storage is full'));
    expect(watch.state().trouble).toBe('The app could not be kept on this phone: storage is full.');
    expect(watched(undefined).watch.state().trouble).toContain('https');
  });
});
