import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Assessment, Gate, GateItem, HoleAssessment, Judgement } from '../../src/judge/types.ts';
import type { Phase } from '../../src/screens/route.ts';
import { show } from './go.ts';

/** Fails unless the screens say of every hole, and of the job, what the assessment says: word for word. */
export async function screensSay(page: Page, { holes, findings }: Assessment): Promise<void> {
  const record = await textOf(page, 'record');
  for (const { text } of findings) expect.soft(record, 'Record').toContain(text);
  for (const hole of holes) {
    for (const { text } of recordedParts(hole))
      expect.soft(record, `Record, hole ${hole.hole}`).toContain(text);
    const set = await textOf(page, 'set', hole.hole);
    for (const text of saidWhileSet(hole)) expect.soft(set, `Set, hole ${hole.hole}`).toContain(text);
    const dig = await textOf(page, 'dig', hole.hole);
    for (const text of saidOfDug(hole)) expect.soft(dig, `Dig, hole ${hole.hole}`).toContain(text);
    const pour = await textOf(page, 'pour', hole.hole);
    for (const text of gateTexts(hole.pourGate)) expect.soft(pour, `Pour, hole ${hole.hole}`).toContain(text);
    expect.soft(await countMissing(page), `Pour, hole ${hole.hole}`).toBe(missingIn(hole.pourGate));
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
    await textOf(page, 'stake');
    expect.soft(plain(await table.textContent()), `Stake ${hole}`).toContain(staked.position.text);
  }
  await textOf(page, 'stake');
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
  hole.dug.room,
  ...partsOfSet(hole),
];

function saidWhileSet(hole: HoleAssessment): string[] {
  return [
    ...partsOfSet(hole).flatMap(({ text, why }) => [text, why]),
    // Of a poured post the card asks whether it still stands so.
    ...(hole.poured ? [] : [hole.set.headline]),
    ...(hole.set.nudge ? [hole.set.nudge.words] : []),
  ];
}

const saidOfDug = ({ dug }: HoleAssessment): string[] =>
  [dug.depth, dug.width].flatMap(({ text, why }) => [text, why]);

/** What waits for a decision is decided at the inspection: until then the screen asks for the one decision. */
function gateItems({ items }: Gate): GateItem[] {
  const undecided = items.some(({ decision }) => decision);
  return items.filter(({ item, green }) => green || !(undecided && item === 'inspection'));
}

const gateTexts = (gate: Gate): string[] => gateItems(gate).map(({ text }) => text);

/** One sentence may answer for two items, and is said once. */
const missingIn = (gate: Gate): number =>
  new Set(
    gateItems(gate)
      .filter(({ green }) => !green)
      .map(({ text }) => text),
  ).size;

/** What stands in the list of what is missing. */
const countMissing = (page: Page): Promise<number> =>
  page.locator('.missing-list > li, .gate-item-missing').count();

/** Everything that a phase says of a hole, closed parts too. */
async function textOf(page: Page, phase: Phase, hole: string | null = null): Promise<string> {
  await show(page, phase, hole);
  return plain(await page.locator('#app').textContent());
}

/** Lengths are shown in one piece, by no-break spaces; the words are the same. */
const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');
