// `npm run picture`: the picture in README.md, public/picture.png: three cards of the example job side by side, each on
// a phone of its own. Run it after a screen has changed, and commit the picture.
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { ROOT } from '../../src/desk/ready.mjs';
import { serve } from '../../src/desk/serve.mjs';
import type { Phase } from '../../src/screens/route.ts';
import { builtApp, launch, PHONE, phone } from '../e2e/browser.ts';
import { readExample, restoreLog, upTo } from '../e2e/example.ts';
import { show } from '../e2e/go.ts';

const PICTURE = join(ROOT, 'public', 'picture.png');
const GAP = 24;

interface Shown {
  readonly phase: Phase;
  readonly hole: string;
  /** The job has come as far as this line of its log; to the end without one. */
  readonly upTo?: string;
}

const SHOWN: readonly Shown[] = [
  { phase: 'stake', hole: '4', upTo: 'Pull B to stake 3' },
  { phase: 'set', hole: '4' },
  { phase: 'pour', hole: '3' },
];

async function card(page: Page, shown: Shown): Promise<Buffer> {
  const whole = readExample().log;
  const log = shown.upTo === undefined ? whole : upTo(shown.upTo, whole);
  // A moment after the last line: half a day later the app asks first whether A and B have stood still.
  await page.clock.setSystemTime(new Date(log.at(-1)?.at ?? 0));
  await restoreLog(page, log);
  // Loaded anew, the page no longer says what it saved last.
  await page.reload();
  await show(page, shown.phase, shown.hole);
  return page.screenshot();
}

async function cards(browser: Browser, url: string): Promise<Buffer[]> {
  const pictures: Buffer[] = [];
  for (const shown of SHOWN) {
    const context = await browser.newContext(phone());
    const page = await context.newPage();
    await page.goto(url);
    pictures.push(await card(page, shown));
    await context.close();
  }
  return pictures;
}

async function sideBySide(browser: Browser, pictures: readonly Buffer[]): Promise<void> {
  const images = pictures.map(
    (picture) => `<img width="${PHONE.width}" src="data:image/png;base64,${picture.toString('base64')}">`,
  );
  const width = pictures.length * PHONE.width + (pictures.length + 1) * GAP;
  const page = await browser.newPage({ viewport: { width, height: PHONE.height + 2 * GAP } });
  await page.setContent(
    `<style>body{margin:0;padding:${GAP}px;display:flex;gap:${GAP}px;background:#fff}img{outline:2px solid #14171a}</style>${images.join('')}`,
  );
  await page.screenshot({ path: PICTURE });
}

const server = await serve(builtApp());
const browser = await launch();
try {
  await sideBySide(browser, await cards(browser, server.url));
  console.log('public/picture.png');
} finally {
  await browser.close();
  await server.close();
}
