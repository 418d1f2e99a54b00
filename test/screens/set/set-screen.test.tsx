// @vitest-environment happy-dom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { roundedLength } from '../../../src/job/length.ts';
import { SetScreen } from '../../../src/screens/set/set-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { unbroken } from '../../../src/ui/unbroken.ts';
import { inches } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { type OpenScreen, openScreen, painted } from '../plan/open-screen.tsx';
import { press } from '../press.ts';
import { PLAN, READY } from '../stake/field-day.ts';
import { tap, typeReading } from '../taps.ts';
import { exampleLog, post, pullOf, stepAfter, walk } from './set-day.ts';

onTheFieldDay();

const open = (bodies: readonly Body[], hole: string) => openScreen(SetScreen, bodies, hole);
const last = async (job: OpenScreen) => (await job.log()).at(-1)!.body;
const arrives = (text: string | RegExp) =>
  screen.findByRole('heading', { level: 2, name: text, hidden: true });

/** Enters a reading into the keypad that the card's main button opens. */
async function enter(button: string, reading: string): Promise<void> {
  press(button);
  await painted();
  typeReading(reading);
  press(/^Read it/);
}

const readingOf = (body: Body | null): string => {
  if (body?.kind !== 'pull' && body?.kind !== 'rod') throw new Error('That is not a reading');
  return body.reading.typed;
};

test('leads to the plan or to the stakes while there is nothing to set', async () => {
  await open([], '1');
  expect(screen.getByRole('link', { name: 'Go to the plan' })).toBeTruthy();
  await open(PLAN, '1');
  expect(screen.getByRole('link', { name: 'Go to the stakes' })).toBeTruthy();
});

test('a post is not sent into a hole that is not ready before one whose hole is, and the card says what is wrong', async () => {
  const dug = (hole: string, depth: string): Body => ({
    kind: 'dug',
    hole,
    depth: inches(depth),
    width: inches('1 8'),
    obstruction: 'none',
  });
  await openScreen(SetScreen, [...READY, dug('1', '2 0'), dug('3', '5 0')]);
  await arrives('Stand post 3 where both tapes meet');
  expect(screen.queryByRole('region', { name: /^Caution: hole/ })).toBeNull();
  await open([...READY, dug('1', '2 0')], '1');
  const caution = screen.getByRole('region', { name: 'Caution: hole 1 is not ready' });
  expect(caution.textContent).toMatch(/deeper/);
  await open(READY, '2');
  expect(screen.getByRole('region', { name: 'Caution: hole 2 is not dug' })).toBeTruthy();
});

test('one post from standing to in, by what the card asks for and nothing else', async () => {
  const wanted = walk(READY, '1').bodies.slice(READY.length);
  const job = await open(READY, '1');
  await arrives('Stand post 1 where both tapes meet');
  press('It stands');
  await arrives('Measure post 1 from A');
  await enter('Enter the tape', readingOf(wanted[1]!));
  await arrives('Measure post 1 from B');
  await enter('Enter the tape', readingOf(wanted[2]!));
  await arrives('Hold the level on the outer face of post 1');
  press('Enter plumb');
  await painted();
  typeReading('4 0');
  press(/^Read it/);
  for (const next of [
    'Hold the level on the anticlockwise face of post 1',
    'Once more, to check: hold the level on the inner face of post 1',
    'Once more, to check: hold the level on the clockwise face of post 1',
  ]) {
    await screen.findByRole('button', { name: 'Plumb: bubble in the middle', hidden: true });
    press('Plumb: bubble in the middle');
    await arrives(next);
    press('Enter plumb');
    await painted();
  }
  press('Plumb: bubble in the middle');
  await arrives('Read the rod on the benchmark');
  for (const [i, next] of [
    'Read the rod on the top of post 1',
    'Once more, to check: read the rod on the top of post 1',
    'Once more, to check: read the rod on the benchmark',
  ].entries()) {
    await enter('Enter the rod', readingOf(wanted[7 + i]!));
    await waitFor(async () => expect(await job.log()).toHaveLength(READY.length + 8 + i));
    await arrives(next);
  }
  await enter('Enter the rod', readingOf(wanted[10]!));
  await arrives(/^Post 1 is in as far as measured/);
  expect((await job.log()).slice(READY.length).map(({ body }) => body.kind)).toEqual(
    wanted.map(({ kind }) => kind),
  );
}, 60_000);

test('a post out of plumb: which way its top goes, how far, and what the bubble then shows; and the tapes to come', async () => {
  const placed = walk(READY, '1').bodies.slice(0, READY.length + 3);
  const plumb = (side: 'front' | 'left', offset: string): Body => ({
    kind: 'plumb',
    hole: '1',
    side,
    offset: inches(offset),
    over: inches('4 0'),
    leans: offset === '0' ? 'none' : 'out',
  });
  await open([...placed, plumb('front', '0 3/4'), plumb('left', '0')], '1');
  await arrives('Post 1 leans 3/4″ in 4′');
  const told = (selector: string) =>
    [...document.querySelectorAll(selector)].map(({ textContent }) => textContent.replaceAll('\u00a0', ' '));
  expect(told('.set-nudge')[0]).toMatch(
    /^Push the top of post 1: 3\/4″ toward the pier, measured 4′ 0″ above the foot of the level\. It is right when the level reads:$/,
  );
  expect(told('.set-levels li')).toEqual([
    'Level on the outer face: bubble in the middle, no gap over 4′ 0″; now the top leans 3/4″ out',
    'Level on the anticlockwise face: bubble in the middle, no gap over 4′ 0″, as now',
  ]);
  press('The next 3 readings, in order');
  await painted();
  expect(told('ol.findings li')).toEqual([
    expect.stringMatching(/^Pull A to post 1, .*: it helps to guard post 1 against a misread pull\.$/),
    expect.stringMatching(/^Pull B to post 1, .*: it guards post 1: .* Then post 1 is expected to be in\.$/),
    'Read the rod on the benchmark: every height read from there hangs on it.',
  ]);
});

test('what was met in the ground and not decided on is said before the post is stood', async () => {
  const dug: Body = {
    kind: 'dug',
    hole: '1',
    depth: inches('4 1'),
    width: inches('1 6'),
    obstruction: 'rock',
  };
  await open([...READY, dug], '1');
  await arrives('Stand post 1 where both tapes meet');
  expect(screen.getByRole('alert').textContent).toMatch(/^No decision is logged. Rock was met in hole 1/);
  await open([...READY, { ...dug, obstruction: 'none' }], '1');
  await arrives('Stand post 1 where both tapes meet');
  expect(screen.queryByRole('alert')).toBeNull();
});

describe('what must not be lost or made up', () => {
  const STANDS = [...READY, post('1')];

  test('two taps at once stand a post once', async () => {
    const job = await open(READY, '1');
    tap('It stands');
    tap('It stands');
    await arrives('Measure post 1 from A');
    await painted();
    expect(await job.log()).toHaveLength(READY.length + 1);
    expect(screen.queryByRole('dialog', { hidden: true })).toBeNull();
  });

  test('rubbish is refused by name, and nothing is logged', async () => {
    const job = await open(STANDS, '1');
    await enter('Enter the tape', 'abc');
    expect(screen.getByRole('alert', { hidden: true }).textContent).toContain('“abc” is not a length');
    expect(await job.log()).toHaveLength(STANDS.length);
  });

  test('a rod reading that is not saved stays on the screen, and can be saved again', async () => {
    const { bodies } = walk(READY, '1');
    const job = await open(bodies.slice(0, -4), '1');
    await arrives('Read the rod on the benchmark');
    fillDisk('aborted');
    await enter('Enter the rod', '4 11');
    await screen.findByText(/Rod on the benchmark: 4′ 11″/);
    vi.restoreAllMocks();
    press('Save again');
    await arrives('Read the rod on the top of post 1');
    expect(await last(job)).toMatchObject({ kind: 'rod', reading: { typed: '4 11' } });
  });

  test('a plumb reading that is not saved can be gone back to, its gap still there', async () => {
    const { bodies } = walk(READY, '1');
    // With the readings of three faces the level's length is known.
    const job = await open(bodies.slice(0, -5), '1');
    await arrives('Once more, to check: hold the level on the clockwise face of post 1');
    press('Enter plumb');
    await painted();
    press('Top leans out, towards me');
    await painted();
    fillDisk('aborted');
    typeReading('1/16″');
    press(/^Read it/);
    await screen.findByRole('button', { name: 'Save again', hidden: true });
    vi.restoreAllMocks();
    press('Back');
    await painted();
    press(/^Read it: 1\/16″/);
    await arrives('Read the rod on the benchmark');
    expect(await last(job)).toMatchObject({ kind: 'plumb', side: 'right', leans: 'out' });
  });

  test('a rod reading far from the one before it is asked about', async () => {
    const { bodies } = walk(READY, '1');
    await open(bodies.slice(0, -2), '1');
    await arrives('Once more, to check: read the rod on the top of post 1');
    const first = bodies.at(-3)!;
    if (first.kind !== 'rod') throw new Error(first.kind);
    await enter('Enter the rod', roundedLength(first.reading.m + inches('1 0').m, 'ft-in-16').typed);
    expect(screen.getByRole('alert', { hidden: true }).textContent).toMatch(
      /^This is 1′ 0″ more than before.*One foot too much/,
    );
  });

  test('the slope: a level length says that it is no reading along the slope', async () => {
    await open(STANDS, '1');
    const row = () => document.querySelector('.pull-row')!.textContent;
    expect(row()).toContain('tape level');
    expect(row()).not.toContain('along the slope');
    (await screen.findByRole('radio', { name: 'Sloping' })).click();
    await waitFor(() => expect(row()).toContain('along the slope it reads more'));
    // The choice lasts on the page; later tests hold the tape level again.
    screen.getByRole('radio', { name: 'Level' }).click();
    await painted();
  });
});

describe('a post that is out', () => {
  function outBodies(): Body[] {
    const bodies: Body[] = [...READY, post('1')];
    for (let i = 0; i < 4; i++) {
      const step = stepAfter(bodies, '1');
      if (step.do !== 'pull') break;
      bodies.push(pullOf(step.pull, step.pull.expected + (i < 2 ? 0.05 : 0)));
    }
    return bodies;
  }

  test('shows how to move it and what to hold; once moved it is measured anew', async () => {
    const clock = vi.spyOn(performance, 'now').mockReturnValue(1000);
    const job = await open(outBodies(), '1');
    await arrives(/^Post 1 is out by/);
    expect(screen.getByText(/^Push the foot of post 1/)).toBeTruthy();
    expect(document.querySelectorAll('.set-holds .pull-row').length).toBeGreaterThanOrEqual(2);
    // Half a double tap on the last reading must not move the post.
    press('It is moved');
    await painted();
    expect(await last(job)).toMatchObject({ kind: 'pull' });
    clock.mockReturnValue(1000 + REPEAT_TAP_MS);
    press('It is moved');
    await arrives('Measure post 1 from A');
    expect(await last(job)).toEqual({ kind: 'stand', thing: { kind: 'post', hole: '1' }, event: 'nudged' });
  });

  test('left so, it goes on with plumb, and Undo says what it takes back', async () => {
    const job = await open(outBodies(), '1');
    await arrives(/^Post 1 is out by/);
    press('Leave it so');
    await arrives('Hold the level on the outer face of post 1');
    // The log keeps it, so that a page that is loaded again does not ask again.
    const left = { kind: 'note', hole: '1', text: 'The place of the post was left as it is.' };
    expect((await job.log()).map(({ body }) => body)).toContainEqual(left);
    press('Other readings of post 1');
    await painted();
    press('Post 1 was moved');
    await screen.findByText('Saved: Post 1 moved.');
    press('Undo');
    await screen.findByText('Taken back: Post 1 moved.');
    press('Undo');
    await screen.findByText('Counts again: Post 1 moved.');
    expect((await job.log()).slice(-3).map(({ body }) => body.kind)).toEqual(['stand', 'strike', 'strike']);
  });
});

test('the misread tape of the example: pulled again, and the wrong one struck', async () => {
  vi.setSystemTime(new Date(exampleLog().at(-1)!.at));
  const job = await open(
    exampleLog().map(({ body }) => body),
    '8',
  );
  await arrives('A tape to post 8 looks misread: pull it again');
  // 36′ 10 9/16″ was read; the other tapes say about an inch less.
  const row = [...document.querySelectorAll('.pull-row')].find(({ textContent }) =>
    textContent.includes('from B’s nail'),
  );
  expect(row!.querySelector('.figure')!.getAttribute('aria-label')).toMatch(/36 feet 9 and/);
  press('Enter the tape');
  await painted();
  typeReading('36 9 9/16');
  press(/^Read it/);
  await arrives('Two tapes to post 8 disagree: strike the wrong one');
  press('Choose and strike');
  await painted();
  press(unbroken('Pull B to post 8, the middle of the inner face: 36′ 10 9/16″, level'));
  await painted();
  fireEvent.click(screen.getByRole('radio', { name: 'misread', hidden: true }));
  await painted();
  press('Strike it');
  await arrives(/^Post 8 is in/);
  const log = await job.log();
  const struckEntry = log.find(({ id }) =>
    log.some(({ body }) => body.kind === 'strike' && body.entry === id),
  );
  expect(struckEntry?.body).toMatchObject({ kind: 'pull', reading: { typed: '36′ 10 9/16″' } });
}, 60_000);
