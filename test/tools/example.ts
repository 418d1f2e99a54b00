import type { Page } from 'playwright-core';

const WAIT_MS = 10_000;

/**
 * Opens the example job from the first screen, with the one tap that a newcomer needs.
 *
 * @returns false where the first screen offers none
 */
export async function openExample(page: Page): Promise<boolean> {
  const tap = page.getByRole('button', { name: /example/i }).or(page.getByRole('link', { name: /example/i }));
  await page.waitForFunction(() => !document.querySelector('[data-starting]'));
  if ((await tap.count()) === 0) return false;
  await tap.first().click();
  await page.waitForURL(/#\/job\//, { timeout: WAIT_MS });
  await page.locator('h1, h2').first().waitFor();
  return true;
}
