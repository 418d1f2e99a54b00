// `npm run cold-start`: milliseconds from opening the installed app to the example job's verdicts being on the screen,
// without signal and with the page's processor slowed. Each run starts a new browser on the same phone's storage, so that
// nothing is left in memory; the app opens by itself where its user was last.
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serve } from '../../src/desk/serve.mjs';
import { builtApp, launchOptions, phone } from '../e2e/browser.ts';
import { openExample } from '../tools/example.ts';

const RUNS = 7;
/** Slows the page about as much as a cheap phone is slower than a desk machine. */
const SLOWED = 4;
const BOUND_MS = 1000;
const BROWSER_SETTLES_MS = 1500;
const USED_MS = 6000;

const profile = mkdtempSync(join(tmpdir(), 'swingtape-cold-'));
const open = () => chromium.launchPersistentContext(profile, { ...launchOptions(), ...phone() });

/** Installs the app and opens the example job, as a person would the evening before, and looks at it once more. */
async function install(url: string): Promise<void> {
  const context = await open();
  const page = await context.newPage();
  await page.goto(url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  if (!(await openExample(page))) throw new Error('The first screen offers no example job.');
  await page.locator('.judgements').waitFor();
  // Nobody closes a job within seconds of opening it: by then the app has kept what it worked out.
  await page.waitForTimeout(USED_MS);
  // A browser keeps scripts compiled once it has run them twice.
  await page.reload();
  await page.locator('.judgements').waitFor();
  await page.waitForTimeout(USED_MS);
  await context.close();
}

/**
 * Runs in the page from its first moment: notes when the verdicts on a post are there and a frame that shows them is on the
 * glass. As text, since what the compiler adds to functions does not exist in the page.
 */
const NOTE_VERDICTS = `
  const look = () => {
    if (!document.querySelector('.judgements .verdict')) requestAnimationFrame(look);
    else requestAnimationFrame(() => setTimeout(() => window.verdictsShown(String(performance.now()))));
  };
  requestAnimationFrame(look);
`;

async function coldStart(url: string): Promise<number> {
  const context = await open();
  await context.setOffline(true);
  await context.addInitScript(NOTE_VERDICTS);
  const page = await context.newPage();
  const debug = await context.newCDPSession(page);
  // The browser's own start is not the app's.
  await page.waitForTimeout(BROWSER_SETTLES_MS);
  await debug.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  // The page calls when it is done: asking it would put a large script of the browser driver's into it meanwhile.
  await debug.send('Runtime.enable');
  await debug.send('Runtime.addBinding', { name: 'verdictsShown' });
  const shown = new Promise<number>((resolve) => {
    debug.on('Runtime.bindingCalled', ({ name, payload }) => {
      if (name === 'verdictsShown') resolve(Number(payload));
    });
  });
  await page.goto(url, { waitUntil: 'commit' });
  const ms = await shown;
  await context.close();
  return ms;
}

const server = await serve(builtApp());
try {
  await install(server.url);
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) times.push(Math.round(await coldStart(server.url)));
  times.sort((p, q) => p - q);
  const median = times[Math.floor(RUNS / 2)];
  console.log(
    `${times.join(' ')} ms, sorted; ${(loadavg()[0] ?? 0).toFixed(1)} programs wanted the ${availableParallelism()} processors`,
  );
  console.log(
    `${median} ms from a cold start to the job’s verdicts (median), processor slowed ${SLOWED}×; the bound is ${BOUND_MS} ms`,
  );
} finally {
  await server.close();
  rmSync(profile, { recursive: true, force: true });
}
