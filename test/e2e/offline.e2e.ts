import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import { readRoute } from '../../src/screens/route.ts';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';
import { openExample } from '../tools/example.ts';
import { backupIn, readExample, restoreLog, upTo } from './example.ts';
import { show } from './go.ts';
import { Hand } from './hand.ts';
import { type App, openApp } from './harness.ts';

/** The app with the example job, installed and without signal, as in the orchard. */
async function inTheOrchard(): Promise<App> {
  const app = await openApp();
  await openExample(app.page);
  await app.installed();
  await app.cutSignal();
  return app;
}

/** What is said of a post's place at a desk. */
function placeOf(post: string): string {
  const hole = assess(readExample().log).holes.find((each) => each.hole === post);
  return hole?.set.position.text ?? 'no such post';
}

const logOf = async (page: Page) => backupIn(await new Hand(page).backUp()).log;

async function openBaselinePull(page: Page): Promise<Hand> {
  const hand = new Hand(page);
  await hand.goTo('Stake');
  await hand.open('The line A–B');
  await hand.tapButton('Pull A–B again');
  await hand.sheet('Tape, A to B').waitFor();
  return hand;
}

describe('without signal', () => {
  it('a cold start shows the job that was open last, with its verdicts', async () => {
    const app = await inTheOrchard();
    await show(app.page, 'set', '4');
    const said = await app.page.getByRole('list', { name: 'post 4 against the plan' }).textContent();
    expect(said).toContain(placeOf('4'));
    const page = await app.coldStart();
    await page.getByRole('heading', { level: 1, name: 'Orchard yurt deck' }).waitFor();
    expect(readRoute(new URL(page.url()).hash)).toMatchObject({ phase: 'set', hole: '4' });
    await page.getByRole('list', { name: 'post 4 against the plan' }).waitFor();
    expect(await page.getByRole('list', { name: 'post 4 against the plan' }).textContent()).toBe(said);
  });

  it('what is logged is there after another cold start, and every phase opens', async () => {
    const app = await inTheOrchard();
    const before = await logOf(app.page);
    const hand = await openBaselinePull(app.page);
    await app.page.keyboard.type('40 0 5/16');
    await hand.tapButton(/^Read it/);
    await app.page.getByText('Saved: Pull A to B: 40′ 0 5/16″, level.').waitFor();
    const page = await app.coldStart();
    for (const phase of ['plan', 'stake', 'dig', 'set', 'pour', 'record'] as const) await show(page, phase);
    const after = await logOf(page);
    expect(after.slice(0, -1)).toEqual(before);
    expect(after.at(-1)?.body).toMatchObject({ kind: 'pull', reading: { typed: '40 0 5/16' } });
  });
});

describe('a page that is loaded again', () => {
  it('in the middle of a reading loses nothing that was logged, and logs nothing', async () => {
    const app = await inTheOrchard();
    const before = await logOf(app.page);
    await openBaselinePull(app.page);
    await app.page.keyboard.type('40 0');
    await app.page.reload();
    await app.page.getByRole('heading', { level: 1, name: 'Orchard yurt deck' }).waitFor();
    expect(await app.page.getByRole('dialog').count()).toBe(0);
    expect(await logOf(app.page)).toEqual(before);
  });

  it('at the very moment of logging has the reading once or not at all', async () => {
    const app = await inTheOrchard();
    const before = await logOf(app.page);
    await openBaselinePull(app.page);
    await app.page.keyboard.type('40 0 1/4');
    await app.page.keyboard.press('Enter');
    await app.page.reload();
    const after = await logOf(app.page);
    expect(after.slice(0, before.length)).toEqual(before);
    expect(after.length - before.length).toBeLessThanOrEqual(1);
  });
});

/** Two taps of a nudged hand, as far apart as such taps are. */
async function doubleTap(page: Page, target: Locator, gapMs: number): Promise<void> {
  const box = await target.boundingBox();
  if (!box) throw new Error('Nothing to tap');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.touchscreen.tap(x, y);
  await page.waitForTimeout(gapMs);
  await page.touchscreen.tap(x, y);
}

/** One double tap: the button, the line it must log, and how long the log is then. */
const STEPS = [
  ['Utilities are marked', 'Ticked for the whole job'],
  ['Stake A driven', 'Stake A driven'],
  ['Stake B driven', 'Stake B driven'],
] as const;

describe('a double tap', () => {
  it.each([20, 120, 250])('of %i ms on a main button does one thing once', async (gapMs) => {
    const app = await openApp();
    await restoreLog(app.page, upTo('A and B placed', readExample().log));
    await show(app.page, 'stake');
    const hand = new Hand(app.page);
    for (const [button, line] of STEPS) {
      await hand.button(button).waitFor();
      // Past the time in which a tap would still belong to the one before.
      await app.page.waitForTimeout(REPEAT_TAP_MS);
      await doubleTap(app.page, hand.button(button), gapMs);
      await app.page.getByText(new RegExp(`^Saved: ${line}`)).waitFor();
      expect(await app.page.getByRole('dialog').count()).toBe(0);
    }
    const kinds = (await logOf(app.page)).map(({ body }) => body.kind);
    expect(kinds).toEqual(['plan', 'site', 'check', 'stand', 'stand']);
  });

  it.each([20, 120, 250])('of %i ms on “Read it” logs the reading once', async (gapMs) => {
    const app = await openApp();
    await openExample(app.page);
    const before = await logOf(app.page);
    const hand = await openBaselinePull(app.page);
    await app.page.keyboard.type('40 0 1/4');
    await doubleTap(app.page, hand.button(/^Read it/), gapMs);
    await app.page.getByText('Saved: Pull A to B').waitFor();
    const after = await logOf(app.page);
    expect(after).toHaveLength(before.length + 1);
    expect(after.slice(0, -1)).toEqual(before);
  });
});

it('the phone’s back button closes the keypad and stays on the page behind it', async () => {
  const app = await openApp();
  await openExample(app.page);
  const before = await logOf(app.page);
  const hand = await openBaselinePull(app.page);
  const { hash } = new URL(app.page.url());
  await app.page.keyboard.type('40 0');
  await app.page.goBack();
  await hand.sheet('Tape, A to B').waitFor({ state: 'detached' });
  expect(new URL(app.page.url()).hash).toBe(hash);
  await hand.button('Pull A–B again').waitFor();
  expect(await logOf(app.page)).toEqual(before);
});
