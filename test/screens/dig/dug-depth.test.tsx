// @vitest-environment happy-dom
import { cleanup, fireEvent, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body, HeightPoint } from '../../../src/job/entry-schema.ts';
import { inches } from '../../job/sample.ts';
import { press, whole } from '../press.ts';
import { DIGGABLE, dug, ORDER } from '../stake/field-day.ts';
import { heading, typeReading } from '../taps.ts';
import { choose, openDig } from './dig-taps.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const [FIRST] = ORDER as [string];

describe('the depth', () => {
  test('is one figure: the keypad asks for what the card says', async () => {
    await openDig(DIGGABLE);
    press('Log as-dug');
    expect(screen.getByText(/Dig to 4′\s0\s3\/8″\./)).toBeTruthy();
  });

  test.each([
    ['nothing', '0', /must be more than zero/],
    ['more than a person digs', '33 0', /is more than 16′.4.7\/8″; type that or less/],
  ])('of %s is refused in words, and stays to be mended', async (_what, typed, words) => {
    const job = await openDig(DIGGABLE);
    press('Log as-dug');
    typeReading(typed);
    press(/^Read it/);
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(words);
    expect(await job.log()).toHaveLength(DIGGABLE.length);
  });

  test('from a string above the lip comes to the depth below the lip, and the log says how', async () => {
    const job = await openDig(DIGGABLE);
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
    const job = await openDig(
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
    const job = await openDig(DIGGABLE);
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
    await openDig(
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
    await openDig(LEVELLED);
    press('Read the rod on the benchmark');
    await screen.findByRole('heading', { name: /benchmark/, hidden: true });
    expect(screen.queryByRole('heading', { name: /stake A/, hidden: true })).toBeNull();
  });

  test('the ground is read before it is dug, and one tap goes on without it', async () => {
    onDay(2);
    await openDig(LEVELLED);
    expect(screen.getByRole('button', { name: 'Read the rod on stake A' }).className).toContain(
      'button-main',
    );
    expect(screen.getByRole('button', { name: 'Log as-dug' })).toBeTruthy();
    const read = (on: HeightPoint): Body => ({ kind: 'rod', setup: '1', on, reading: inches('5 0') });
    const both = [read({ point: 'stake', label: 'A' }), read({ point: 'stake', label: 'B' })];
    await openDig([...LEVELLED, ...both]);
    expect(screen.getByRole('button', { name: `Read the rod on the ground at hole ${FIRST}` })).toBeTruthy();
    await openDig([...LEVELLED, ...both, read({ point: 'ground', hole: FIRST })]);
    expect(screen.getByRole('button', { name: 'Log as-dug' }).className).toContain('button-main');
  });
});
