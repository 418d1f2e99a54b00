import './screens/early.ts';

import { registerSW } from 'virtual:pwa-register';
import { render } from 'preact';
import { App } from './screens/app.tsx';
import { startRoute } from './screens/last-place.ts';
import { type Register, watchOffline } from './screens/offline.ts';
import { fetchFirst } from './screens/parts.ts';
import { type Services, ServicesContext } from './screens/services.ts';
import { FieldBook } from './store/field-book.ts';
import { KeptResults } from './store/kept-results.ts';
import { askToPersist, storageState } from './store/self-test.ts';
import { beginFirstFrame } from './ui/first-frame.tsx';
import { Notice, NoticeContext } from './ui/notice.tsx';
import { guardPresses } from './ui/press-guard.ts';
import './ui/ui.css';

const page = document.getElementById('app');
if (!page) throw new Error('The page has no element with the id "app".');
guardPresses(document);
void start(page);

/** The page's own words stay until the first screen is whole, so that nothing flickers and no frame is drawn in vain. */
async function start(root: HTMLElement): Promise<void> {
  const notice = new Notice();
  const store = { book: new FieldBook({ onNotice: notice.tell }), kept: new KeptResults() };
  const first = await fetchFirst(startRoute(), store);
  const services: Services = {
    ...store,
    offline: watchOffline(registerWhenIdle, globalThis.caches),
    storage: (ask) => (ask ? askToPersist() : storageState()),
  };
  root.replaceChildren();
  beginFirstFrame();
  render(
    <ServicesContext.Provider value={services}>
      <NoticeContext.Provider value={notice}>
        <App first={first} />
      </NoticeContext.Provider>
    </ServicesContext.Provider>,
    root,
  );
}

/** Registering the service worker takes time that the first frame needs more. */
function registerWhenIdle(options: Parameters<Register>[0]): ReturnType<Register> {
  const registered = new Promise<() => Promise<void>>((resolve) => {
    requestAnimationFrame(() => setTimeout(() => resolve(registerSW(options))));
  });
  return async () => (await registered)();
}
