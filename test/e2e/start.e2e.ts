import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtApp } from './browser.ts';
import { openApp } from './harness.ts';

/** What the build made, but for the worker itself, its list, and the manifest, which only an installer reads. */
function filesToKeep(): string[] {
  // The README's picture is served, and no use on a phone.
  const apart = /^(picture\.png|sw\.js|workbox-.*\.js|precached\.json|manifest\.webmanifest)$/;
  return readdirSync(builtApp(), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(builtApp(), join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((name) => !apart.test(name))
    .sort();
}

describe('the app as served from a sub-path', () => {
  it('starts, under its own name, with one heading of the first rank', async () => {
    const app = await openApp();
    expect(await app.page.title()).toContain('Swingtape');
    expect(await app.page.locator('h1').count()).toBe(1);
    await app.picture('start');
  });

  it('has nothing that keeps a person out', async () => {
    const app = await openApp();
    await app.expectAccessible();
  });

  it('fits the width of a small phone', async () => {
    const app = await openApp({ viewport: { width: 320, height: 568 } });
    const overflow = await app.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
  });
});

describe('flight mode', () => {
  it('starts anew from the cache, from a link into it too', async () => {
    const app = await openApp({ offline: true });
    expect(await app.page.evaluate(() => navigator.onLine)).toBe(false);
    const page = await app.coldStart('index.html');
    expect(await page.locator('h1').count()).toBe(1);
  });

  it('has every file that was built in the cache', async () => {
    const app = await openApp({ offline: true });
    const listed: string[] = await app.page.evaluate(async () => (await fetch('precached.json')).json());
    const lost = await app.page.evaluate(async (keys) => {
      const answers = await Promise.all(keys.map(async (key) => ((await caches.match(key))?.ok ? '' : key)));
      return answers.filter((key) => key !== '');
    }, listed);
    expect(lost).toEqual([]);
    expect(listed.map((key) => key.split('?')[0]).sort()).toEqual(filesToKeep());
  });

  it('really is without signal: what is not kept cannot be had', async () => {
    const app = await openApp({ offline: true });
    const answer = await app.page.evaluate(() =>
      fetch('not-kept.bin').then(
        () => 'had',
        () => 'not had',
      ),
    );
    expect(answer).toBe('not had');
    expect(app.problems.splice(0).join()).toContain('net::ERR');
  });
});

describe('the manifest', () => {
  it('installs from where it lies, with pictures of the sizes that it names', async () => {
    const app = await openApp();
    const href = await app.page.locator('link[rel=manifest]').getAttribute('href');
    const address = new URL(href ?? '', app.url);
    const manifest = await (await app.context.request.get(address.href)).json();
    expect(manifest).toMatchObject({ name: 'Swingtape', display: 'standalone', theme_color: '#ffffff' });
    expect(new URL(manifest.start_url, address).href).toBe(app.url);
    expect(new URL(manifest.scope, address).href).toBe(app.url);
    const sizes = await app.page.evaluate(
      (icons: { src: string }[]) =>
        Promise.all(
          icons.map(async ({ src }) => {
            const image = new Image();
            image.src = src;
            await image.decode();
            return `${image.naturalWidth}x${image.naturalHeight}`;
          }),
        ),
      manifest.icons.filter((icon: { sizes: string }) => icon.sizes !== 'any'),
    );
    expect(sizes).toEqual(['192x192', '512x512', '512x512']);
  });
});

describe('the security policy', () => {
  it('stops a script and a style that the app does not bring along', async () => {
    const app = await openApp();
    await app.page.evaluate(() => {
      for (const tag of ['script', 'style']) {
        const element = document.createElement(tag);
        element.textContent = tag === 'script' ? 'window.name = "broken in"' : 'body { color: red }';
        document.head.append(element);
      }
    });
    expect(await app.page.evaluate(() => window.name)).toBe('');
    const blocked = app.problems.splice(0);
    expect(blocked.filter((text) => text.includes('Content Security Policy'))).toHaveLength(2);
  });

  it('stops a request to another origin', async () => {
    const app = await openApp();
    const answer = await app.page.evaluate(() =>
      fetch('http://127.0.0.1:9/').then(
        () => 'had',
        () => 'not had',
      ),
    );
    expect(answer).toBe('not had');
    expect(app.problems.splice(0).join()).toContain('Content Security Policy');
  });
});
