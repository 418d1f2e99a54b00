// `npm run icons`: draws the PNG icons from public/icon.svg. Run it after the drawing has changed, and commit both.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../src/desk/ready.mjs';
import { launch } from '../e2e/browser.ts';

const PUBLIC = join(ROOT, 'public');

/** A launcher may cut a maskable icon to a circle of 0.8 of its width (W3C Manifest, "safe zone"). */
const SAFE = 0.8;

const ICONS = [
  { name: 'icon-192.png', size: 192, drawn: 1 },
  { name: 'icon-512.png', size: 512, drawn: 1 },
  { name: 'icon-maskable-512.png', size: 512, drawn: SAFE },
];

const svg = readFileSync(join(PUBLIC, 'icon.svg'), 'utf8');
const browser = await launch();
for (const { name, size, drawn } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const side = Math.round(size * drawn);
  await page.setContent(
    `<style>body{margin:0;background:#fff;display:grid;place-items:center;height:100vh}svg{width:${side}px}</style>${svg}`,
  );
  await page.screenshot({ path: join(PUBLIC, name) });
  await page.close();
  console.log(`public/${name}`);
}
await browser.close();
