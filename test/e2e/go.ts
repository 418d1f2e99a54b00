import type { Page } from 'playwright-core';
import { hrefOf, type Phase, readRoute } from '../../src/screens/route.ts';

/** Goes straight to a phase of the open job, at a hole or at whatever comes next, and waits until it is shown. */
export async function show(page: Page, phase: Phase, hole: string | null = null): Promise<void> {
  const route = readRoute(new URL(page.url()).hash);
  if (route.at !== 'job') throw new Error(`${page.url()} is no job`);
  const href = hrefOf({ ...route, phase, hole });
  await page.evaluate((fragment) => location.assign(fragment), href);
  await page.waitForFunction(
    ([fragment, name]) =>
      location.hash === fragment &&
      document.querySelector('.tab[aria-current=page] .tab-label')?.textContent?.toLowerCase() === name &&
      !document.querySelector('main')?.textContent?.includes('One moment…'),
    [href, phase] as const,
  );
  if (hole !== null) await page.locator('.hole-strip [aria-current]', { hasText: labelled(hole) }).waitFor();
}

const labelled = (hole: string): RegExp => new RegExp(`^Hole ${hole}(?!\\d)`);
