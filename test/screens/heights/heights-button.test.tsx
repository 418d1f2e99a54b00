// @vitest-environment happy-dom
import { screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { describeEntry } from '../../../src/job/words.ts';
import { DigScreen } from '../../../src/screens/dig/dig-screen.tsx';
import { SetScreen } from '../../../src/screens/set/set-screen.tsx';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { inches } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { type OpenScreen, openScreen, painted } from '../plan/open-screen.tsx';
import { press, whole } from '../press.ts';
import { DIGGABLE, READY } from '../stake/field-day.ts';
import { typeReading } from '../taps.ts';

onTheFieldDay();

const open = (bodies: readonly Body[] = READY) => openScreen(SetScreen, bodies, '1');
const linesSince = async (job: OpenScreen, count: number) =>
  (await job.log()).slice(count).map((entry) => describeEntry(entry));
const sheet = (name: string | RegExp) => screen.findByRole('heading', { level: 2, name, hidden: true });

async function go(...buttons: (string | RegExp)[]): Promise<void> {
  for (const name of buttons) {
    press(name);
    await painted();
    await whole();
  }
}

async function read(title: string | RegExp, reading: string): Promise<void> {
  await sheet(title);
  await painted();
  typeReading(reading);
  press(/^Read it/);
  await painted();
}

test('the benchmark, a turning point and a new set-up before any post stands', async () => {
  const job = await open();
  await sheet('Stand post 1 where both tapes meet');
  await go('Heights and the level', 'Read the rod', 'Rod on the benchmark');
  await read('Rod on the benchmark', '5 0');
  await sheet('Heights');
  await go('Read the rod', 'Rod on turning point 1');
  await read('Rod on turning point 1', '4 0');
  await sheet('Heights');
  expect(screen.getByText(/^1′ 0″ above the benchmark ± 3\/16″, unchecked$/)).toBeTruthy();
  await go('The level was moved');
  expect(screen.getByText(/^The level is at set-up 2, which hangs on no benchmark yet/)).toBeTruthy();
  await go('Read the rod', 'Rod on turning point 1');
  await read('Rod on turning point 1', '4 6');
  await sheet('Heights');
  expect(screen.getByText('The level is at set-up 2. If it was moved or knocked, say so.')).toBeTruthy();
  await go('Read the rod', 'Rod on the ground at hole 1');
  await read('Rod on the ground at hole 1', '6 0');
  await sheet('Heights');
  expect(await linesSince(job, READY.length)).toEqual([
    'Rod on the benchmark: 5′ 0″, set-up 1',
    'Rod on turning point 1: 4′ 0″, set-up 1',
    'Rod on turning point 1: 4′ 6″, set-up 2',
    'Rod on the ground at hole 1: 6′ 0″, set-up 2',
  ]);
}, 60_000);

test('the rod upside down, and how far off it is', async () => {
  const job = await open();
  await go('Heights and the level', 'Read the rod');
  screen.getByLabelText('Rod upside down, against a point above the level').click();
  screen.getByLabelText('Enter how far off the rod is, too').click();
  await painted();
  await go('Rod on stake A');
  await sheet('Rod on stake A');
  expect(screen.getByText(/^Set-up 1. Rod upside down/)).toBeTruthy();
  await read('Rod on stake A', '2 0');
  await sheet('How far off is the rod?');
  await go('Enter the distance');
  await read('Level to the rod, stake A', '30 0');
  await sheet('Heights');
  const last = (await job.log()).at(-1)!.body;
  expect(last).toMatchObject({ kind: 'rod', inverted: true, sight: { typed: '30 0' } });
});

test('how far off the rod is may be left open', async () => {
  const job = await open();
  await go('Heights and the level', 'Read the rod');
  screen.getByLabelText('Enter how far off the rod is, too').click();
  await painted();
  await go('Rod on stake A');
  await read('Rod on stake A', '2 0');
  await go('Not known');
  await sheet('Heights');
  expect((await job.log()).at(-1)!.body).toEqual({
    kind: 'rod',
    setup: '1',
    on: { point: 'stake', label: 'A' },
    reading: inches('2 0'),
  });
});

test('a water level from point to point, which is higher and by how much', async () => {
  const job = await open();
  await go('Heights and the level', 'Water level or laser', 'The benchmark', 'Stake A', 'Stake A is higher');
  await read('Height of stake A above the benchmark', '0 8');
  await sheet('Heights');
  await go('Water level or laser');
  screen.getByLabelText('Laser').click();
  await painted();
  await go('Stake A', 'The ground at hole 1', 'They are level');
  await sheet('Heights');
  expect(await linesSince(job, READY.length)).toEqual([
    'Water level: the benchmark is 8″ below stake A',
    'Laser: stake A is level with the ground at hole 1',
  ]);
});

test('the two-peg test says what it comes to before it is kept; Back undoes one reading', async () => {
  const job = await open();
  await go('Heights and the level', 'Test the level', 'Begin');
  await read('Rod on peg a, level midway', '4 2');
  await sheet('Rod on peg b, level midway');
  await go('Back');
  await read('Rod on peg a, level midway', '4 3');
  await read('Rod on peg b, level midway', '4 11');
  await read('Rod on peg a, level near it', '4 7');
  await read('Rod on peg b, level near peg a', '5 4');
  await read('Level to peg a', '6 0');
  await read('Level to peg b', '106 0');
  await sheet('What the test says');
  expect(screen.getByText(/^The level looks up by 5\/16″ in 30′, ± 1\/16″ in 30′/)).toBeTruthy();
  expect(await job.log()).toHaveLength(READY.length);
  await go('Keep the test');
  await sheet('Heights');
  expect(await linesSince(job, READY.length)).toEqual([
    'Two-peg test of the level: a 4′ 3″, b 4′ 11″ from midway, a 4′ 7″, b 5′ 4″ from near peg a',
  ]);
  // From now on the way to the rod is asked for, for by it such a level is put right.
  await go('Read the rod', 'Rod on the benchmark');
  await read('Rod on the benchmark', '5 0');
  await sheet('How far off is the rod?');
}, 60_000);

test('a test that no level can have caused is said to be so', async () => {
  await open();
  await go('Heights and the level', 'Test the level', 'Begin');
  for (const [title, reading] of [
    ['Rod on peg a, level midway', '4 3'],
    ['Rod on peg b, level midway', '4 11'],
    ['Rod on peg a, level near it', '4 7'],
    ['Rod on peg b, level near peg a', '7 3'],
    ['Level to peg a', '6 0'],
    ['Level to peg b', '106 0'],
  ] as const)
    await read(title, reading);
  await sheet('What the test says');
  expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
    /No level does: one of the four rod readings is wrong/,
  );
}, 60_000);

test('what is not on disk stays on the screen', async () => {
  await open();
  fillDisk('aborted');
  await go('Heights and the level', 'Water level or laser', 'The benchmark', 'Stake A', 'They are level');
  await waitFor(() =>
    expect(screen.getByText(/Water level: the benchmark is level with stake A/)).toBeTruthy(),
  );
});

test('reachable from Stake and Dig', async () => {
  await openScreen(StakeScreen, READY, null);
  await go('Heights and the level');
  await sheet('Heights');
  await openScreen(DigScreen, DIGGABLE, '1');
  await go('Heights and the level', 'Read the rod');
  expect(screen.getByRole('button', { name: 'Rod on the ground at hole 1', hidden: true })).toBeTruthy();
});
