// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import type { Body } from '../../../../src/job/entry-schema.ts';
import type { GroundLine } from '../../../../src/job/place-schema.ts';
import type { Plan } from '../../../../src/job/plan-schema.ts';
import { thingName } from '../../../../src/job/words.ts';
import { assessSituation } from '../../../../src/judge/assess.ts';
import { situate } from '../../../../src/judge/situation.ts';
import { sheetFile, sheetHtml } from '../../../../src/screens/stake/sheet/sheet-file.ts';
import { stakingSheet } from '../../../../src/screens/stake/sheet/staking-sheet.ts';
import { formatLength } from '../../../../src/units/index.ts';
import { inches, samplePlan } from '../../../job/sample.ts';
import { metres, rowsPlan } from '../../../plan/plans.ts';
import { CHECKS, PLACED, PLAN, READY } from '../field-day.ts';
import { entriesOf, slopingLog, stakesBefore } from './sloping-job.ts';

const sheetOf = (bodies: readonly Body[], alone = false) => {
  const situation = situate(entriesOf(bodies));
  const assessment = assessSituation(situation);
  return stakingSheet({ situation, assessment, alone, at: '2 May 2026, 14:03', entries: bodies.length });
};
const htmlOf = (bodies: readonly Body[]) => sheetHtml(sheetOf(bodies)!, 'ft-in-16', '');
const pageOf = (bodies: readonly Body[]) => new DOMParser().parseFromString(htmlOf(bodies), 'text/html');
const named = (name: string): Body[] =>
  READY.map((body) => (body.kind === 'plan' ? { ...body, plan: { ...body.plan, name } } : body));

describe('the staking sheet', () => {
  const page = pageOf(READY);
  const text = page.body.textContent ?? '';

  test('is there once the plan lies on the site', () => {
    expect(sheetOf(PLAN)).toBeNull();
    expect(sheetOf(PLACED)).not.toBeNull();
  });

  test('has all its parts', () => {
    expect([...page.querySelectorAll('h2')].map(({ textContent }) => textContent)).toEqual([
      'Where everything goes',
      'Reference stakes',
      'Pull list',
      'Check pulls before digging',
      'Strings',
      'Ties: the way back to every centre after digging',
      'How it was computed',
    ]);
    expect(page.querySelector('h1')!.textContent).toBe('Garden room: staking sheet');
    expect(text).toContain('Made 2 May 2026, 14:03. 8 posts on a ring');
    expect(text.replaceAll('\u00a0', ' ')).toMatch(
      /of its place: twice the post’s tolerance, for the hole has room\./,
    );
    expect(text).toContain('feet, inches and sixteenths of an inch');
    expect(text).toMatch(
      /Made from \d+ entries of the field book by Swingtape \d+\.\d+\.\d+, rules version 1/,
    );
  });

  test('names every hole in its list, in its drawings and among its ties', () => {
    const labels = ['1', '2', '3', '4', '5', '6', '7', '8', 'P'];
    const [list] = page.querySelectorAll('table');
    const heads = [...list!.querySelectorAll('tbody th')].map(({ textContent }) => textContent);
    expect([...heads].sort()).toEqual(labels);
    const drawn = page.querySelector('svg')!;
    const words = [...drawn.querySelectorAll('text')].map(({ textContent }) => textContent);
    expect(words).toEqual(expect.arrayContaining([...labels, 'A', 'B']));
    for (const label of labels) expect(text).toContain(`Hole ${label}`);
  });

  test('says what every check pull must read, each in its own row', () => {
    const plain = (node: Element) => (node.textContent ?? '').replace(/\u00a0/g, ' ');
    const part = [...page.querySelectorAll('section')].find(
      (section) => section.querySelector('h2')!.textContent === 'Check pulls before digging',
    );
    const rows = [...part!.querySelectorAll('tbody tr')].map((row) => {
      const [name, reading] = row.children;
      return [plain(name!), plain(reading!)];
    });
    expect(rows).toEqual(
      CHECKS.map(({ from, to, expected }) => [
        `${thingName(from.thing)} to ${thingName(to.thing)}`,
        formatLength(expected, 'ft-in-16'),
      ]),
    );
  });

  test('says that B has to stand just so while A–B is not pulled, and what was pulled after', () => {
    expect(htmlOf(PLACED)).toContain('Drive B so that the tape reads exactly this');
    expect(htmlOf(READY)).not.toContain('Drive B so that');
    expect(htmlOf(READY)).toContain('was pulled:');
  });

  test('has the lengths along the slope where the ground was read', () => {
    const plan: Plan = rowsPlan({ columns: 2, rows: 2 });
    const flat = sheetOf(slopingLog(plan, stakesBefore(plan), null))!;
    const steep = sheetOf(slopingLog(plan, stakesBefore(plan), { grade: 0.2, way: 1 }))!;
    const heads = (sheet: typeof flat) =>
      sheet.parts.find(({ heading }) => heading === 'Pull list')!.tables![0]!.heads.join('; ');
    expect(heads(flat)).not.toContain('slope');
    expect(heads(steep)).toContain('From A, along the slope');
  });

  test('gives readings of the tape in hand, and names it', () => {
    const tape = { label: 'Red', nominal: inches('100 0'), actual: inches('100 0'), zero: inches('-1 0') };
    const plan = { ...samplePlan, instruments: { ...samplePlan.instruments, tapes: [tape] } };
    const taped = sheetOf([{ kind: 'plan', plan }, ...PLACED.slice(1)])!;
    const plain = sheetOf(PLACED)!;
    expect(taped.head.join(' ')).toContain('what tape Red must read');
    expect(plain.head.join(' ')).toContain('for a tape that reads true');
    const first = (sheet: typeof plain) => sheet.parts[2]!.tables![0]!.rows[0]!;
    // A tape that reads a foot too long must read a foot more.
    expect(first(plain)[1]).toBe('27′ 3 3/8″');
    expect(first(taped)[1]).toBe('28′ 3 3/8″');
  });

  test('says how one person does it', () => {
    const alone = sheetOf(READY, true)!.parts[2]!.sentences!.join(' ');
    expect(alone).toContain('scratch an arc');
    expect(alone).toContain('they want a second hand');
    expect(sheetOf(READY)!.parts[2]!.sentences!.join(' ')).not.toContain('scratch an arc');
  });

  test('of hundreds of holes tells ties in words and draws none of them', () => {
    const plan = rowsPlan({ columns: 9, rows: 5, columnSpacing: metres(3), rowSpacing: metres(3) });
    const sheet = sheetOf(slopingLog(plan, stakesBefore(plan), null))!;
    const { cards } = sheet.parts.find(({ heading }) => heading.startsWith('Ties'))!;
    expect(cards).toHaveLength(45);
    for (const { drawing, sentences } of cards!) {
      expect(drawing).toBeNull();
      expect(sentences.length).toBeGreaterThan(0);
    }
  });
});

describe('lines on the ground', () => {
  const boundary = (away: string): GroundLine => ({
    name: 'Boundary',
    kind: 'boundary',
    from: { by: 'plan', right: inches(away), front: inches('-10 0') },
    to: { by: 'plan', right: inches(away), front: inches('10 0') },
    keep: inches('2 0'),
    noStakes: 'right',
  });
  const withLines = (...lines: GroundLine[]): Body[] => [
    { kind: 'plan', plan: { ...samplePlan, lines } },
    ...PLACED.slice(1),
  ];

  test('are drawn where everything goes, named, with the side on which no stake can stand', () => {
    const drawing = pageOf(withLines(boundary('16 0'))).querySelector('svg')!;
    expect(drawing.getAttribute('aria-label')).toContain('Lines on the ground: Boundary.');
    const [line] = drawing.querySelectorAll('.drawn-ground');
    expect(line!.textContent).toBe('Boundary');
    expect(line!.querySelectorAll('.drawn-barred').length).toBeGreaterThan(3);
    expect(pageOf(PLACED).querySelectorAll('.drawn-ground')).toHaveLength(0);
  });

  test('what is kept from them stands among the cautions, and what is too near instead, once', () => {
    const cautions = (lines: GroundLine[]) => sheetOf(withLines(...lines))!.cautions;
    expect(cautions([boundary('16 0')])[0]).toMatch(
      /^Boundary, by the plan: post .* must be kept: .* to spare\.$/,
    );
    const near = cautions([boundary('10 0')]);
    expect(near[0]).toMatch(/^Post \d .*Boundary, and 2′ 0″ must be kept\. Move the plan/);
    expect(near.filter((text) => text.includes('Boundary'))).toHaveLength(1);
    expect(near[1]).toContain('no survey');
    expect(sheetOf(PLACED)!.cautions.join(' ')).not.toContain('survey');
  });

  test('one that cannot be drawn is not left out unsaid', () => {
    const nowhere = { ...boundary('16 0'), to: boundary('16 0').from };
    expect(sheetOf(withLines(nowhere))!.cautions[0]).toContain('Boundary');
  });
});

describe('its file', () => {
  test('needs nothing else: no script, nothing from elsewhere', () => {
    const page = pageOf(READY);
    for (const one of ['script', 'link', 'img', 'iframe', 'object', 'a', 'form'])
      expect(page.querySelectorAll(one)).toHaveLength(0);
    expect(htmlOf(READY)).not.toMatch(/\son[a-z]+=|https?:|url\(/i);
    expect(page.querySelector('meta[http-equiv="Content-Security-Policy"]')!.getAttribute('content')).toMatch(
      /^default-src 'none'/,
    );
  });

  test.each([
    `<script>alert(1)</script>`,
    `</title><script>alert(1)</script>`,
    `"><img src=x onerror=alert(1)>`,
    `</style><b>&amp;`,
  ])('a job called %s is only called so', (name) => {
    const page = pageOf(named(name));
    expect(page.querySelectorAll('script, img, b')).toHaveLength(0);
    expect(page.querySelector('h1')!.textContent).toBe(`${name}: staking sheet`);
    expect(page.title).toBe(`${name}: staking sheet`);
    expect(page.querySelectorAll('h2')).toHaveLength(7);
  });

  test('is called by the job, as text that browsers share', () => {
    const file = sheetFile(sheetOf(named('Deck: "west" / 2'))!, 'ft-in-16', '');
    expect(file.name).toBe('Deck west 2.staking.html');
    expect(file.type).toBe('text/html');
  });
});
