// `npm start`: installs what is missing, builds what is stale, serves the app and says where.
import { buildApp, DIST, installPackages, main } from './ready.mjs';
import { serve } from './serve.mjs';

const FIRST_PORT = 4173;

await main(async () => {
  installPackages();
  buildApp();
  const { url } = await serve(DIST, { port: FIRST_PORT });
  console.log(`\nSwingtape is at ${url}\nPress Ctrl-C to stop.`);
});
