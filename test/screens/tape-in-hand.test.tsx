// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import type { TapeSpec } from '../../src/job/plan-schema.ts';
import { PlanScreen } from '../../src/screens/plan/plan-screen.tsx';
import { StakeScreen } from '../../src/screens/stake/stake-screen.tsx';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';
import { formatLength } from '../../src/units/index.ts';
import { inches, samplePlan } from '../job/sample.ts';
import { openScreen } from './plan/open-screen.tsx';
import { holeStake, ORDER, PULLS, READY, staked, stand } from './stake/field-day.ts';
import { tap, tapWhenThere, typeReading } from './taps.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

/** 100 ft of it are a foot more: coarse, so that its readings cannot be taken for any other's. */
const RED: TapeSpec = {
  label: 'Red',
  nominal: inches('100′'),
  actual: inches('101′'),
  zero: inches('0″'),
  expansion: 11.6e-6,
};
const HOLE = ORDER[0]!;
const DRIVEN: Body[] = [...READY, stand(holeStake(HOLE))];
const tapes = (list: TapeSpec[]): Body => ({
  kind: 'plan',
  plan: { ...samplePlan, instruments: { ...samplePlan.instruments, tapes: list } },
});
const TRUE = PULLS.get(HOLE)!.fromA;
const onRed = formatLength(TRUE / 1.01, 'ft-in-16');
const beyondRepeat = () => new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));
const type = (label: string | RegExp, text: string) =>
  fireEvent.input(screen.getByLabelText(label), { target: { value: text } });

describe('the tape in hand', () => {
  test('a job that lists no tapes is asked nothing', async () => {
    await openScreen(StakeScreen, DRIVEN);
    expect(screen.queryByRole('button', { name: /Another\?/ })).toBeNull();
    expect(screen.getAllByText('tape level').length).toBeGreaterThan(0);
  });

  test('figures are what it must read, and a pull is logged with it', async () => {
    const job = await openScreen(StakeScreen, [...DRIVEN, tapes([RED])]);
    expect(screen.getAllByText('tape Red, level').length).toBeGreaterThan(1);
    expect(screen.queryByText('tape level')).toBeNull();
    expect(document.body.textContent).toContain(onRed);
    tap(/^Read the tape|^Read from A|^Read/);
    await screen.findByText(/Expected/);
    expect(screen.getByText(/Expected/).textContent).toContain(onRed);
    typeReading(onRed);
    tap(/^Read it/);
    await waitFor(async () =>
      expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'pull', tape: 'Red' }),
    );
    expect((await job.log()).at(-1)!.body).not.toHaveProperty('pulling');
  });

  test('check pulls and ties name it, and say what it must read', async () => {
    await openScreen(StakeScreen, [...READY, ...ORDER.flatMap(staked), tapes([RED])], HOLE);
    tap(/^Check pulls/);
    const [check] = screen.getAllByRole('button', { name: /^stake \S+ to stake/ });
    expect(check!.textContent).toContain('on tape Red, level');
    tap('Strings and ties');
    await tapWhenThere(new RegExp(`^Hole ${HOLE}: 1 tie`));
    await screen.findAllByText(/^Offset stakes/);
    expect(screen.getAllByText('tape Red, level').length).toBeGreaterThan(0);
    const away = screen.getAllByText(/ goes .* the centre is halfway\./)[0]!.textContent!;
    // Three feet are three feet less three hundredths on it.
    expect(away.replaceAll('\u00a0', ' ')).toContain('2′ 11 5/8″');
  });

  test('what is read along a string is read on it, and logged with it', async () => {
    const job = await openScreen(StakeScreen, [...READY, ...ORDER.flatMap(staked), tapes([RED])], HOLE);
    tap(new RegExp(`^More on stake ${HOLE}`));
    await tapWhenThere('Measured off a string');
    await tapWhenThere('From A to B');
    await tapWhenThere('On my left');
    const station = PULLS.get(HOLE)!.station / 1.01;
    const offset = PULLS.get(HOLE)!.offset / 1.01;
    for (const m of [station, offset]) {
      await screen.findByText(/^Expected/);
      const pad = screen.getByText(/^Expected/).closest('dialog')!;
      expect(within(pad).getByRole('button', { name: 'Tape Red. Another?', hidden: true })).toBeTruthy();
      await beyondRepeat();
      typeReading(formatLength(m, 'ft-in-16'));
      await tapWhenThere(/^Read it/);
      await beyondRepeat();
    }
    await waitFor(async () =>
      expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'offset', tape: 'Red' }),
    );
  });

  test('how warm and how tight it is, and what hung free, is noted once and logged', async () => {
    const job = await openScreen(StakeScreen, [...DRIVEN, tapes([RED])]);
    tap(/^Tape Red\. Another/);
    await screen.findByText('The tape in hand');
    type('Temperature of the tape', '86');
    type('Pulled with', '20');
    type('Lengths that hung free', '6′ 0″ + 4′ 6″');
    tap('Take tape Red');
    await screen.findByRole('button', {
      name: /^Tape Red, 86 °F, pulled with 20 lb, 6′\s0″ \+ 4′\s6″ hung free/,
    });
    await beyondRepeat();
    tap(/^Read/);
    await screen.findByText(/Expected/);
    typeReading(onRed);
    tap(/^Read it/);
    await waitFor(async () => expect((await job.log()).at(-1)!.body.kind).toBe('pull'));
    const body = (await job.log()).at(-1)!.body;
    expect(body).toMatchObject({
      tape: 'Red',
      pulling: { temperature: 30, spans: [inches('6′ 0″'), inches('4′ 6″')] },
    });
    // What hung free was that pull's own.
    await screen.findByRole('button', {
      name: /^Tape Red, 86 °F, pulled with 20 lb\. Another/,
      hidden: true,
    });
  });

  test('bad input is told at its field, and takes nothing', async () => {
    await openScreen(StakeScreen, [...DRIVEN, tapes([RED])]);
    tap(/^Tape Red\. Another/);
    await screen.findByText('The tape in hand');
    type('Temperature of the tape', '900');
    type('Lengths that hung free', 'far');
    tap('Take tape Red');
    await screen.findByText(/^Temperature of the tape: 900 is out of range/);
    screen.getByText(/^Lengths that hung free: “far” is not a length/);
  });

  test('another tape takes its place before a pull is made with it', async () => {
    await openScreen(StakeScreen, [...DRIVEN, tapes([RED])]);
    tap(/^Tape Red\. Another/);
    await screen.findByText('The tape in hand');
    fireEvent.click(screen.getByRole('radio', { name: /^Another/, hidden: true }));
    tap('Take a tape as printed');
    await waitFor(() => expect(screen.getAllByText('tape level').length).toBeGreaterThan(1));
    expect(screen.queryByText('tape Red, level')).toBeNull();
  });

  test('in the plan a tape is added, changed and taken out again', async () => {
    const job = await openScreen(PlanScreen, [{ kind: 'plan', plan: samplePlan }]);
    tap('Add a tape that reads wrong');
    await screen.findByText('Add a tape');
    tap('Add it');
    await screen.findByText(/^It reads is empty/);
    type('Written on the tape', 'Red');
    type('It reads', '100′');
    type('Where there really are', '100′ 0 1/4″');
    fireEvent.click(screen.getByRole('radio', { name: 'Makes readings too long', hidden: true }));
    type('Too much or too little by', '1/16″');
    await beyondRepeat();
    tap('Add it');
    await waitFor(async () =>
      expect((await job.plan()).instruments.tapes).toMatchObject([
        { label: 'Red', zero: { typed: '-1/16″' } },
      ]),
    );
    await tapWhenThere(
      /^Tape Red: reads 100′ where there are 100′\s0\s1\/4″; its end makes readings 1\/16″ too long/,
    );
    await tapWhenThere('Remove tape Red');
    await waitFor(async () => expect((await job.plan()).instruments).not.toHaveProperty('tapes'));
  });
});
