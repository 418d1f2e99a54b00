import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { builtApp } from './browser.ts';
import { openApp } from './harness.ts';

/** A copy of the built app that a test may change, as a new version on the host would. */
function copyOfApp(): string {
  const folder = mkdtempSync(join(tmpdir(), 'swingtape-app-'));
  cpSync(builtApp(), folder, { recursive: true });
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** The least that a new version changes: one file, and in the worker's list that file's revision. */
function publishNewVersion(folder: string): void {
  change(join(folder, 'index.html'), /<html /, '<html data-newer ');
  change(join(folder, 'sw.js'), /(url:"index\.html",revision:")[0-9a-f]+/, '$1newer');
}

function change(file: string, from: RegExp, to: string): void {
  const text = readFileSync(file, 'utf8');
  const changed = text.replace(from, to);
  if (changed === text) throw new Error(`${file} has nothing like ${from}.`);
  writeFileSync(file, changed);
}

const isNewer = () => document.documentElement.hasAttribute('data-newer');

it('a newer version waits until it is asked for, then comes by one reload and stays without signal', async () => {
  const folder = copyOfApp();
  const app = await openApp({ folder });
  await app.installed();
  publishNewVersion(folder);

  const page = await app.coldStart();
  const offer = page.getByRole('button', { name: /newer version/i });
  await offer.waitFor();
  expect(await page.evaluate(isNewer)).toBe(false);

  const reloaded = page.waitForEvent('load');
  await offer.click();
  await reloaded;
  expect(await page.evaluate(isNewer)).toBe(true);

  await app.cutSignal();
  expect(await (await app.coldStart()).evaluate(isNewer)).toBe(true);
});
