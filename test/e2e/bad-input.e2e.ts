import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { FIELDS } from '../../src/plan/index.ts';
import { writeBackup } from '../../src/store/backup.ts';
import { openExample } from '../tools/example.ts';
import { asFile, backupIn, readExample } from './example.ts';
import { Hand } from './hand.ts';
import { openGroup } from './hand-plan.ts';
import { type App, openApp } from './harness.ts';

/** What is wrong, and what the sentence must say of it besides the field's name. */
type Rubbish = readonly (readonly [text: string, sentence: RegExp])[];

const LENGTHS: Rubbish = [
  ['', /is empty: type a length, such as 12′ 6 1\/2″\.$/],
  ['five', /“five” is not a length; type it like 12′ 6 1\/2″\.$/],
  ['-5 0', /“-5 0” must (be more than zero|not be below zero); type it like 12′ 6 1\/2″\.$/],
  ['1e9', /“1e9” is not a length; type it like/],
  ['1000000000 0', /“1000000000 0” is more than .+; type that or less\.$/],
  ['12', /“12” could be feet or inches; type 12′ or 12″\.$/],
  ['3 13', /“3 13” has 12 inches or more beside the feet; type it like/],
  ['3 5/15', /“3 5\/15” has a fraction that no tape shows; type it like/],
];

/** All fields read lengths in one way: one of them is tried with everything, the others with the first few. */
const SOME = 3;

const COUNTS: Rubbish = [
  ['', /is empty: type a whole number from 3 to 60\.$/],
  ['many', /“many” is not a whole number; type one from 3 to 60\.$/],
  ['-8', /-8 is out of range; type a whole number from 3 to 60\.$/],
  ['0', /0 is out of range; type a whole number from 3 to 60\.$/],
  ['1e9', /“1e9” is not a whole number; type one from 3 to 60\.$/],
  ['1000000000', /1000000000 is out of range; type a whole number from 3 to 60\.$/],
  ['8.5', /“8.5” is not a whole number; type one from 3 to 60\.$/],
];

/** Fails unless exactly this is said of bad input: one sentence, beginning with the field's name. */
async function expectRefusal(page: Page, field: string, sentence: RegExp): Promise<void> {
  const problem = page
    .locator('dialog[open] .problem, main .problem, .frame-foot .problem')
    .filter({ hasText: field });
  await problem.first().waitFor();
  const texts = (await problem.allTextContents()).map((text) => text.replaceAll('\u00a0', ' '));
  expect(texts).toHaveLength(1);
  expect(texts[0]?.startsWith(field), texts[0]).toBe(true);
  expect(texts[0]).toMatch(sentence);
}

const logOf = async (hand: Hand) => backupIn(await hand.backUp()).log;

async function withExample(): Promise<{ app: App; hand: Hand }> {
  const app = await openApp();
  await openExample(app.page);
  return { app, hand: new Hand(app.page) };
}

describe('rubbish in the keypad', () => {
  it('is refused with a sentence that names the reading and the cure, and logs nothing', async () => {
    const { app, hand } = await withExample();
    const before = await logOf(hand);
    await hand.goTo('Stake');
    await hand.open('The line A–B');
    for (const [text, sentence] of [...LENGTHS, ['0', /must be more than zero; type it like/] as const]) {
      await hand.tapButton('Pull A–B again');
      await hand.sheet('Tape, A to B').waitFor();
      await app.page.keyboard.type(text);
      await app.page.keyboard.press('Enter');
      await expectRefusal(app.page, 'Tape, A to B', sentence);
      await hand.tapButton('Back', hand.sheet('Tape, A to B'));
    }
    expect(await logOf(hand)).toEqual(before);
  });

  it('stays beyond what the tape or the rod can read', async () => {
    const { app, hand } = await withExample();
    const before = await logOf(hand);
    await hand.goTo('Set');
    await hand.goToHole('1');
    await hand.open('Other readings of post 1');
    await hand.tapButton('Tape from A');
    await hand.page.getByRole('dialog').waitFor();
    await app.page.keyboard.type('100 0 1/16');
    await app.page.keyboard.press('Enter');
    await expectRefusal(
      app.page,
      'Tape, A to post 1',
      /is more than the tape’s length; type that or less\.$/,
    );
    await hand.tapButton('Back');
    await hand.tapButton('Rod on the benchmark');
    await hand.page.getByRole('dialog').waitFor();
    await app.page.keyboard.type('26 0');
    await app.page.keyboard.press('Enter');
    await expectRefusal(
      app.page,
      'Rod on the benchmark',
      /is more than the longest rod; type that or less\.$/,
    );
    await hand.tapButton('Back');
    expect(await logOf(hand)).toEqual(before);
  });
});

describe('rubbish in the plan’s fields', () => {
  it('is refused with a sentence that names the field and the cure, and the plan stays as it was', async () => {
    const app = await openApp();
    const hand = new Hand(app.page);
    await hand.tapButton('New job');
    await hand.tapButton('Begin the plan');
    await expectRefusal(app.page, 'Name', /^Name is empty: type what this job is/);
    await hand.fill('Name', 'Barn');
    await hand.tapButton('Begin the plan');
    await expectRefusal(app.page, 'Units', /^Units are not chosen: choose what your tape is marked in\.$/);
    await hand.choose('Your tape is marked in', 'Feet, inches, sixteenths');
    await hand.tapButton('Begin the plan');
    await app.page.getByText('Shape', { exact: true }).waitFor();
    const before = await logOf(hand);
    await hand.goTo('Plan');

    const short: Rubbish = [...LENGTHS.slice(0, SOME), ['0', /must be more than zero; type it like/]];
    // No tape that reaches across a site is so short, so it is told what the least is.
    const tape = short.map(([text, sentence]): Rubbish[number] =>
      ['-5 0', '0'].includes(text)
        ? [text, /is less than 9′ 10 1\/8″; type that or more\.$/]
        : [text, sentence],
    );
    const fields: Record<string, readonly (readonly [string, Rubbish])[]> = {
      Shape: [[FIELDS.count, COUNTS]],
      Size: [[FIELDS.size, [...LENGTHS, ...short.slice(-1)]]],
      'What the holes hold': [[FIELDS.holeDiameter, short]],
      'Depth rules': [[FIELDS.frostDepth, LENGTHS.slice(0, SOME)]],
      Tolerances: [[FIELDS.position, short]],
      'Tape and level': [[FIELDS.tapeLength, tape]],
    };
    for (const [group, tried] of Object.entries(fields)) {
      await openGroup(hand, group);
      for (const [label, rubbish] of tried) await tryRubbish(hand, label, rubbish);
    }
    expect(await logOf(hand)).toEqual(before);
  });
});

/** Tries one text after the other, and puts back what stood in the field. An empty field that may stay empty is none of it. */
async function tryRubbish(hand: Hand, label: string, rubbish: Rubbish): Promise<void> {
  const field = hand.page.getByLabel(label, { exact: true });
  const stood = await field.inputValue();
  for (const [text, sentence] of rubbish) {
    if (text === stood) continue;
    await hand.fill(label, text);
    await expectRefusal(hand.page, label, sentence);
    expect(await field.inputValue(), `${label} keeps what was typed`).toBe(text);
  }
  await hand.fill(label, stood);
}

const BAD_LISTS: Rubbish = [
  ['', /the text is empty; the first line must name the columns: label,right,front\.$/],
  ['label,right\n1,3′', /there is no column “front”; the first line must name the columns/],
  ['label,right,front\n1,3′,2′\n1,4′,2′', /lines 2 and 3 both have the label “1”; give each its own\.$/],
  ['label,right,front\n1,3′,far', /line 2, front: “far” is not a length; type it like/],
  ['label,right,front\n', /there is no point below the header; give each hole a line\.$/],
];

it('a list of holes that cannot be read is refused, and no hole is changed', async () => {
  const app = await openApp();
  const hand = new Hand(app.page);
  await hand.tapButton('New job');
  await hand.fill('Name', 'Barn');
  await hand.choose('Your tape is marked in', 'Feet, inches, sixteenths');
  await hand.tapButton('Begin the plan');
  await openGroup(hand, 'Shape');
  await hand.choose('The holes form', 'Points');
  await openGroup(hand, 'Places');
  const holes = app.page.getByRole('list', { name: 'Holes and their places' });
  const before = await holes.textContent();
  for (const [csv, sentence] of BAD_LISTS) {
    await hand.tapButton('Bring in a list');
    await app.page.getByLabel('List of holes').fill(csv);
    await hand.tapButton('Use this list');
    await expectRefusal(app.page, 'Points', sentence);
    expect(await app.page.getByLabel('List of holes').inputValue()).toBe(csv);
    await hand.tapButton('Back');
    expect(await holes.textContent()).toBe(before);
  }
});

describe('a backup that cannot be read', () => {
  it('is refused with a sentence, whatever is wrong with it, and the job on the phone stays as it was', async () => {
    const { app, hand } = await withExample();
    const before = await logOf(hand);
    const { job, log, savedAt } = readExample();
    const good = writeBackup(job, log, savedAt);
    const bad: readonly (readonly [string, RegExp])[] = [
      ['', /the file is empty; use another copy of the backup\.$/],
      [
        good.slice(0, good.length / 2),
        /the file is cut off before its end; use another copy of the backup, or save it again\.$/,
      ],
      [
        good.replace('"version": 2', '"version": 99'),
        /made by a newer version of Swingtape; update the app first, then restore it\.$/,
      ],
      ['Dear inspector, here are the readings.', /it is not a Swingtape backup; choose a file named like/],
      ['{"format":"holiday-photos"}', /it is some other kind of file; choose a file named like/],
      [
        good.replace('4′ 0 1/2″', '9′ 0 1/2″'),
        /entry \d+ \(dug\).*disagree; use another copy of the backup\.$/,
      ],
      [
        good.replace('"bags":13', '"bags":14'),
        /do not fit its “checksum”, so it was damaged or edited; use another copy/,
      ],
    ];
    await hand.tap(hand.link('Jobs'));
    const jobs = await app.page.getByRole('list', { name: 'Jobs on this phone' }).textContent();
    for (const [text, sentence] of bad) {
      await app.page.getByLabel('Restore a backup').setInputFiles(asFile(text));
      await app.page.getByText(sentence).waitFor();
      await expectRefusal(app.page, 'Backup', sentence);
      expect(await app.page.getByRole('list', { name: 'Jobs on this phone' }).textContent()).toBe(jobs);
    }
    await app.page.reload();
    await hand.tap(hand.link(/Orchard yurt deck/));
    expect(await logOf(hand)).toEqual(before);
  });
});
