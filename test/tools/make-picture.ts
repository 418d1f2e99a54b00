// `npm run picture`: takes the example job through its phases in the built app, keeps a picture of each in
// out/screens/, and lays three of them side by side as public/picture.png, the picture in README.md.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { ROOT } from '../../src/desk/ready.mjs';
import { serve } from '../../src/desk/serve.mjs';
import { hrefOf, PHASES, readRoute } from '../../src/screens/route.ts';
import { builtApp, launch, PHONE, phone } from '../e2e/browser.ts';
import { openExample } from './example.ts';

const SCREENS = join(ROOT, 'out', 'screens');
const PICTURE = join(ROOT, 'public', 'picture.png');
const SHOWN = ['stake', 'set', 'pour'];
const GAP = 24;

/** @returns the file of each phase's picture */
async function pictures(page: Page): Promise<Map<string, string>> {
  const files = new Map<string, string>();
  const { hash } = new URL(page.url());
  const route = readRoute(hash);
  if (route.at !== 'job') throw new Error(`The example job led to "${hash}", which is no job.`);
  for (const phase of PHASES) {
    await page.evaluate((fragment) => location.assign(fragment), hrefOf({ ...route, phase, hole: null }));
    await page.evaluate(() => new Promise((shown) => requestAnimationFrame(() => setTimeout(shown))));
    const file = join(SCREENS, `${phase}.png`);
    await page.screenshot({ path: file });
    files.set(phase, file);
    console.log(`out/screens/${phase}.png`);
  }
  return files;
}

async function sideBySide(browser: Browser, files: readonly string[]): Promise<void> {
  const images = files.map(
    (file) => `<img width="${PHONE.width}" src="data:image/png;base64,${readFileSync(file, 'base64')}">`,
  );
  const width = files.length * PHONE.width + (files.length + 1) * GAP;
  const page = await browser.newPage({ viewport: { width, height: PHONE.height + 2 * GAP } });
  await page.setContent(
    `<style>body{margin:0;padding:${GAP}px;display:flex;gap:${GAP}px;background:#fff}img{outline:2px solid #14181b}</style>${images.join('')}`,
  );
  await page.screenshot({ path: PICTURE });
}

mkdirSync(SCREENS, { recursive: true });
const server = await serve(builtApp());
const browser = await launch();
try {
  const context = await browser.newContext(phone());
  const page = await context.newPage();
  await page.goto(server.url);
  if (!(await openExample(page))) throw new Error('The first screen offers no example job.');
  const files = await pictures(page);
  await sideBySide(
    browser,
    SHOWN.map((phase) => files.get(phase) ?? ''),
  );
  console.log('public/picture.png');
} finally {
  await browser.close();
  await server.close();
}
