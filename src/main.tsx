import { registerSW } from 'virtual:pwa-register';
import { render } from 'preact';
import { watchOffline } from './screens/offline.ts';

const root = document.getElementById('app');
if (!root) throw new Error('The page has no element with the id "app".');
watchOffline(registerSW, globalThis.caches);
root.replaceChildren();
render(<h1>Swingtape</h1>, root);
