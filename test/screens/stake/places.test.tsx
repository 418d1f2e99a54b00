// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { heading, tap } from '../taps.ts';
import { ORDER, PLAN, READY } from './field-day.ts';

onTheFieldDay();

const open = (bodies: readonly Body[], hole: string | null = null) => openScreen(StakeScreen, bodies, hole);
const [FIRST] = ORDER as [string];
const last = async (job: Awaited<ReturnType<typeof open>>) => (await job.log()).at(-1)!.body;

function type(label: string, text: string) {
  fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
  fireEvent.blur(screen.getByLabelText(label));
}

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
