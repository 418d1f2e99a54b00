import { expect, it } from 'vitest';
import { openApp } from './harness.ts';

it('a newer version in another window is told in the window that it makes out of date', async () => {
  const app = await openApp();
  // What a later version does when it opens the store: the connection of this one has to give way.
  await app.page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const newer = indexedDB.open('swingtape', 1_000_000);
        newer.onsuccess = () => {
          newer.result.close();
          resolve();
        };
        newer.onerror = () => reject(newer.error);
      }),
  );
  const told = app.page.locator('.problem', { hasText: 'Storage:' }).first();
  await told.waitFor();
  expect(await told.textContent()).toMatch(/a newer Swingtape is open in another window/);
  // The store's library says so on the console too; nothing else may be there.
  expect(app.problems.splice(0)).toEqual([expect.stringContaining('Another connection wants to upgrade')]);
});
