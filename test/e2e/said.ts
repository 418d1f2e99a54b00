import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Assessment, Gate, HoleAssessment, Judgement } from '../../src/judge/types.ts';
import { hrefOf, type Phase, readRoute } from '../../src/screens/route.ts';

/** Fails unless the screens say of every hole, and of the job, what the assessment says: word for word. */
export async function screensSay(page: Page, { holes, findings }: Assessment): Promise<void> {
  const record = await textOf(page, 'record', null);
  for (const { text } of findings) expect.soft(record, 'Record').toContain(text);
  for (const hole of holes) {
    for (const { text } of recordedParts(hole))
      expect.soft(record, `Record, hole ${hole.hole}`).toContain(text);
    const set = await textOf(page, 'set', hole.hole);
    for (const text of saidWhileSet(hole)) expect.soft(set, `Set, hole ${hole.hole}`).toContain(text);
    const dig = await textOf(page, 'dig', hole.hole);
    for (const text of saidOfDug(hole)) expect.soft(dig, `Dig, hole ${hole.hole}`).toContain(text);
    await textOf(page, 'pour', hole.hole);
    expect.soft(await gateOn(page), `Pour, hole ${hole.hole}`).toEqual(gateLines(hole.pourGate));
  }
}

/** As `screensSay`, of the stakes before anything is dug. */
export async function stakesSay(page: Page, { holes }: Assessment): Promise<void> {
  for (const { hole, staked } of holes) {
    const said = await textOf(page, 'stake', hole);
    const { verdict, checked, why } = staked.position;
    expect.soft(said, `Stake ${hole}`).toContain(`Stake ${hole} is ${verdict}`);
    expect.soft(said, `Stake ${hole}`).toContain(why);
    if (checked && verdict === 'in') continue;
    const table = page.getByRole('list', { name: 'Stakes that are not in and checked yet' });
    await textOf(page, 'stake', null);
    expect.soft(await table.textContent(), `Stake ${hole}`).toContain(staked.position.text);
  }
  await textOf(page, 'stake', null);
}

const partsOfSet = ({ set }: HoleAssessment): Judgement[] => [
  set.position,
  set.plumb,
  set.level,
  ...set.spacing,
];

const recordedParts = (hole: HoleAssessment): Judgement[] => [
  hole.dug.depth,
  hole.dug.width,
  ...partsOfSet(hole),
];

function saidWhileSet(hole: HoleAssessment): string[] {
  return [
    ...partsOfSet(hole).flatMap(({ text, why }) => [text, why]),
    hole.set.headline,
    ...(hole.set.nudge ? [hole.set.nudge.words] : []),
  ];
}

const saidOfDug = ({ dug }: HoleAssessment): string[] =>
  [dug.depth, dug.width].flatMap(({ text, why }) => [text, why]);

/** Missing ones first, as on the screen. */
const gateLines = ({ items }: Gate): string[] => [
  ...items.filter(({ green }) => !green).map(({ text }) => `missing: ${text}`),
  ...items.filter(({ green }) => green).map(({ text }) => `done: ${text}`),
];

const gateOn = (page: Page): Promise<string[]> =>
  page
    .locator('.gate-item')
    .allTextContents()
    .then((lines) => lines.map((line) => line.trim()));

/** Everything that a phase says of a hole, closed parts too. */
async function textOf(page: Page, phase: Phase, hole: string | null): Promise<string> {
  const route = readRoute(new URL(page.url()).hash);
  if (route.at !== 'job') throw new Error(`${page.url()} is no job`);
  const href = hrefOf({ ...route, phase, hole });
  await page.evaluate((fragment) => location.assign(fragment), href);
  if (hole === null) await page.waitForFunction((fragment) => location.hash === fragment, href);
  await page.waitForFunction(
    (label) =>
      document.querySelector('.tab[aria-current=page] .tab-label')?.textContent?.toLowerCase() === label,
    phase,
  );
  await page.getByText('One moment…').waitFor({ state: 'detached' });
  if (hole !== null)
    await page.locator('.hole-strip a[aria-current]', { hasText: new RegExp(`^Hole ${hole}\\D`) }).waitFor();
  return (await page.locator('#app').textContent()) ?? '';
}
