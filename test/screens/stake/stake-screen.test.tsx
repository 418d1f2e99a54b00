// @vitest-environment happy-dom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { ofKind, standing } from '../../../src/job/log.ts';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { formatLength } from '../../../src/units/index.ts';
import { samplePlan } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { heading, tap, tapWhenThere, typeReading } from '../taps.ts';
import {
  BASELINE,
  CHECK_SET,
  CHECKS,
  checked,
  DIGGABLE,
  fromA,
  fromB,
  holeStake,
  MARKED,
  ORDER,
  PLACED,
  PROVED,
  PULLS,
  pull,
  READY,
  STAKED,
  stake,
  stand,
  unsure,
} from './field-day.ts';

onTheFieldDay();

const open = (bodies: readonly Body[], hole: string | null = null) => openScreen(StakeScreen, bodies, hole);
const [FIRST, SECOND] = ORDER as [string, string];
const reading = (m: number) => formatLength(m, samplePlan.units);
const FOOT = 0.3048;
/** The words on the one main action. */
const main = () => document.querySelector('button.button-main')?.textContent;
const last = async (job: Awaited<ReturnType<typeof open>>) => (await job.log()).at(-1)!.body;

/** What the card for the next thing says of the stake that was just read; null where it says nothing. */
const justRead = (hole: string): string | null =>
  [...document.querySelectorAll('.verdict-word')]
    .map(({ textContent }) => (textContent ?? '').replace(/\u00a0/g, ' '))
    .find((words) => words.startsWith(`Stake ${hole}: `)) ?? null;

describe('up to the line A–B', () => {
  test('utilities, A, B, and the tape between them', async () => {
    const job = await open(PLACED);
    tap('Utilities are marked');
    await tapWhenThere('Stake A driven');
    await tapWhenThere('Stake B driven');
    await tapWhenThere('Read the tape from A to B');
    typeReading(reading(BASELINE));
    tap(/^Read it/);
    await screen.findByText(`Hole ${FIRST}: drive a stake where both tapes meet`);
    const kinds = (await job.log()).slice(PLACED.length).map(({ body }) => body.kind);
    expect(kinds).toEqual(['check', 'stand', 'stand', 'pull']);
  });

  test('a pulled length that differs moves the lengths from B with it', async () => {
    await open(
      [...MARKED, stand(stake('A')), stand(stake('B')), pull(stake('A'), stake('B'), BASELINE + 0.0508)],
      '3',
    );
    const { station, offset, fromA: a, fromB: b } = PULLS.get('3')!;
    expect(document.body.textContent).toContain(reading(a));
    expect(document.body.textContent).toContain(reading(Math.hypot(BASELINE + 0.0508 - station, offset)));
    expect(document.body.textContent).not.toContain(reading(b));
  });
});

describe('one hole', () => {
  test('is driven and read back from A and from B', async () => {
    const job = await open(READY);
    expect(document.body.textContent).toContain(reading(PULLS.get(FIRST)!.fromA));
    tap('Stake driven');
    await tapWhenThere('Read the tape from A');
    typeReading(reading(PULLS.get(FIRST)!.fromA));
    tap(/^Read it/);
    await tapWhenThere('Read the tape from B');
    typeReading(reading(PULLS.get(FIRST)!.fromB));
    tap(/^Read it/);
    await screen.findByText(`Hole ${SECOND}: drive a stake where both tapes meet`);
    expect(justRead(FIRST)).toMatch(/: in, .+″ ± .+″, unchecked$/);
    const bodies = (await job.log()).slice(READY.length).map(({ body }) => body);
    expect(bodies).toEqual([
      { kind: 'stand', thing: { kind: 'hole-stake', hole: FIRST }, event: 'driven' },
      expect.objectContaining({
        kind: 'pull',
        hold: { how: 'level' },
        reading: expect.objectContaining({ typed: reading(PULLS.get(FIRST)!.fromA) }),
      }),
      expect.objectContaining({ kind: 'pull', hold: { how: 'level' } }),
    ]);
  });

  test('its verdict is not told before it has one, nor twice on its own card', async () => {
    await open([...READY, stand(holeStake(FIRST)), stand(holeStake(SECOND))], FIRST);
    tap('Read the tape from A');
    typeReading(reading(PULLS.get(FIRST)!.fromA));
    tap(/^Read it/);
    await tapWhenThere('Read the tape from B');
    expect(justRead(FIRST)).toBeNull();
    typeReading(reading(PULLS.get(FIRST)!.fromB));
    tap(/^Read it/);
    // The card of this very stake says it in its head.
    await screen.findByText(`Stake ${FIRST} is in, unchecked`);
    expect(justRead(FIRST)).toBeNull();
  });

  test('a check pull is about two stakes, so the verdict of neither is told after it', async () => {
    await open(STAKED);
    const { expected } = CHECKS[0]!;
    tap('Read the tape');
    typeReading(reading(expected));
    tap(/^Read it/);
    await screen.findByText(/^Saved: Pull stake/);
    for (const hole of ORDER) expect(justRead(hole)).toBeNull();
  });

  test('a double tap logs once', async () => {
    const job = await open(READY);
    tap('Stake driven');
    tap('Stake driven');
    await screen.findByText(`Stake ${FIRST}: read the tape back from A`);
    expect(ofKind(await job.log(), 'stand')).toHaveLength(3);
  });

  test('that is not saved says so, and can be tried again', async () => {
    const job = await open(READY);
    fillDisk('aborted');
    tap('Stake driven');
    await screen.findAllByText(/not saved/i);
    expect(await job.log()).toHaveLength(READY.length);
    vi.restoreAllMocks();
    expect(heading()).toContain('drive a stake');
  });

  test('in the address stays in front, whatever is next', async () => {
    await open(STAKED, SECOND);
    expect(heading()).toContain(`Stake ${SECOND} is in`);
    expect(screen.getByRole('link', { name: 'Go on' })).toBeTruthy();
  });

  test('Later leads to the next hole that wants something', async () => {
    await open(READY);
    const later = screen.getByRole('link', { name: `Later: go on to hole ${SECOND}` });
    expect(later.getAttribute('href')).toMatch(new RegExp(`/stake/${SECOND}$`));
  });

  test('that is out says which way to shift, and opens a new stand when moved', async () => {
    const job = await open([...READY, stand(holeStake(FIRST)), fromA(FIRST, 0.08), fromB(FIRST)]);
    expect(heading()).toMatch(new RegExp(`^Stake ${FIRST} is out by`));
    expect(screen.getByText(new RegExp(`^Stake ${FIRST}: shift it \\d.*(pier|clockwise)`))).toBeTruthy();
    tap('Stake moved');
    await screen.findByText(`Stake ${FIRST}: read the tape back from A`);
    expect(await last(job)).toMatchObject({ kind: 'stand', event: 'moved' });
  });

  test('that is out by a foot on one tape asks for the pull again before any shift', async () => {
    const wrong = fromA(FIRST, FOOT);
    await open([...READY, stand(holeStake(FIRST)), wrong, fromB(FIRST)]);
    expect(heading()).toMatch(new RegExp(`^Stake ${FIRST} is out by`));
    expect(screen.getByText(/One foot too much: is it .* Pull it again before you shift/)).toBeTruthy();
    expect(main()).toBe('Read the tape from A again');
    expect(screen.getByRole('button', { name: 'Stake moved' }).className).not.toContain('button-main');
  });

  test('whose first reading was a foot long has it struck once the tape was pulled again', async () => {
    const wrong = fromA(FIRST, FOOT);
    const job = await open([...READY, stand(holeStake(FIRST)), wrong, fromB(FIRST), fromA(FIRST)]);
    tap(/^Strike \d/);
    fireEvent.click(screen.getByRole('radio', { name: 'misread', hidden: true }));
    tap('Strike it');
    await screen.findByText(`Hole ${SECOND}: drive a stake where both tapes meet`);
    expect(standing(await job.log())).not.toContainEqual(expect.objectContaining({ body: wrong }));
  });

  test('that reads the same foot again is to be shifted: it was no slip', async () => {
    const out = fromA(FIRST, FOOT);
    await open([...READY, stand(holeStake(FIRST)), out, fromB(FIRST), out]);
    expect(main()).toBe('Stake moved');
  });

  test('that is unsure stops the staking, says why, and asks for the rise', async () => {
    await open([...READY, ...unsure(FIRST)]);
    expect(heading()).toMatch(new RegExp(`^Stake ${FIRST} is unsure`));
    expect(document.body.textContent).toContain('it may be in or out');
    expect(document.body.textContent).toContain('enter the rise, or pull level');
    expect(document.body.textContent).toContain('sloping, rise not known');
    expect(main()).toBe('Read the tape from A again');
    tap('Later');
    await screen.findByText(`Hole ${SECOND}: drive a stake where both tapes meet`);
  });

  test('a sloping tape is told from the level length beside it', async () => {
    await open(READY);
    fireEvent.click(screen.getByRole('radio', { name: 'Sloping' }));
    expect(screen.getAllByText('level length; along the slope the tape reads more')).toHaveLength(2);
    fireEvent.click(screen.getByRole('radio', { name: 'Level' }));
    expect(screen.queryByText('level length; along the slope the tape reads more')).toBeNull();
  });

  test('a reading can be struck where it is shown', async () => {
    const job = await open(STAKED, FIRST);
    tap(`More on stake ${FIRST}`);
    fireEvent.click(screen.getAllByRole('button', { name: /^Strike: Pull A/ })[0]!);
    fireEvent.click(screen.getByRole('radio', { name: 'misread', hidden: true }));
    tap('Strike it');
    await screen.findByText(`Stake ${FIRST}: read the tape back from A`);
    expect(standing(await job.log())).toHaveLength(STAKED.length - 1);
  });
});

describe('proof', () => {
  test('a check pull is read against what it should read', async () => {
    const job = await open(STAKED);
    const { expected } = CHECKS[0]!;
    expect(heading()).toMatch(/^Check pull: stake/);
    tap('Read the tape');
    typeReading(reading(expected));
    tap(/^Read it/);
    await waitFor(async () => expect(await job.log()).toHaveLength(STAKED.length + 1));
    expect(await last(job)).toMatchObject({ kind: 'pull', from: CHECKS[0]!.from, to: CHECKS[0]!.to });
  });

  test('any check pull is one tap away, and says what it read', async () => {
    await open([...STAKED, ...checked(1)]);
    tap('Check pulls: 1 read');
    expect(document.body.textContent).toContain(
      `These ${CHECK_SET.guarding.length} pulls guard every hole: a misreading of 1″ in any one pull shows. ${CHECK_SET.guarding.length - 1} to go.`,
    );
    const rows = screen.getAllByRole('button', { name: /^stake \w+ to stake/ });
    expect(rows).toHaveLength(CHECKS.length);
    expect(rows[0]!.textContent).toMatch(/read \d/);
    expect(rows[1]!.textContent).toContain('not read yet');
  });

  test('a reading that looks wrong stands on top with its ways out', async () => {
    const { from, to, expected } = CHECKS[0]!;
    const wrong = pull(from.thing, to.thing, expected + 0.3048);
    await open([...STAKED, ...checked(CHECKS.length).slice(1), wrong]);
    const box = screen.getByRole('region', { name: 'Caution: a reading looks wrong' });
    expect(box.textContent).toMatch(/looks 1′\s.* too long/);
    expect(screen.getByRole('button', { name: /^Strike: Pull stake/ })).toBeTruthy();
    expect(screen.getByRole('button', { name: /^Pull again: Pull stake/ })).toBeTruthy();
  });

  test('ties end it, and the way leads to Dig', async () => {
    const job = await open(PROVED);
    tap('Two ways back are set');
    await screen.findByText('Every stake that still stands is in and checked');
    expect(await last(job)).toEqual({ kind: 'check', item: 'ties', done: true });
    expect(screen.getByRole('link', { name: 'Go to Dig' }).getAttribute('href')).toMatch(/\/dig$/);
  });

  test('a single stake moved since has its own ties asked for', async () => {
    const job = await open([
      ...DIGGABLE,
      stand(holeStake('4'), 'moved'),
      fromA('4'),
      fromB('4'),
      ...checked(CHECKS.length),
    ]);
    tap('Two ways back are set');
    await waitFor(async () =>
      expect(await last(job)).toEqual({ kind: 'check', item: 'ties', done: true, hole: '4' }),
    );
  });
});
