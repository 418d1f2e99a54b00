import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContextOptions, chromium, type LaunchOptions } from 'playwright-core';
import { ensureChromium } from '../../src/desk/chromium.mjs';
import { DIST, NotReady } from '../../src/desk/ready.mjs';

/** A phone of common size held upright, as CSS pixels. */
export const PHONE = { width: 390, height: 844 } as const;

/** As a phone has it: touch, a dense screen, and no address of this machine's own. */
export const phone = (viewport: { width: number; height: number } = PHONE): BrowserContextOptions => ({
  viewport,
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
  locale: 'en-GB',
});

/** How Chromium is started: without the connections that it would make of itself, and as root too. */
export function launchOptions(): LaunchOptions {
  return {
    executablePath: ensureChromium(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  };
}

export const launch = () => chromium.launch(launchOptions());

/** The folder of the built app; to be served by whoever drives it. */
export function builtApp(): string {
  if (!existsSync(join(DIST, 'index.html')))
    throw new NotReady('The app is not built: run "npm run build" first.');
  return DIST;
}
