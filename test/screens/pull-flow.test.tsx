// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { useState } from 'preact/hooks';
import { afterEach, expect, test, vi } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import { JobFrame } from '../../src/screens/job-frame.tsx';
import { PullFlow, type PullToRead } from '../../src/screens/pull-flow.tsx';
import { unbroken } from '../../src/ui/unbroken.ts';
import { formatLength } from '../../src/units/index.ts';
import { inches } from '../job/sample.ts';
import { fillDisk } from '../store/fake-store.ts';
import { openScreen } from './plan/open-screen.tsx';
import { holeStake, PULLS, READY, stake, stand } from './stake/field-day.ts';
import { tap, tapWhenThere, typeReading } from './taps.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const PULL: PullToRead = {
  from: { thing: stake('A'), touch: { at: 'nail' } },
  to: { thing: holeStake('4'), touch: { at: 'nail' } },
  expected: PULLS.get('4')!.fromA,
};
const DRIVEN: Body[] = [...READY, stand(holeStake('4'))];
const GOOD = formatLength(PULLS.get('4')!.fromA, 'ft-in-16');

function open(how: 'level' | 'slope', bodies: readonly Body[] = DRIVEN) {
  const Screen = () => {
    const [reading, setReading] = useState(true);
    return (
      <>
        <JobFrame phase="stake">
          <p>{reading ? 'reading' : 'closed'}</p>
        </JobFrame>
        {reading && <PullFlow pull={PULL} how={how} onClose={() => setReading(false)} />}
      </>
    );
  };
  return openScreen(Screen, bodies);
}

const lastOf = async (job: Awaited<ReturnType<typeof open>>) => (await job.log()).at(-1)!.body;

test('a level reading is logged as it was typed', async () => {
  const job = await open('level');
  typeReading(GOOD);
  tap(/^Read it/);
  await screen.findByText('closed');
  expect(await lastOf(job)).toEqual({
    kind: 'pull',
    from: PULL.from,
    to: PULL.to,
    reading: inches(GOOD),
    hold: { how: 'level' },
  });
});

test('a reading beyond belief is asked about first, and kept when it is meant', async () => {
  const job = await open('level');
  typeReading('12 0');
  tap(/^Read it/);
  expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(/^This is .* less than expected/);
  expect(await job.log()).toHaveLength(DRIVEN.length);
  tap('Keep it as read');
  await screen.findByText('closed');
  expect(await lastOf(job)).toMatchObject({ reading: { typed: '12 0' } });
});

test('along the slope the rise is asked for, and can be given', async () => {
  const job = await open('slope');
  typeReading(GOOD);
  tap(/^Read it/);
  await tapWhenThere('Enter the rise');
  typeReading('2 6');
  tap(/^Read it/);
  await screen.findByText('closed');
  expect(await lastOf(job)).toMatchObject({ hold: { how: 'slope', rise: inches('2 6') } });
});

test('a rise that is not known is left out, not guessed', async () => {
  const job = await open('slope');
  typeReading(GOOD);
  tap(/^Read it/);
  await tapWhenThere('Not known');
  await screen.findByText('closed');
  expect(await lastOf(job)).toMatchObject({ hold: { how: 'slope' } });
  expect(JSON.stringify(await lastOf(job))).not.toContain('rise');
});

test('a rise greater than the tape is refused', async () => {
  const job = await open('slope');
  typeReading(GOOD);
  tap(/^Read it/);
  await tapWhenThere('Enter the rise');
  typeReading('60 0');
  tap(/^Read it/);
  expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
    /^Rise, A to stake 4.*the tape’s reading/,
  );
  expect(await job.log()).toHaveLength(DRIVEN.length);
});

test('the rise is not asked for where a rod has read the ground at both ends', async () => {
  const rods: Body[] = [
    { kind: 'rod', setup: '1', on: { point: 'benchmark' }, reading: inches('4 0') },
    { kind: 'rod', setup: '1', on: { point: 'stake', label: 'A' }, reading: inches('6 0') },
    { kind: 'rod', setup: '1', on: { point: 'ground', hole: '4' }, reading: inches('3 6') },
  ];
  const job = await open('slope', [...DRIVEN, ...rods]);
  expect(screen.getByText(/a rise of 2′ 6″/)).toBeTruthy();
  typeReading(GOOD);
  tap(/^Read it/);
  await screen.findByText('closed');
  expect(await lastOf(job)).toMatchObject({ kind: 'pull', hold: { how: 'slope' } });
});

test('what is not saved stays on the screen with the reason, and is saved on the second try', async () => {
  const job = await open('level');
  fillDisk('aborted');
  typeReading(GOOD);
  tap(/^Read it/);
  await screen.findByRole('heading', { name: 'Not saved', hidden: true });
  expect(screen.getByRole('dialog', { hidden: true }).textContent).toMatch(
    /phone is full.*A to stake 4: \d/s,
  );
  expect(await job.log()).toHaveLength(DRIVEN.length);
  vi.restoreAllMocks();
  tap('Save again');
  await screen.findByText('closed');
  expect(await lastOf(job)).toMatchObject({ reading: { typed: GOOD } });
});

test('back from a failed save, the keypad still holds what was typed', async () => {
  await open('level');
  fillDisk('aborted');
  typeReading(GOOD);
  tap(/^Read it/);
  await screen.findByRole('heading', { name: 'Not saved', hidden: true });
  vi.restoreAllMocks();
  fireEvent.click(screen.getByRole('button', { name: 'Back', hidden: true }));
  await waitFor(() =>
    expect(screen.getByRole('button', { name: unbroken(`Read it: ${GOOD}`), hidden: true })).toBeTruthy(),
  );
});

test('an impatient second tap during a slow write logs nothing twice', async () => {
  const job = await open('level');
  typeReading(GOOD);
  const read = screen.getByRole('button', { name: /^Read it/, hidden: true });
  // A hardware Enter is not slowed down by the guard against double taps.
  fireEvent.click(read);
  fireEvent.keyDown(document.body, { key: 'Enter' });
  fireEvent.keyDown(document.body, { key: 'Enter' });
  await screen.findByText('closed');
  expect(await job.log()).toHaveLength(DRIVEN.length + 1);
});
