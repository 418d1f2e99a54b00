// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body, HeightPoint } from '../../../src/job/entry-schema.ts';
import { DigScreen } from '../../../src/screens/dig/dig-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { inches, samplePlan } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { openScreen, painted } from '../plan/open-screen.tsx';
import { press, whole } from '../press.ts';
import { DIGGABLE, dug, middleOf, ORDER, PLACED, PLAN, PROVED, STAKED } from '../stake/field-day.ts';
import { heading, tap, typeReading } from '../taps.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const open = (bodies: readonly Body[], hole: string | null = null) => openScreen(DigScreen, bodies, hole);
const [FIRST, SECOND] = ORDER as [string, string];
const choose = (label: string) => fireEvent.click(screen.getByRole('radio', { name: label, hidden: true }));
const link = (name: string) => screen.getByRole('link', { name }).getAttribute('href');

/** Depth, then width, as the keypad asks for them. */
function typeDug(depth: string, width: string): void {
  typeReading(depth);
  tap(/^Read it/);
  typeReading(width);
  tap(/^Read it/);
}

test('leads to the plan, or to the stakes, while there is nothing to dig', async () => {
  await open([]);
  expect(link('Go to the plan')).toMatch(/\/plan$/);
  await open(PLAN);
  expect(link('Go to the stakes')).toMatch(/\/stake$/);
});

describe('a hole that may not be dug yet', () => {
  test('says what is missing, and leads to the stake', async () => {
    await open(PLACED, '3');
    expect(heading()).toBe('Hole 3 is not ready to dig');
    const gate = screen.getByRole('list', { name: 'Before hole 3 is dug' });
    expect(within(gate).getAllByText(/^missing/).length).toBeGreaterThan(2);
    expect(link('Go to stake 3')).toMatch(/\/stake\/3$/);
  });

  test('has its ties ticked on the spot', async () => {
    const job = await open(PROVED);
    tap('Two ways back are set');
    await screen.findByText(`Dig hole ${FIRST}, with its sides upright`);
    expect((await job.log()).at(-1)!.body).toEqual({ kind: 'check', item: 'ties', hole: FIRST, done: true });
  });

  test('can be logged all the same: the log says what is so', async () => {
    const job = await open(STAKED, '3');
    tap('It is dug already');
    typeDug('4 2', '1 6');
    choose('Nothing');
    tap('Log it');
    await screen.findByText(/^Hole 3 is in: deep and wide enough/);
    expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'dug', hole: '3' });
  });
});

describe('a hole that may be dug', () => {
  test('says how deep, how wide, and why', async () => {
    await open(DIGGABLE);
    // 4′ 0″ and 1.645 times 5 mm of doubt, up to the next sixteenth: 4′ 0 3/8″ (derived, not published).
    expect(screen.getByRole('img', { name: '4 feet and 3/8 inch' }).textContent).toBe('4′ 0 3/8″');
    expect(
      screen.getByText(/least embedment 3′ 6″ and 0′ 6″ of gravel|least embedment 3′ 6″ and 6″ of gravel/),
    ).toBeTruthy();
    expect(screen.getByRole('region', { name: 'Caution: open holes' }).textContent).toMatch(
      /Cover.*Nobody climbs in.*overhead/s,
    );
  });

  test('is logged as one entry, with a note', async () => {
    const job = await open(DIGGABLE);
    tap('Log as-dug');
    typeDug('4 2', '1 6');
    choose('Roots');
    const note = screen.getByLabelText('Note');
    fireEvent.input(note, { target: { value: 'old stump' } });
    fireEvent.blur(note);
    tap('Log it');
    await screen.findByText(`Dig hole ${SECOND}, with its sides upright`);
    expect((await job.log()).slice(DIGGABLE.length).map(({ body }) => body)).toEqual([
      {
        kind: 'dug',
        hole: FIRST,
        depth: inches('4 2'),
        width: inches('1 6'),
        obstruction: 'roots',
        note: 'old stump',
      },
    ]);
  });

  test('has to say what was met, nothing too', async () => {
    const job = await open(DIGGABLE);
    tap('Log as-dug');
    typeDug('4 2', '1 6');
    tap('Log it');
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
      /nothing is chosen; choose Nothing/,
    );
    expect(await job.log()).toHaveLength(DIGGABLE.length);
  });

  test('that is not saved stays on the screen with the reason', async () => {
    const job = await open(DIGGABLE);
    tap('Log as-dug');
    typeDug('4 2', '1 6');
    choose('Nothing');
    fillDisk('aborted');
    tap('Log it');
    await screen.findByText(/phone is full/, { selector: 'dialog .problem' });
    expect(screen.getByText('4′ 2″ deep, 1′ 6″ wide.')).toBeTruthy();
    expect(await job.log()).toHaveLength(DIGGABLE.length);
  });
});

describe('a hole that was dug', () => {
  test('too shallow says by how much, and is logged again deeper', async () => {
    const job = await open([...DIGGABLE, dug(FIRST, '3 6')]);
    expect(heading()).toBe(`Hole ${FIRST} is out: not deep enough yet`);
    expect(document.body.textContent).toMatch(/6″ short of the 4′\s0″ it must have/);
    tap('Log as-dug again');
    typeDug('4 1', '1 6');
    choose('Nothing');
    tap('Log it');
    await screen.findByText(/^Hole 1 is in: deep and wide enough, unchecked\. Now its middle/);
    expect(await job.log()).toHaveLength(DIGGABLE.length + 2);
  });

  test('with rock in it waits for a decision, whatever its depth', async () => {
    await open([...DIGGABLE, dug('3', '4 6', 'rock')], '3');
    expect(heading()).toBe('Hole 3 is unsure: it waits for a decision');
    expect(screen.getByText(/a decision by whoever is responsible/)).toBeTruthy();
    expect(screen.getByRole('link', { name: /^Hole 3/ }).textContent).toContain('waits for a decision');
  });

  test('all of them lead on to Set', async () => {
    await open([...DIGGABLE, ...ORDER.map((hole) => dug(hole, '4 2'))]);
    expect(heading()).toBe('Every hole is deep and wide enough');
    expect(link('Go to Set')).toMatch(/\/set$/);
  });
});

describe('the middle of a dug hole', () => {
  const DUG = [...DIGGABLE, dug(FIRST, '4 2')];

  test('is asked for before the next hole is dug, and one tap goes on without it', async () => {
    await open(DUG);
    expect(heading()).toBe(`Hole ${FIRST} is in: deep and wide enough, unchecked. Now its middle`);
    expect(screen.getByText(/Lay a lath across the foot/)).toBeTruthy();
    expect(link(`Go on without: hole ${SECOND}`)).toMatch(new RegExp(`/dig/${SECOND}$`));
    expect(screen.getByRole('link', { name: new RegExp(`^Hole ${FIRST}`) }).textContent).toContain(
      'in, unchecked',
    );
  });

  test('is read tape by tape, and says what room it leaves', async () => {
    const job = await open(DUG, FIRST);
    const [fromA, fromB] = middleOf(FIRST).map((body) => (body.kind === 'pull' ? body.reading.typed : ''));
    press('Enter the tape');
    await screen.findByText(/^Tape, A to the middle of hole 1/);
    typeReading(fromA!);
    press(/^Read it/);
    await screen.findByText(/One pull does not fix the middle of hole 1/);
    press('Enter the tape');
    await screen.findByText(/^Tape, B to the middle of hole 1/);
    typeReading(fromB!);
    press(/^Read it/);
    await screen.findByText(/^The middle of hole 1 lies .* from the planned centre\. Post 1 fits, with/);
    expect(heading()).toBe(`Hole ${FIRST} is in: deep and wide enough, unchecked`);
    expect((await job.log()).slice(-2).map(({ body }) => body.kind)).toEqual(['pull', 'pull']);
    expect(screen.getByRole('button', { name: 'One more tape to its middle' })).toBeTruthy();
  });

  /** A plan that asks for so much beside every post. */
  const asking = (cover: string): Body[] => [
    { kind: 'plan', plan: { ...samplePlan, rules: { ...samplePlan.rules, cover: inches(cover) } } },
    ...DIGGABLE.slice(1),
  ];
  /** Four inches and an eighth are left. */
  const TIGHT = [...asking('0 5'), dug(FIRST, '4 2'), ...middleOf(FIRST, 1.3)];
  test('too far off says which side to shave; shaved and read again, it is another hole', async () => {
    const job = await open(TIGHT, FIRST);
    expect(heading()).toMatch(/^Hole 1 is too tight\. Shave .* off the side that lies /);
    // Once: the table says it again to whoever opens its row.
    expect(screen.getAllByText(/Shave /).filter((at) => !at.closest('details'))).toHaveLength(1);
    tap('It is shaved: read it again');
    typeDug('4 2', '1 8');
    choose('Nothing');
    tap('Log it');
    await screen.findByText(/Now its middle$/);
    expect((await job.log()).slice(-2).map(({ body }) => body)).toMatchObject([
      { kind: 'stand', thing: { kind: 'dug-hole', hole: FIRST }, event: 'moved' },
      { kind: 'dug', hole: FIRST },
    ]);
  });

  test('shaved while the disk fills is unmeasured, what was typed stays, and the next tap logs its size', async () => {
    const job = await open(TIGHT, FIRST);
    tap('It is shaved: read it again');
    typeDug('4 2', '1 8');
    choose('Nothing');
    fillDisk('aborted', 1);
    tap('Log it');
    await screen.findByText(/phone is full/, { selector: 'dialog .problem' });
    const since = async () => (await job.log()).slice(TIGHT.length).map(({ body }) => body.kind);
    expect(await since()).toEqual(['stand']);
    vi.restoreAllMocks();
    await new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));
    tap('Log it');
    await screen.findByText(/Now its middle$/);
    expect(await since()).toEqual(['stand', 'dug']);
  });

  test('too close to tell asks for one more tape, and shaving stands beside it', async () => {
    await open([...asking('3 1/2'), dug(FIRST, '4 2'), ...middleOf(FIRST, 1.5)], FIRST);
    expect(heading()).toBe('Hole 1 may be too tight: too close to tell');
    expect(screen.getByRole('button', { name: 'One more tape to its middle' }).className).toContain(
      'button-main',
    );
    expect(screen.getByRole('button', { name: 'It is shaved: read it again' })).toBeTruthy();
  });
});

describe('the depth', () => {
  test('is one figure: the keypad asks for what the card says', async () => {
    await open(DIGGABLE);
    press('Log as-dug');
    expect(screen.getByText(/Dig to 4′\s0\s3\/8″\./)).toBeTruthy();
  });

  test.each([
    ['nothing', '0', /must be more than zero/],
    ['more than a person digs', '33 0', /is more than 16′.4.7\/8″; type that or less/],
  ])('of %s is refused in words, and stays to be mended', async (_what, typed, words) => {
    const job = await open(DIGGABLE);
    press('Log as-dug');
    typeReading(typed);
    press(/^Read it/);
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(words);
    expect(await job.log()).toHaveLength(DIGGABLE.length);
  });

  test('from a string above the lip comes to the depth below the lip, and the log says how', async () => {
    const job = await open(DIGGABLE);
    press('Log as-dug');
    press('From another mark than the lip');
    await whole();
    press('A string over the hole');
    typeReading('1 0');
    press(/^Read it/);
    typeReading('0 6');
    press(/^Read it/);
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
      /“0 6” is less than the 1′.0″ from the lip up to the string; type that or more/,
    );
    for (let i = 0; i < 3; i++) fireEvent.keyDown(document.body, { key: 'Backspace' });
    typeReading('5 2');
    press(/^Read it/);
    // Back from the width leads to what was read from the string, still typed.
    await screen.findByRole('heading', { name: `Width of hole ${FIRST}`, hidden: true });
    press('Back');
    await screen.findByRole('heading', { name: `From the string down, hole ${FIRST}`, hidden: true });
    press(/^Read it/);
    typeReading('1 6');
    press(/^Read it/);
    choose('Nothing');
    press('Log it');
    await vi.waitFor(
      async () =>
        expect((await job.log()).at(-1)!.body).toMatchObject({
          kind: 'dug',
          depth: { typed: '4′ 2″' },
          mark: { from: 'string', reading: { typed: '5 2' }, above: { typed: '1 0' } },
        }),
      8000,
    );
  });

  test('is taken from the level where it has read both the lip and the bottom', async () => {
    const rod = (on: HeightPoint, reading: string): Body => ({
      kind: 'rod',
      setup: '1',
      on,
      reading: inches(reading),
    });
    const job = await open(
      [
        ...DIGGABLE,
        dug(FIRST, '3 0'),
        rod({ point: 'benchmark' }, '4 0'),
        rod({ point: 'ground', hole: FIRST }, '4 6'),
        rod({ point: 'bottom', hole: FIRST }, '8 8'),
      ],
      FIRST,
    );
    press('Log as-dug again');
    press('From another mark than the lip');
    await whole();
    press(/^By the level: 4′.2″$/);
    typeReading('1 6');
    press(/^Read it/);
    choose('Nothing');
    press('Log it');
    await vi.waitFor(
      async () =>
        expect((await job.log()).at(-1)!.body).toMatchObject({
          kind: 'dug',
          depth: { typed: '4′ 2″' },
          mark: { from: 'level' },
        }),
      8000,
    );
  });

  test('of one hole can be another, with a reason; less than the rules ask then waits for a decision', async () => {
    const job = await open(DIGGABLE);
    press('Another depth for this hole');
    await screen.findByRole('heading', { name: `Another depth for hole ${FIRST}`, hidden: true });
    press('Put it in the plan');
    expect(screen.getAllByRole('alert', { hidden: true })).toHaveLength(2);
    for (const [label, text] of [
      ['Depth of this hole', '3 0'],
      ['Why', 'ledge at three feet'],
    ] as const)
      fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
    press('Put it in the plan');
    await screen.findByText(/^Hole 2 is not ready to dig|^Dig hole 2/);
    await open(
      (await job.log()).map(({ body }) => body),
      FIRST,
    );
    expect(heading()).toBe(`Hole ${FIRST} is not ready to dig`);
    expect(document.body.textContent).toMatch(
      /Hole 1 has a depth of its own, 3′\s0″ \(ledge at three feet\), 1′\s0″ less than the 4′\s0″ that the rules ask.*has to agree/,
    );
    expect(screen.getByRole('button', { name: 'Enter the decision' })).toBeTruthy();
  });
});

describe('where a level is in use', () => {
  const LEVELLED: Body[] = [
    ...DIGGABLE,
    { kind: 'rod', setup: '1', on: { point: 'benchmark' }, reading: inches('4 0') },
  ];

  /** Entries are made on the second of May. */
  const onDay = (day: number) =>
    vi.useFakeTimers({ toFake: ['Date'], now: new Date(`2026-05-0${day}T14:30:00Z`) });

  test('that was set up anew, the benchmark is read first, and the button and the keypad say so', async () => {
    onDay(3);
    await open(LEVELLED);
    press('Read the rod on the benchmark');
    await screen.findByRole('heading', { name: /benchmark/, hidden: true });
    expect(screen.queryByRole('heading', { name: /stake A/, hidden: true })).toBeNull();
  });

  test('the ground is read before it is dug, and one tap goes on without it', async () => {
    onDay(2);
    await open(LEVELLED);
    expect(screen.getByRole('button', { name: 'Read the rod on stake A' }).className).toContain(
      'button-main',
    );
    expect(screen.getByRole('button', { name: 'Log as-dug' })).toBeTruthy();
    const read = (on: HeightPoint): Body => ({ kind: 'rod', setup: '1', on, reading: inches('5 0') });
    const both = [read({ point: 'stake', label: 'A' }), read({ point: 'stake', label: 'B' })];
    await open([...LEVELLED, ...both]);
    expect(screen.getByRole('button', { name: `Read the rod on the ground at hole ${FIRST}` })).toBeTruthy();
    await open([...LEVELLED, ...both, read({ point: 'ground', hole: FIRST })]);
    expect(screen.getByRole('button', { name: 'Log as-dug' }).className).toContain('button-main');
  });
});

describe('while a dug hole is open', () => {
  const ROCK = [...DIGGABLE, dug(FIRST, '4 2', 'rock')];

  test('its bottom and its gravel are ticked on its card, each logged for its hole', async () => {
    const job = await open([...DIGGABLE, dug('3', '4 2')], '3');
    tap(/^Clean, and measured again/);
    await vi.waitFor(() => expect(screen.queryByRole('button', { name: /^Clean/ })).toBeNull());
    tap(/^The gravel is in/);
    await vi.waitFor(() => expect(screen.queryByRole('button', { name: /^The gravel/ })).toBeNull());
    const whileOpen = within(screen.getByRole('region', { name: 'While hole 3 is open' }));
    expect(whileOpen.getAllByRole('listitem').map(({ textContent }) => textContent?.slice(0, 12))).toEqual([
      'Clean, and m',
      'The gravel i',
    ]);
    expect((await job.log()).slice(-2).map(({ body }) => body)).toEqual([
      { kind: 'check', item: 'clean', hole: '3', done: true },
      { kind: 'check', item: 'gravel', hole: '3', done: true },
    ]);
  });

  test('the next hole’s card leads back to it until nothing is open', async () => {
    await open([...DIGGABLE, dug(FIRST, '4 2')], SECOND);
    expect(heading()).toBe(`Dig hole ${SECOND}, with its sides upright`);
    expect(link(`Hole ${FIRST} is dug; open: its middle, clean, gravel`)).toMatch(
      new RegExp(`/dig/${FIRST}$`),
    );
    await open(
      [
        ...DIGGABLE,
        dug(FIRST, '4 2'),
        { kind: 'check', item: 'clean', hole: FIRST, done: true },
        { kind: 'check', item: 'gravel', hole: FIRST, done: true },
        ...middleOf(FIRST),
      ],
      SECOND,
    );
    expect(screen.queryByRole('link', { name: /is dug; open/ })).toBeNull();
  });

  test('nothing is asked for here once the post stands', async () => {
    await open(
      [...DIGGABLE, dug(FIRST, '4 2'), { kind: 'stand', thing: { kind: 'post', hole: FIRST }, event: 'set' }],
      FIRST,
    );
    expect(screen.queryByRole('button', { name: /^Clean/ })).toBeNull();
  });

  test('what was met is decided where it was met, and the hole is then judged by its size', async () => {
    const job = await open(ROCK, FIRST);
    press('Enter the decision');
    await painted();
    press('Log the decision');
    expect(screen.getAllByRole('alert', { hidden: true }).map(({ textContent }) => textContent)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^Who decided is empty/)]),
    );
    for (const [label, text] of [
      ['Who decided', 'Ms Lind'],
      ['What was decided', 'rock is sound'],
    ] as const)
      fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
    press('Log the decision');
    await screen.findByText(/^Hole .* is in: deep and wide enough/);
    expect(screen.getByText('Rock was met: decided at the inspection of this hole.')).toBeTruthy();
    expect((await job.log()).at(-1)!.body).toMatchObject({
      kind: 'check',
      item: 'inspection',
      hole: FIRST,
      note: 'Ms Lind: rock is sound',
    });
  });
});
