// `npm run cold-start`: milliseconds from opening the installed app to its being usable, without signal and with the
// processor slowed. Each run starts a new browser on the same phone's storage, so that nothing is left in memory.
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

const profile = mkdtempSync(join(tmpdir(), 'swingtape-cold-'));
const open = () => chromium.launchPersistentContext(profile, { ...launchOptions(), ...phone() });

/** Installs the app and gives it the example job, as a person would the evening before. Returns where that led. */
async function install(url: string): Promise<string> {
  const context = await open();
  const page = await context.newPage();
  await page.goto(url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  const opened = await openExample(page);
  if (!opened) console.log('No example job on the first screen: the empty app is measured.');
  const fragment = new URL(page.url()).hash;
  await context.close();
  return url + fragment;
}

/**
 * Runs in the page from its first moment. Usable: something can be tapped, and a frame that shows it is on the glass.
 * As text, since what the compiler adds to functions does not exist in the page.
 */
const NOTE_USABLE = `
  const look = () => {
    const usable = document.querySelector('#app :is(button, a[href], input, summary)');
    if (!usable) requestAnimationFrame(look);
    else requestAnimationFrame(() => setTimeout(() => { window.usableAfterMs = performance.now(); }));
  };
  requestAnimationFrame(look);
`;

async function coldStart(address: string): Promise<number> {
  const context = await open();
  await context.setOffline(true);
  await context.addInitScript(NOTE_USABLE);
  const page = await context.newPage();
  const debug = await context.newCDPSession(page);
  // The browser's own start is not the app's.
  await page.waitForTimeout(BROWSER_SETTLES_MS);
  await debug.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await page.goto(address);
  const usable = await page.waitForFunction('window.usableAfterMs');
  const ms = Number(await usable.jsonValue());
  await context.close();
  return ms;
}

const server = await serve(builtApp());
try {
  const address = await install(server.url);
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) times.push(Math.round(await coldStart(address)));
  times.sort((p, q) => p - q);
  const median = times[Math.floor(RUNS / 2)];
  console.log(
    `${times.join(' ')} ms, sorted; ${(loadavg()[0] ?? 0).toFixed(1)} programs wanted the ${availableParallelism()} processors`,
  );
  console.log(
    `${median} ms from a cold start to usable (median), processor slowed ${SLOWED}×; the bound is ${BOUND_MS} ms`,
  );
} finally {
  await server.close();
  rmSync(profile, { recursive: true, force: true });
}
