// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import type { Body, Thing } from '../../../src/job/entry-schema.ts';
import { situate } from '../../../src/judge/situation.ts';
import { predictOffset } from '../../../src/measure/index.ts';
import { JobFrame } from '../../../src/screens/job-frame.tsx';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { StringFlow } from '../../../src/screens/stake/string-flow.tsx';
import { formatLength } from '../../../src/units/index.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { tap, tapWhenThere, typeReading } from '../taps.ts';
import { holeStake, logOf, ORDER, READY, STAKED, stake, staked } from './field-day.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const HOLE = ORDER[0]!;
const LOG: Body[] = [...READY, ...ORDER.slice(0, 2).flatMap(staked)];
const [A, B] = [stake('A'), stake('B')];

/** What would be read of the stake off A–B. */
const { plan, laid, measured } = situate(logOf(LOG));
const found = predictOffset(
  A,
  B,
  { thing: holeStake(HOLE), touch: { at: 'nail' } },
  measured!,
  laid!.holes,
  plan!.instruments,
)!;
const STATION = formatLength(found.station.reading, 'ft-in-16');
const OFFSET = formatLength(found.offset.reading, 'ft-in-16');

const open = (thing: Thing, bodies: readonly Body[]) => {
  const Screen = () => (
    <>
      <JobFrame phase="stake">
        <p>behind</p>
      </JobFrame>
      <StringFlow thing={thing} onClose={() => {}} />
    </>
  );
  return openScreen(Screen, bodies);
};

async function read(text: string, key: string | RegExp = /^Read it/): Promise<void> {
  await screen.findByText(/^Expected/);
  typeReading(text);
  await tapWhenThere(key);
}

test('from a stake’s own card: which string, on which side, along it and square off it, as one entry', async () => {
  const job = await openScreen(StakeScreen, LOG, HOLE);
  tap(new RegExp(`^More on stake ${HOLE}`));
  await tapWhenThere('Measured off a string');
  await tapWhenThere('From A to B');
  await tapWhenThere('On my left');
  await read(STATION);
  await screen.findByText(new RegExp(`^Square off the string, stake ${HOLE}`));
  await read(OFFSET);
  await waitFor(async () => expect((await job.log()).at(-1)!.body.kind).toBe('offset'));
  expect((await job.log()).at(-1)!.body).toMatchObject({
    from: A,
    to: B,
    of: { thing: holeStake(HOLE), touch: { at: 'nail' } },
    station: { typed: STATION },
    offset: { typed: OFFSET },
    side: 'left',
  });
});

test('the wrong side, and a foot too much, are asked about before anything is logged', async () => {
  const job = await open(holeStake(HOLE), LOG);
  tap('From A to B');
  await tapWhenThere('On my right');
  await read(STATION);
  await read(OFFSET);
  const asked = await screen.findByText(/to the left of this string\. Look again which way the string runs/);
  expect(asked.textContent).toContain(OFFSET);
  tap('Read it again');
  expect((await job.log()).length).toBe(LOG.length);
  tap('Back');
  await screen.findByText(/^Along the string/);
  await read(formatLength(found.station.reading + 0.3048, 'ft-in-16'));
  await screen.findByText(/One foot too much/);
});

test('another string is tied between two things that are measured; on it there is no offset to read', async () => {
  const other = ORDER[1]!;
  const job = await open(holeStake(HOLE), LOG);
  tap('Another string');
  await tapWhenThere('A');
  await screen.findByText('The string from A to');
  expect(screen.queryByRole('button', { name: 'A', hidden: true })).toBeNull();
  await tapWhenThere(`Stake ${other}`);
  await tapWhenThere('On the string');
  await read('1 0');
  await tapWhenThere('Keep it as read');
  await waitFor(async () => expect((await job.log()).at(-1)!.body.kind).toBe('offset'));
  const { body } = (await job.log()).at(-1)!;
  expect(body).toMatchObject({ to: holeStake(other), side: 'on' });
  expect(body).not.toHaveProperty('offset');
});

test('a post says what was touched, and only one of the two may be measured', async () => {
  const post: Thing = { kind: 'post', hole: HOLE };
  const set: Body = { kind: 'stand', thing: post, event: 'set' };
  const job = await open(post, [...STAKED, set]);
  tap('From A to B');
  fireEvent.click(await screen.findByRole('radio', { name: 'the middle of the inner face', hidden: true }));
  fireEvent.click(screen.getByRole('radio', { name: 'Only square off it', hidden: true }));
  tap('On my left');
  await screen.findByText(/as you walk from A to B/);
  typeReading('10 0');
  await tapWhenThere(/^Read it/);
  await waitFor(async () => expect((await job.log()).at(-1)!.body.kind).toBe('offset'));
  const { body } = (await job.log()).at(-1)!;
  expect(body).toMatchObject({ of: { thing: post, touch: { at: 'face', side: 'back' } }, side: 'left' });
  expect(body).not.toHaveProperty('station');
});
