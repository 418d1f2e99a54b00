// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { ofKind, standing } from '../../../src/job/log.ts';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
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
  PLAN,
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

function type(label: string, text: string) {
  fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
  fireEvent.blur(screen.getByLabelText(label));
}

/** What the card for the next thing says of the stake that was just read; null where it says nothing. */
const justRead = (hole: string): string | null =>
  [...document.querySelectorAll('.verdict-word')]
    .map(({ textContent }) => (textContent ?? '').replace(/\u00a0/g, ' '))
    .find((words) => words.startsWith(`Stake ${hole}: `)) ?? null;

/** A second tap sooner than this on the same button is taken for a tremble. */
const beyondRepeat = () => new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));

/** Chooses which way a length of A or B counts. */
function side(which: 'A' | 'B', way: 'left' | 'right' | 'in front' | 'behind') {
  const across = way === 'left' || way === 'right';
  const name = `${which}: which way, ${across ? 'left or right' : 'in front or behind'}, as you face the plan’s front`;
  fireEvent.click(within(screen.getByRole('group', { name })).getByRole('radio', { name: way }));
}

describe('where A and B go', () => {
  test('the tool’s proposal is logged as the tool’s, in the steps of the units', async () => {
    const job = await open(PLAN);
    expect(heading()).toBe('Choose where A and B go');
    tap('Use these stakes');
    await screen.findByText('First have buried utilities marked');
    expect(await last(job)).toMatchObject({ kind: 'site', chosenBy: 'tool' });
  });

  test('the user’s own places are judged as they are typed, and logged as the user’s', async () => {
    const job = await open(PLAN);
    tap('I say where A and B are');
    type('A: how far to the side of the centre', '3 0');
    type('A: how far before or behind the centre', '30 0');
    type('B: how far to the side of the centre', '3 0');
    type('B: how far before or behind the centre', '30 0');
    expect(screen.queryByText(/^At the worst hole/)).toBeNull();
    side('A', 'left');
    side('A', 'behind');
    side('B', 'right');
    side('B', 'behind');
    expect(screen.getByText(/^What your own choice costs: /).textContent).toContain('the best places give');
    tap('Use these places');
    expect(
      screen
        .getAllByRole('alert')
        .at(-1)!
        .textContent!.replace(/\u00a0/g, ' '),
    ).toMatch(
      /^What your own choice costs: [\d.]+ times the error\. At the worst hole, \d+, tapes are good to .+ from here; the best places give .+\. (The flattest crossing is|There the tapes cross at) \d+°.* To use them all the same, tap again\.$/,
    );
    expect(await job.log()).toHaveLength(PLAN.length);
    await beyondRepeat();
    tap('Use these places');
    await screen.findByText('First have buried utilities marked');
    expect(await last(job)).toMatchObject({
      kind: 'site',
      chosenBy: 'user',
      a: { right: { typed: '-3 0' }, front: { typed: '-30 0' } },
      b: { right: { typed: '3 0' }, front: { typed: '-30 0' } },
    });
  });

  test('a place that is not typed is named, and nothing is logged', async () => {
    const job = await open(PLAN);
    tap('I say where A and B are');
    tap('Use these places');
    expect(screen.getByRole('alert').textContent).toMatch(
      /^A: how far to the side of the centre: it is empty; type/,
    );
    expect(await job.log()).toHaveLength(PLAN.length);
    type('A: how far to the side of the centre', '3 0');
    expect(screen.queryByRole('alert')).toBeNull();
    await beyondRepeat();
    tap('Use these places');
    expect(screen.getByRole('alert').textContent).toBe(
      'A: which way, left or right, as you face the plan’s front: nothing is chosen; choose one.',
    );
    side('A', 'left');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(await job.log()).toHaveLength(PLAN.length);
  });

  test('no side is chosen before the user chooses one; a place that lies on the line needs none', async () => {
    const job = await open(PLAN);
    tap('I say where A and B are');
    expect(screen.getAllByRole('radio').filter((radio) => (radio as HTMLInputElement).checked)).toEqual([]);
    type('A: how far to the side of the centre', '0');
    type('A: how far before or behind the centre', '30 0');
    type('B: how far to the side of the centre', '30 0');
    type('B: how far before or behind the centre', '30 0');
    side('A', 'behind');
    side('B', 'left');
    side('B', 'behind');
    tap('Use these places');
    await screen.findByText('First have buried utilities marked');
    expect(await last(job)).toMatchObject({ a: { right: { m: 0 } }, b: { right: { typed: '-30 0' } } });
  });

  test('A and B at one place are refused in words, and nothing is logged', async () => {
    const job = await open(PLAN);
    tap('I say where A and B are');
    for (const stake of ['A', 'B'] as const) {
      type(`${stake}: how far to the side of the centre`, '8 0');
      type(`${stake}: how far before or behind the centre`, '30 0');
      side(stake, 'left');
      side(stake, 'behind');
    }
    tap('Use these places');
    const told = screen.getAllByRole('alert').map(({ textContent }) => textContent!.replace(/\u00a0/g, ' '));
    expect(told.at(-1)).toMatch(/^A and B: they are 0″ apart; they must be .+ apart or more\.$/);
    await beyondRepeat();
    tap('Use these places');
    expect(await job.log()).toHaveLength(PLAN.length);
  });

  test('what is too near a line is one line on the card of the hole concerned, and nothing on others', async () => {
    const at = (right: number) => ({ m: right, typed: String(right), units: 'm' as const });
    const end = (front: number) => ({ by: 'plan' as const, right: at(0.5), front: at(front) });
    const line = { name: 'Boundary', kind: 'boundary' as const, from: end(-9), to: end(9) };
    const log = READY.map((body) =>
      body.kind === 'plan' ? { ...body, plan: { ...body.plan, lines: [line] } } : body,
    );
    const told = () => screen.queryByText('By the plan this post comes too near Boundary.') !== null;
    const cards: boolean[] = [];
    for (const hole of ORDER) {
      await open(log, hole);
      expect(screen.queryByRole('region', { name: 'Caution: too near a line' })).toBeNull();
      cards.push(told());
      cleanup();
    }
    expect(new Set(cards)).toEqual(new Set([true, false]));
  });

  test('can be changed later, with a warning', async () => {
    await open(READY);
    tap('The line A–B');
    tap('Move A and B');
    expect(screen.getByRole('region', { name: 'Caution: stakes driven before' })).toBeTruthy();
    tap('Leave them');
    expect(heading()).toContain(`Hole ${FIRST}`);
  });
});

describe('up to the line A–B', () => {
  test('services, A, B, and the tape between them', async () => {
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
