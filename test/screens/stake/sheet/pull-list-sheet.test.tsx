// @vitest-environment happy-dom
import { readFileSync } from 'node:fs';
import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../../src/job/entry-schema.ts';
import type { Plan } from '../../../../src/job/plan-schema.ts';
import { situate } from '../../../../src/judge/situation.ts';
import { StakeScreen } from '../../../../src/screens/stake/stake-screen.tsx';
import { formatLength } from '../../../../src/units/index.ts';
import { metres, ringPlan, rowsPlan } from '../../../plan/plans.ts';
import { openScreen } from '../../plan/open-screen.tsx';
import { press, whole } from '../../press.ts';
import { tick } from '../field-day.ts';
import { expectPlaces, type Printed } from './read-back.ts';
import { entriesOf, type Slope, slopingLog, stakesBefore } from './sloping-job.ts';

afterEach(() => {
  localStorage.clear();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const NAIL = { at: 'nail' } as const;
const A = { kind: 'stake', label: 'A' } as const;
const B = { kind: 'stake', label: 'B' } as const;

/** Utilities marked, A and B driven, and A–B pulled just as planned. */
function readyLog(plan: Plan, slope: Slope | null): Body[] {
  const log = slopingLog(plan, stakesBefore(plan), slope);
  const { baseline } = situate(entriesOf(log)).laid!;
  const [ofPlan, ofSite, ...heights] = log;
  return [
    ofPlan!,
    ofSite!,
    tick('utilities'),
    { kind: 'stand', thing: A, event: 'driven' },
    { kind: 'stand', thing: B, event: 'driven' },
    {
      kind: 'pull',
      from: { thing: A, touch: NAIL },
      to: { thing: B, touch: NAIL },
      reading: metres(baseline),
      hold: { how: 'level' },
    },
    // A stake that is driven after its ground was read is another stake.
    ...heights,
  ];
}

async function openList(plan: Plan, slope: Slope | null): Promise<Body[]> {
  const log = readyLog(plan, slope);
  await openScreen(StakeScreen, log);
  press('Pull list, and sheet for paper');
  await whole();
  return log;
}

const dialog = () => within(screen.getByRole('dialog', { name: /^(Pull list|Staking sheet)$/ }));

const holes = () => dialog().getAllByRole('region', { name: /^Hole / });

/** What the list shows at large, hole by hole. */
const shown = (): Printed[] =>
  holes().map((region) => {
    const [fromA, fromB] = [...region.querySelectorAll('.figure')].map(({ textContent }) => textContent!);
    return {
      hole: /^Hole (\S+),/.exec(region.getAttribute('aria-label')!)![1]!,
      fromA: fromA!,
      fromB: fromB!,
    };
  });

const choose = (label: string) => fireEvent.click(dialog().getByLabelText(label));

describe('the pull list on the screen', () => {
  test.each([
    ['m', ringPlan({ count: 5, pier: true })],
    ['ft-in-16', rowsPlan({ columns: 3, rows: 2 })],
    ['ft-in-32', ringPlan({ count: 4 })],
    ['ft', ringPlan({ count: 3 })],
    ['mm', rowsPlan({ columns: 2, rows: 2 })],
  ] as const)('stakes driven by it stand where they were planned, in %s', async (units, plan) => {
    const log = await openList({ ...plan, units }, { grade: 0.2, way: 0.6 });
    const situation = situate(entriesOf(log));
    expectPlaces(situation, shown(), 'level');
    choose('Sloping');
    expectPlaces(situation, shown(), 'slope');
    choose('Level');
  });

  test('says each hole’s side and crossing, and the other way to hold the tape', async () => {
    await openList(ringPlan({ count: 4 }), { grade: 0.3, way: 0 });
    for (const region of holes()) {
      expect(region.textContent).toMatch(/^Hole \d, left of A–B/);
      expect(region.textContent).toMatch(/The tapes cross at \d+°: good to/);
      expect(within(region).getAllByText(/along the slope \d/)).toHaveLength(2);
    }
  });

  test('where no rise is known it says so, and leads to the heights', async () => {
    await openList(ringPlan({ count: 3 }), null);
    expect(dialog().getByText(/^The rise of any tape is not known\. Hold them level/)).toBeTruthy();
    expect(dialog().getByRole('button', { name: 'Heights and the level' })).toBeTruthy();
    expect(dialog().queryByText(/along the slope \d/)).toBeNull();
    choose('Sloping');
    // No figure at large that a tape along the slope would not read.
    expect(document.querySelectorAll('[aria-label^="Hole "] .figure')).toHaveLength(0);
    expect(dialog().getAllByText(/^From [AB]’s nail: read heights first\. Held level \d/)).toHaveLength(6);
    choose('Level');
  });

  test('shows forty holes at first, and all when asked', async () => {
    await openList(rowsPlan({ columns: 9, rows: 5 }), null);
    expect(holes()).toHaveLength(40);
    press('Show all 45 holes');
    expect(holes()).toHaveLength(45);
  });
});

describe('a hole’s own card', () => {
  test('has the length along the slope beside the level one, where the ground was read', async () => {
    await openScreen(StakeScreen, readyLog(ringPlan({ count: 4 }), { grade: 0.3, way: 0.4 }));
    expect(screen.getAllByText('tape level')).toHaveLength(2);
    expect(screen.getAllByText(/^along the slope \d/)).toHaveLength(2);
    fireEvent.click(screen.getByLabelText('Sloping'));
    expect(screen.getAllByText('tape along the slope')).toHaveLength(2);
    expect(screen.getAllByText(/^level \d/)).toHaveLength(2);
    fireEvent.click(screen.getByLabelText('Level'));
  });

  test('has none where it was not read, and none where it is level', async () => {
    await openScreen(StakeScreen, readyLog(ringPlan({ count: 4 }), null));
    expect(screen.queryByText(/^along the slope \d/)).toBeNull();
    await openScreen(StakeScreen, readyLog(ringPlan({ count: 4 }), { grade: 0, way: 0 }));
    expect(screen.queryByText(/^along the slope \d/)).toBeNull();
  });
});

test('utilities come first: whom to ask, and how near a mark only hands dig', async () => {
  const plan = ringPlan({ count: 3 });
  await openScreen(StakeScreen, slopingLog(plan, stakesBefore(plan), null));
  await screen.findByText('First have buried utilities marked');
  expect(screen.getByText(/in the USA that is 811/)).toBeTruthy();
  expect(screen.getByText(/^Within 600.mm of a mark, on either side, dig by hand/)).toBeTruthy();
  // Paper is made at home, before anything is driven.
  press('Pull list, and sheet for paper');
  await whole();
  expect(holes()).toHaveLength(3);
});

describe('for one person', () => {
  test('tells how, advises to hold the tapes along the slope, and is kept on the phone', async () => {
    const plan = ringPlan({ count: 6 });
    await openList(plan, { grade: 0.1, way: 2 });
    expect(dialog().queryByRole('button', { name: 'How to pull alone' })).toBeNull();
    choose('I work alone');
    press('How to pull alone');
    expect(dialog().getByText(/scratch an arc/)).toBeTruthy();
    expect(dialog().getByText(/A check pull can be made alone/)).toBeTruthy();
    expect(dialog().queryByRole('button', { name: 'Heights and the level' })).toBeNull();
    expect(dialog().getByText(/no tape wants a second hand/)).toBeTruthy();
    expect(dialog().getByText(/^Hold the tape sloping where its rise is known/)).toBeTruthy();
    choose('Sloping');
    expect(dialog().queryByText(/^Hold the tape sloping/)).toBeNull();
    choose('Level');
    press('Back');
    await openList(plan, null);
    expect(dialog().queryByText(/^Hold the tape sloping/)).toBeNull();
    expect((dialog().getByLabelText('I work alone') as HTMLInputElement).checked).toBe(true);
    expect(dialog().getByText(/Held level they want a second hand/)).toBeTruthy();
    expect(dialog().getAllByText(/wants a second hand/)).toHaveLength(2 * 6);
  });

  test.each(['Level', 'Sloping'])('leaves the tape held as it was chosen: %s', async (held) => {
    await openList(ringPlan({ count: 3 }), { grade: 0.1, way: 2 });
    const isHeld = () => (dialog().getByLabelText(held) as HTMLInputElement).checked;
    choose(held);
    choose('I work alone');
    expect(isHeld()).toBe(true);
    choose('I work alone');
    expect(isHeld()).toBe(true);
    choose('Level');
  });

  test('the first hole of the list is the one that the Stake screen asks for', async () => {
    await openList(ringPlan({ count: 8, pier: true }), null);
    const walk = shown().map(({ hole }) => hole);
    choose('I work alone');
    const alone = shown().map(({ hole }) => hole);
    expect(alone).not.toEqual(walk);
    expect([...alone].sort()).toEqual([...walk].sort());
    press('Back');
    const heading = await screen.findByRole('heading', {
      name: `Hole ${alone[0]}: drive a stake where both tapes meet`,
    });
    expect(heading).toBeTruthy();
    expect(screen.getByText(/^Alone: scratch an arc/)).toBeTruthy();
  });

  test('works where the browser keeps nothing', async () => {
    const refuse = () => {
      throw new DOMException('no', 'SecurityError');
    };
    vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse, removeItem: refuse, clear: () => {} });
    await openList(ringPlan({ count: 3 }), null);
    const told = () => dialog().queryByRole('button', { name: 'How to pull alone' }) !== null;
    const before = told();
    choose('I work alone');
    expect(told()).toBe(!before);
    choose('I work alone');
    expect(told()).toBe(before);
  });
});

describe('the staking sheet on the screen', () => {
  const open = async () => {
    await openList(ringPlan({ count: 3 }), null);
    press('Staking sheet for paper');
  };

  test('prints', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    await open();
    press('Print');
    expect(print).toHaveBeenCalledOnce();
  });

  test('is handed to the share sheet as one HTML file', async () => {
    const share = vi.fn((_: ShareData) => Promise.resolve());
    vi.stubGlobal('navigator', { ...navigator, canShare: () => true, share });
    await open();
    press('Share or save');
    const [file] = share.mock.calls[0]![0].files!;
    expect(file!.type).toBe('text/html');
    const text = await file!.text();
    expect(text).toMatch(/^<!doctype html>/);
    expect(text).not.toContain('<script');
    // Margins are the file's own: in the app they would be those of every print that follows.
    expect(text).toContain('@page {');
    expect(readFileSync('src/screens/stake/sheet/staking.css', 'utf8')).not.toContain('@page');
    const first = /From A, level"[^>]*>([^<]*)</.exec(text)![1]!;
    expect(screen.getByRole('dialog').textContent).toContain(first);
    expect(await screen.findByText(/was handed to the app you chose/)).toBeTruthy();
  });

  test('is a download where nothing can be shared', async () => {
    vi.stubGlobal('navigator', { ...navigator, canShare: undefined, share: undefined });
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => {});
    await open();
    press('Share or save');
    await waitFor(() => expect(click).toHaveBeenCalledOnce());
    expect(await screen.findByText(/A download of “.*staking\.html” was started/)).toBeTruthy();
  });

  test('says the same as the list', async () => {
    const log = await openList(ringPlan({ count: 3 }), null);
    const list = shown();
    press('Staking sheet for paper');
    const cells = dialog()
      .getAllByRole('cell')
      .map(({ textContent }) => textContent!.replace(/\u00a0/g, ' '));
    for (const { fromA, fromB } of list) expect(cells).toEqual(expect.arrayContaining([fromA, fromB]));
    const { baseline } = situate(entriesOf(log)).laid!;
    expect(dialog().getByText(/was pulled:/).textContent).toContain(formatLength(baseline, 'm').slice(0, 5));
  });
});
