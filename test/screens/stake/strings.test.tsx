// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { situate } from '../../../src/judge/situation.ts';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { stringsOf } from '../../../src/screens/stake/strings/strings-of.ts';
import { tiesOf } from '../../../src/stakeout/ties.ts';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { formatLength } from '../../../src/units/index.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { tap, tapWhenThere, typeReading } from '../taps.ts';
import { logOf, ORDER, READY, staked } from './field-day.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const HOLE = ORDER[0]!;
const LOG: Body[] = [...READY, ...ORDER.slice(0, 2).flatMap(staked)];
const { asked, plan } = stringsOf(situate(logOf(LOG)))!;
const [S1] = plan.strings;
const words = (m: number) => formatLength(m, 'ft-in-16');

const openStrings = async (bodies: readonly Body[] = LOG) => {
  const job = await openScreen(StakeScreen, bodies, HOLE);
  tap('Strings and ties');
  await screen.findByText(/Two cross over every hole/);
  return job;
};
const bodiesOf = async (job: Awaited<ReturnType<typeof openStrings>>) =>
  (await job.log()).map(({ body }) => body);

/** One tap logs where it is meant to stand and that it stands; the next tap is made once both are on disk. */
async function driven(name: string): Promise<void> {
  await tapWhenThere(`${name} driven`);
  await waitFor(() =>
    expect(screen.queryByRole('button', { name: `${name} driven`, hidden: true })).toBeNull(),
  );
  // The next button may be the same one with another name: a nervous second tap on it counts as one.
  await new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 50));
}

async function read(text: string): Promise<void> {
  await screen.findByText(/^Expected/);
  typeReading(text);
  await tapWhenThere(/^Read it/);
}

test('a string’s nails are driven at two tapes, read back, and then its marks are told; always what it stands for', async () => {
  const job = await openStrings();
  tap(/^S1, over holes/);
  await screen.findByText('This string stands for the CENTRES of the posts.');
  for (const nail of S1!.nails) {
    await driven(`Nail ${nail.label}`);
    await tapWhenThere(`Read the tape from A to ${nail.label}`);
    await read(words(nail.pulls.fromA));
    await tapWhenThere(`Read the tape from B to ${nail.label}`);
    await read(words(nail.pulls.fromB));
  }
  await waitFor(() => expect(screen.queryByText(/^Read the tape/)).toBeNull());
  const log = await bodiesOf(job);
  const things = log.flatMap((body) => (body.kind === 'reference' ? [body.thing] : []));
  expect(things).toEqual(S1!.nails.map(({ label }) => ({ kind: 'nail', label })));
  expect(
    log
      .filter(({ kind }) => kind === 'reference' || kind === 'stand')
      .slice(-4)
      .map(({ kind }) => kind),
  ).toEqual(['reference', 'stand', 'reference', 'stand']);
  for (const { hole } of S1!.marks)
    expect(screen.getByText(`${S1!.nails[0].label} to hole ${hole}`)).toBeTruthy();
});

test('two offset stakes and one reading are a tie, and the list counts it', async () => {
  const job = await openStrings();
  expect(screen.getByRole('button', { name: `Hole ${HOLE}: 1 tie read of 2`, hidden: true })).toBeTruthy();
  tap(new RegExp(`^Hole ${HOLE}: 1 tie`));
  const hole = asked.holes.find(({ label }) => label === HOLE)!;
  const [pair] = tiesOf(hole, asked, plan).offsets;
  const [one, other] = pair!.stakes;
  await screen.findByText(/One tie is read; two are wanted/);
  await driven(one.label);
  await driven(other.label);
  await tapWhenThere(`Read ${one.label} to the nail in stake ${HOLE}: a tie`);
  await read(words(pair!.away));
  await screen.findByText(/2 ties are read: this hole may be dug and found again/);
  expect((await bodiesOf(job)).at(-1)).toMatchObject({
    kind: 'offset',
    from: { kind: 'stake', label: one.label },
    to: { kind: 'stake', label: other.label },
    side: 'on',
    station: { typed: words(pair!.away) },
  });
});

test('a foot misread along a string is asked about before it is logged', async () => {
  const job = await openStrings();
  tap(new RegExp(`^Hole ${HOLE}: 1 tie`));
  const hole = asked.holes.find(({ label }) => label === HOLE)!;
  const [pair] = tiesOf(hole, asked, plan).offsets;
  const [one, other] = pair!.stakes;
  await driven(one.label);
  await driven(other.label);
  await tapWhenThere(`Read ${one.label} to the nail in stake ${HOLE}: a tie`);
  await read(words(pair!.away + 0.3048));
  await screen.findByText(/One foot too much/);
  expect((await bodiesOf(job)).at(-1)!.kind).toBe('stand');
});

test('a centre is found again; with A gone, something else or a plain no', async () => {
  await openStrings();
  tap('Find a centre again');
  await screen.findByText(`Find the centre of hole ${HOLE}`);
  expect(screen.getByText(/: it is found to/)).toBeTruthy();
  tap('Something is gone or was knocked');
  for (const label of ['A is gone', 'B is gone', `Stake ${ORDER[1]} is gone`])
    fireEvent.click(await screen.findByLabelText(label));
  await screen.findByText(
    new RegExp(`No two tapes find the centre of hole ${HOLE}: nothing that was measured stands`),
  );
});
