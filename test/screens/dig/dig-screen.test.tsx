// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { inches } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { painted } from '../plan/open-screen.tsx';
import { press } from '../press.ts';
import { DIGGABLE, dug, middleOf, ORDER, PLACED, PLAN, PROVED, STAKED } from '../stake/field-day.ts';
import { heading, tap } from '../taps.ts';
import { choose, link, openDig, typeDug } from './dig-taps.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const [FIRST, SECOND] = ORDER as [string, string];

test('leads to the plan, or to the stakes, while there is nothing to dig', async () => {
  await openDig([]);
  expect(link('Go to the plan')).toMatch(/\/plan$/);
  await openDig(PLAN);
  expect(link('Go to the stakes')).toMatch(/\/stake$/);
});

describe('a hole that may not be dug yet', () => {
  test('says what is missing, and leads to the stake', async () => {
    await openDig(PLACED, '3');
    expect(heading()).toBe('Hole 3 is not ready to dig');
    const gate = screen.getByRole('list', { name: 'Before hole 3 is dug' });
    expect(within(gate).getAllByText(/^missing/).length).toBeGreaterThan(2);
    expect(link('Go to stake 3')).toMatch(/\/stake\/3$/);
  });

  test('has its ties ticked on the spot', async () => {
    const job = await openDig(PROVED);
    tap('Two ways back are set');
    await screen.findByText(`Dig hole ${FIRST}, with its sides upright`);
    expect((await job.log()).at(-1)!.body).toEqual({ kind: 'check', item: 'ties', hole: FIRST, done: true });
  });

  test('can be logged all the same: the log says what is so', async () => {
    const job = await openDig(STAKED, '3');
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
    await openDig(DIGGABLE);
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
    const job = await openDig(DIGGABLE);
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
    const job = await openDig(DIGGABLE);
    tap('Log as-dug');
    typeDug('4 2', '1 6');
    tap('Log it');
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
      /nothing is chosen; choose Nothing/,
    );
    expect(await job.log()).toHaveLength(DIGGABLE.length);
  });

  test('that is not saved stays on the screen with the reason', async () => {
    const job = await openDig(DIGGABLE);
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
    const job = await openDig([...DIGGABLE, dug(FIRST, '3 6')]);
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
    await openDig([...DIGGABLE, dug('3', '4 6', 'rock')], '3');
    expect(heading()).toBe('Hole 3 is unsure: it waits for a decision');
    expect(screen.getByText(/a decision by whoever is responsible/)).toBeTruthy();
    expect(screen.getByRole('link', { name: /^Hole 3/ }).textContent).toContain('waits for a decision');
  });

  test('all of them lead on to Set', async () => {
    await openDig([...DIGGABLE, ...ORDER.map((hole) => dug(hole, '4 2'))]);
    expect(heading()).toBe('Every hole is deep and wide enough');
    expect(link('Go to Set')).toMatch(/\/set$/);
  });
});

describe('while a dug hole is open', () => {
  const ROCK = [...DIGGABLE, dug(FIRST, '4 2', 'rock')];

  test('its bottom and its gravel are ticked on its card, each logged for its hole', async () => {
    const job = await openDig([...DIGGABLE, dug('3', '4 2')], '3');
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
    await openDig([...DIGGABLE, dug(FIRST, '4 2')], SECOND);
    expect(heading()).toBe(`Dig hole ${SECOND}, with its sides upright`);
    expect(link(`Hole ${FIRST} is dug; open: its middle, clean, gravel`)).toMatch(
      new RegExp(`/dig/${FIRST}$`),
    );
    await openDig(
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
    await openDig(
      [...DIGGABLE, dug(FIRST, '4 2'), { kind: 'stand', thing: { kind: 'post', hole: FIRST }, event: 'set' }],
      FIRST,
    );
    expect(screen.queryByRole('button', { name: /^Clean/ })).toBeNull();
  });

  test('what was met is decided where it was met, and the hole is then judged by its size', async () => {
    const job = await openDig(ROCK, FIRST);
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
