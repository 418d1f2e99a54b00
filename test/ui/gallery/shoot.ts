/**
 * Pictures of every gallery page, to be looked at: `npx tsx test/ui/gallery/shoot.ts`. They land in the ignored folder `out/`.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import preact from '@preact/preset-vite';
import { chromium, type Page } from 'playwright-core';
import { createServer } from 'vite';

/** Width, height, and how much larger than usual the user has set text. */
const SIZES = [
  [390, 844, 1],
  [320, 640, 1],
  [844, 390, 1],
  [1280, 800, 1],
  [390, 844, 2],
] as const;

const tap = async (page: Page, ...names: string[]) => {
  for (const name of names) await page.getByRole('button', { name, exact: true }).click();
};

/** Pages, and what is done on them before the picture. */
const SHOTS: readonly (readonly [string, string, ((page: Page) => Promise<void>)?])[] = [
  ['stake', 'stake'],
  ['set', 'set'],
  ['parts', 'parts'],
  ['drawings', 'drawings'],
  ['strike', 'strike'],
  ['keypad-16', 'keypad-feet'],
  ['keypad-16', 'keypad-inches', (page) => tap(page, '1', '8', '′ ft')],
  ['keypad-16', 'keypad-fraction', (page) => tap(page, '1', '8', '′ ft', '6 inches', '5/16')],
  ['keypad-32', 'keypad-32', (page) => tap(page, '1', '8', '′ ft', '11 inches', '15/16', 'and 1/32')],
  [
    'keypad-16',
    'keypad-question',
    async (page) => {
      await tap(page, '1', '9', '′ ft', '6 inches', '5/16');
      await page.getByRole('button', { name: /^Read it/ }).click();
    },
  ],
  ['keypad-16', 'keypad-typed', (page) => page.keyboard.type('18 6 5/16')],
  [
    'keypad-m',
    'keypad-m',
    async (page) => {
      await page.getByRole('button', { name: /^Read it/ }).click();
    },
  ],
];

const AXE = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');

/** Prints what an accessibility scan finds. */
async function scan(page: Page, name: string) {
  await page.evaluate(AXE);
  const found: string[] = await page.evaluate(
    "axe.run().then((r) => r.violations.map((v) => v.impact + ' ' + v.id + ': ' + v.nodes[0].html))",
  );
  for (const line of found) console.log(`${name}: ${line}`);
}

/** Prints every target smaller than 64 px. */
async function measureTargets(page: Page, name: string) {
  const small: string[] = await page.evaluate(() =>
    [...document.querySelectorAll('a, button, summary, label.choice, .field-box')]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < 63.9)
      .map(({ element, box }) => `${box.width} × ${box.height}: ${element.className} ${element.textContent}`),
  );
  for (const line of small) console.log(`${name}: ${line}`);
}

const server = await createServer({
  configFile: false,
  root: '.',
  plugins: [preact()],
  logLevel: 'error',
  // Only the gallery's own modules: the app's entry needs plugins that are not loaded here.
  optimizeDeps: { entries: ['test/ui/gallery/index.html'] },
  cacheDir: 'out/gallery-cache',
  server: { host: '127.0.0.1' },
});
await server.listen();
const [base] = server.resolvedUrls?.local ?? [];
mkdirSync('out/gallery', { recursive: true });
const only = process.argv[2];
for (const [width, height, text] of SIZES) {
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', `--blink-settings=defaultFontSize=${16 * text}`],
  });
  const size = text > 1 ? `${width}-text${text}` : `${width}`;
  const page = await browser.newPage({ viewport: { width, height } });
  page.on(
    'console',
    (message) => ['error', 'warning'].includes(message.type()) && console.log(message.text()),
  );
  page.on('pageerror', (error) => console.log(error));
  for (const [name, file, act] of SHOTS) {
    if (only && !file.includes(only)) continue;
    await page.goto(`${base}test/ui/gallery/index.html?page=${name}`);
    await page.waitForSelector('h1, dialog');
    await act?.(page);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (wide > 0) console.log(`${file} at ${width}: ${wide} px too wide`);
    await measureTargets(page, `${file} at ${size}`);
    if (size === '390') await scan(page, file);
    await page.screenshot({ path: `out/gallery/${file}-${size}.png` });
    if (name === 'parts' || name === 'drawings')
      await page.screenshot({ path: `out/gallery/${file}-${size}-whole.png`, fullPage: true });
  }
  await browser.close();
}
await server.close();
