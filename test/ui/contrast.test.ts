import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

/** WCAG 2.2, success criterion 1.4.6 (enhanced contrast). */
const LEAST_RATIO = 7;

/** `--text-ink: #14171a` and so on, from the stylesheet itself. */
function tokens(prefix: string): [string, string][] {
  const css = readFileSync('src/ui/css/tokens.css', 'utf8');
  return [...css.matchAll(/(--[\w-]+):\s*(#[0-9a-f]{6})/gi)]
    .map((match): [string, string] => [match[1]!, match[2]!])
    .filter(([name]) => name.startsWith(prefix));
}

/** Relative luminance as WCAG 2.2 defines it. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function ratio(p: string, q: string): number {
  const [dark, light] = [luminance(p), luminance(q)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

test('black on white is 21:1, as WCAG says', () => {
  expect(ratio('#000000', '#ffffff')).toBeCloseTo(21, 6);
});

const texts = tokens('--text-');
const grounds = tokens('--ground-');

test('the stylesheet has the colours that are checked here', () => {
  expect(texts.map(([name]) => name)).toEqual([
    '--text-ink',
    '--text-string',
    '--text-in',
    '--text-out',
    '--text-unsure',
  ]);
  expect(grounds.length).toBe(2);
});

describe.each(texts)('%s', (_, text) => {
  test.each(grounds)('on %s', (_name, ground) => {
    expect(ratio(text, ground)).toBeGreaterThanOrEqual(LEAST_RATIO);
  });
});

test('no other stylesheet names a colour of its own, so no pair escapes', () => {
  const sheets = ['base', 'frame', 'buttons', 'figures', 'marks', 'fields', 'sheet', 'keypad', 'drawing'];
  for (const sheet of sheets)
    expect(readFileSync(`src/ui/css/${sheet}.css`, 'utf8'), sheet).not.toMatch(
      /#[0-9a-f]{3,8}\b|rgb|hsl|opacity/i,
    );
});
