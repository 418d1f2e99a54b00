import { registerSW } from 'virtual:pwa-register';
import { render } from 'preact';
import { App } from './screens/app.tsx';
import { watchOffline } from './screens/offline.ts';
import { type Services, ServicesContext } from './screens/services.ts';
import { FieldBook } from './store/field-book.ts';
import { askToPersist, storageState } from './store/self-test.ts';
import { guardPresses } from './ui/press-guard.ts';
import './ui/ui.css';

const root = document.getElementById('app');
if (!root) throw new Error('The page has no element with the id "app".');
const services: Services = {
  book: new FieldBook(),
  offline: watchOffline(registerSW, globalThis.caches),
  storage: (ask) => (ask ? askToPersist() : storageState()),
};
guardPresses(document);
root.replaceChildren();
render(
  <ServicesContext.Provider value={services}>
    <App />
  </ServicesContext.Provider>,
  root,
);
