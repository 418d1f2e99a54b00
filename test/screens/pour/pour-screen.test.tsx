// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body, Thing } from '../../../src/job/entry-schema.ts';
import { PourScreen } from '../../../src/screens/pour/pour-screen.tsx';
import { inches } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { type OpenScreen, openScreen, painted } from '../plan/open-screen.tsx';
import { press, whole } from '../press.ts';
import { exampleLog } from '../set/set-day.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const EXAMPLE = exampleLog().map(({ body }) => body);
const TICKS = ['clean', 'gravel', 'room', 'braced', 'inspection', 'weather'] as const;
const tick = (hole: string, item: (typeof TICKS)[number]): Body => ({
  kind: 'check',
  hole,
  item,
  done: true,
});
const open = (bodies: readonly Body[], hole: string) => openScreen(PourScreen, bodies, hole);
const last = async (job: OpenScreen) => (await job.log()).at(-1)!.body;
const arrives = (name: string | RegExp) => screen.findByRole('heading', { level: 2, name, hidden: true });
const missing = (hole: string) =>
  screen.getByRole('list', { name: `Missing before concrete goes into hole ${hole}`, hidden: true });

const touches = (thing: Thing, hole: string): boolean => thing.kind === 'post' && thing.hole === hole;

/** Types into a box and taps a button without leaving the box first, as some phones do. */
function type(label: string, text: string): void {
  fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
}

test('leads to the plan while there is nothing to pour', async () => {
  await open([], '1');
  expect(screen.getByRole('link', { name: 'Go to the plan' })).toBeTruthy();
});

describe('a gate that is shut', () => {
  test('ticks in one list, each logged for its hole; then it is open', async () => {
    const job = await open(EXAMPLE, '2');
    await arrives('Hole 2: 6 missing before concrete');
    for (const words of [
      /^Clean, and measured again/,
      /^The gravel is in/,
      /^Room all round/,
      /^It is braced two ways/,
      /^Inspected, or none is asked for/,
    ]) {
      press(words);
      await vi.waitFor(() => expect(screen.queryByRole('button', { name: words })).toBeNull(), 8000);
    }
    // What is ticked stays in its place, as done: the list must not move under the thumb.
    const lines = within(missing('2')).getAllByRole('listitem', { hidden: true });
    expect(lines).toHaveLength(6);
    expect(lines.map((line) => line.querySelector('button') === null)).toEqual([
      true,
      true,
      true,
      true,
      true,
      false,
    ]);
    press(/^The weather is fit for concrete/);
    await arrives('Hole 2 is ready for concrete');
    expect(screen.getByText(/The weather is fit for concrete\. Looked at .*\d{1,2}:\d\d/)).toBeTruthy();
    expect((await job.log()).slice(-6).map(({ body }) => body)).toEqual(TICKS.map((item) => tick('2', item)));
  });

  test('leads to where a post that is out is mended', async () => {
    await open(EXAMPLE, '4');
    const links = within(missing('4')).getAllByRole('link');
    expect(links[0]!.getAttribute('href')).toMatch(/\/set\/4$/);
  });

  test.each([
    ['not dug', (body: Body) => body.kind === 'dug' && body.hole === '4', 'Go to Dig, hole 4', /\/dig\/4$/],
    [
      'without its post',
      (body: Body) => /"kind":"post","hole":"4"/.test(JSON.stringify(body)),
      'Go to Set, hole 4',
      /\/set\/4$/,
    ],
  ] as const)('of a hole %s offers no pour, but the way to it', async (_, without, name, href) => {
    await open(
      EXAMPLE.filter((body) => !without(body)),
      '4',
    );
    expect(screen.queryByRole('button', { name: 'Poured anyway' })).toBeNull();
    expect(screen.getByRole('link', { name }).getAttribute('href')).toMatch(href);
  });

  test('poured all the same: the reason is asked for, and logged', async () => {
    const job = await open(EXAMPLE, '4');
    press('Poured anyway');
    await painted();
    press('Log it');
    expect(screen.getAllByRole('alert', { hidden: true }).map((each) => each.textContent)).toEqual([
      'Bags is empty: type how many bags went in, such as 3.',
      'Why is empty: say why it was poured with something missing.',
    ]);
    type('Bags', '3');
    type('Bags', '3 bags');
    type('Why', 'truck was waiting');
    press('Log it');
    // What was typed last counts, and it is no number: nothing is logged on the strength of what stood there before.
    expect(screen.getByRole('alert', { hidden: true }).textContent).toContain('“3 bags” is not a number');
    type('Bags', '11.5');
    press('Log it');
    expect(screen.getByRole('alert', { hidden: true }).textContent).toContain(
      'Bags: “11.5” is not a whole number; count a bag where it was opened: type 12 if it was opened here, else 11.',
    );
    expect((screen.getByLabelText('Why') as HTMLTextAreaElement).value).toBe('truck was waiting');
    type('Bags', '12');
    press('Log it');
    await arrives('Hole 4 is poured');
    expect(await last(job)).toEqual({ kind: 'pour', hole: '4', bags: 12, note: 'truck was waiting' });
    expect(screen.getByText('Post 4 is in concrete and measures out.')).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Measure post 4 again' }).getAttribute('href')).toMatch(
      /\/set\/4$/,
    );
  });

  test('what was met in the ground waits for a decision, which says who and what', async () => {
    const job = await open(EXAMPLE, '7');
    expect(within(missing('7')).queryByRole('button', { name: /^Inspected/ })).toBeNull();
    press('Enter the decision');
    await painted();
    press('Log the decision');
    expect(screen.getAllByRole('alert', { hidden: true })).toHaveLength(2);
    type('Who decided', 'Ms Lind, building control');
    type('What was decided', 'roots cut out by hand');
    press('Log the decision');
    await arrives('Hole 7: 5 missing before concrete');
    expect(await last(job)).toEqual({
      kind: 'check',
      hole: '7',
      item: 'inspection',
      done: true,
      decides: 'obstruction',
      note: 'Ms Lind, building control: roots cut out by hand',
    });
  });
});

describe('a gate that is open', () => {
  const READY = [...EXAMPLE, ...TICKS.map((item) => tick('2', item))];

  test('logs the pour; a note may stay empty', async () => {
    const job = await open(READY, '2');
    await arrives('Hole 2 is ready for concrete');
    press('Log the pour');
    await painted();
    type('Bags', '11');
    press('Log it');
    await arrives('Hole 2 is poured');
    expect(await last(job)).toEqual({ kind: 'pour', hole: '2', bags: 11 });
    expect(screen.queryByText(/measures out/)).toBeNull();
  });

  test('stays on the poured hole though the address named none, until it is measured again', async () => {
    vi.spyOn(Date, 'now').mockReturnValue(Date.UTC(2026, 4, 2, 14, 30));
    const job = await openScreen(PourScreen, READY);
    await arrives('Hole 2 is ready for concrete');
    press('Log the pour');
    await painted();
    type('Bags', '11');
    press('Log it');
    await arrives('Hole 2 is poured');
    expect(screen.getByText(/^Measure post 2 again while it can still be pushed/)).toBeTruthy();
    expect(location.hash).toBe(`#/job/${job.jobId}/pour/2`);
    const again = screen.getByRole('link', { name: 'Measure post 2 again' });
    expect(again.className).toContain('button-main');
    expect(again.getAttribute('href')).toMatch(/\/set\/2$/);
    const poured: Body = { kind: 'pour', hole: '2', bags: 11 };
    const read: Body = {
      kind: 'plumb',
      hole: '2',
      side: 'front',
      offset: inches('0'),
      over: inches('4 0'),
      leans: 'none',
    };
    await open([...READY, poured, read], '2');
    await arrives('Hole 2 is poured');
    // The level alone does not say where it stands.
    expect(screen.getByText(/Not read yet since the pour: the tapes\./)).toBeTruthy();
    const tape = EXAMPLE.findLast((body) => body.kind === 'pull' && touches(body.to.thing, '2'))!;
    await open([...READY, poured, read, tape], '2');
    await arrives('Hole 2 is poured');
    expect(screen.getByRole('link', { name: 'Next hole' }).className).toContain('button-main');
  });

  test('a pour that is not saved stays on the screen', async () => {
    const job = await open(READY, '2');
    press('Log the pour');
    await painted();
    type('Bags', '11');
    fillDisk('aborted');
    press('Log it');
    await vi.waitFor(
      () => expect(within(screen.getByRole('dialog', { hidden: true })).getByText(/not saved/)).toBeTruthy(),
      8000,
    );
    expect((screen.getByLabelText('Bags') as HTMLInputElement).value).toBe('11');
    vi.restoreAllMocks();
    press('Log it');
    await arrives('Hole 2 is poured');
    expect((await job.log()).filter(({ body }) => body.kind === 'pour' && body.hole === '2')).toHaveLength(1);
  });
});

describe('after a pour', () => {
  const AT = new Date(2026, 5, 2, 14, 0).getTime();
  const POURED = [...EXAMPLE, ...TICKS.map((item) => tick('2', item))];
  const timed = (working?: number, set?: number): Body[] =>
    POURED.map((body) =>
      body.kind === 'plan'
        ? {
            ...body,
            plan: {
              ...body.plan,
              supplies: {
                ...body.plan.supplies,
                ...(working === undefined ? {} : { workingTime: working }),
                ...(set === undefined ? {} : { setTime: set }),
              },
            },
          }
        : body,
    );
  const pour: Body = { kind: 'pour', hole: '2', bags: 11, time: new Date(AT).toISOString() };
  const minutesLater = (minutes: number) => vi.spyOn(Date, 'now').mockReturnValue(AT + minutes * 60_000);

  test('the time left to push is counted down, from what the bag says and nothing else', async () => {
    minutesLater(12);
    await open([...timed(), pour], '2');
    expect(screen.queryByRole('timer')).toBeNull();
    expect(screen.getByText(/stands on the bag, and nobody has typed it/)).toBeTruthy();
    await open([...timed(30, 240), pour], '2');
    expect(screen.getByRole('timer').textContent).toBe('18 min');
    expect(screen.getByText(/^Measure post 2 again while it can still be pushed/)).toBeTruthy();
    minutesLater(40);
    await open([...timed(30, 240), pour], '2');
    expect(screen.queryByRole('timer')).toBeNull();
    expect(screen.getByText(/leave it alone until it is set, in 3 h 20 min/)).toBeTruthy();
    minutesLater(300);
    await open([...timed(30, 240), pour], '2');
    expect(screen.getByText(/it cannot be pushed any more/)).toBeTruthy();
  });

  test('is told at another hole while it can still be pushed, and again the next day', async () => {
    minutesLater(12);
    await open([...timed(30), pour], '3');
    const wet = screen.getByRole('link', { name: '18 min left to push post 2: measure it' });
    // It comes and goes by the clock: the list that is ticked stands above it.
    expect(missing('3').compareDocumentPosition(wet) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
    minutesLater(60 * 20);
    await open([...timed(30), pour], '3');
    expect(screen.getByRole('link', { name: /^The next day: measure .*post 2.* again$/ })).toBeTruthy();
  });

  test('a shift that is found once it is set is no nudge any more, but a decision', async () => {
    minutesLater(300);
    const tape = EXAMPLE.findLast((body) => body.kind === 'pull' && touches(body.to.thing, '2'));
    if (tape?.kind !== 'pull') throw new Error('no tape');
    const moved: Body = {
      ...tape,
      reading: { m: tape.reading.m + 0.03, typed: `${(tape.reading.m + 0.03) * 1000} mm`, units: 'mm' },
    };
    const job = await open([...timed(30, 240), pour, moved], '2');
    expect(document.body.textContent).toMatch(
      /Post 2 moved since its concrete went in: .* reads 1.3\/16″ more/,
    );
    expect(document.body.textContent).toMatch(/too late to push it: .* a decision by whoever is responsible/);
    press('Enter the decision');
    await painted();
    type('Who decided', 'Ms Lind');
    type('What was decided', 'it may stay');
    press('Log the decision');
    await vi.waitFor(
      () => expect(screen.getByText(/^Decided by Ms Lind: it may stay\.$/)).toBeTruthy(),
      8000,
    );
    expect(await last(job)).toMatchObject({ item: 'inspection', decides: 'moved', hole: '2' });
  });

  test('the times on the bag are typed, and said where they cross', async () => {
    const job = await open([...POURED, pour], '2');
    press('Times on the bag');
    await whole();
    const field = (label: string, text: string) => {
      fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
      fireEvent.blur(screen.getByLabelText(label));
    };
    field('Working time', '30');
    field('Set time', '20');
    await vi.waitFor(async () =>
      expect((await last(job)) as object).toMatchObject({
        plan: { supplies: { workingTime: 30, setTime: 20 } },
      }),
    );
    expect(await screen.findByText(/not after the working time/)).toBeTruthy();
    press('Back to no set time');
    press('Back to no working time');
    await vi.waitFor(async () => {
      const body = await last(job);
      const supplies = body.kind === 'plan' ? (body.plan.supplies ?? {}) : null;
      expect(supplies).not.toBeNull();
      expect(supplies).not.toHaveProperty('workingTime');
      expect(supplies).not.toHaveProperty('setTime');
    });
    field('Set time', '0');
    expect(screen.getByText(/Set time: 0 is out of range/)).toBeTruthy();
  });
});

describe('what the job asks for besides', () => {
  test('what is asked no more is off the list, and was not done', async () => {
    await open(EXAMPLE, '2');
    press('Ask for more before concrete');
    await whole();
    type('What is asked', 'conduit sleeve');
    press('For every hole');
    await arrives('Hole 2: 7 missing before concrete');
    press('Ask for more before concrete');
    await whole();
    press('No more: conduit sleeve');
    await arrives('Hole 2: 6 missing before concrete');
    expect(missing('2').textContent).not.toMatch(/conduit sleeve|done/i);
  });

  test('is added on the spot, ticked like the rest, and every item says why it is asked', async () => {
    const job = await open(EXAMPLE, '2');
    press('Ask for more before concrete');
    await whole();
    press('For every hole');
    expect(screen.getByText(/What is asked is empty/)).toBeTruthy();
    type('What is asked', 'conduit sleeve');
    press('For every hole');
    await arrives('Hole 2: 7 missing before concrete');
    press(/^Conduit sleeve/);
    await arrives('Hole 2: 6 missing before concrete');
    expect(await last(job)).toEqual({
      kind: 'check',
      hole: '2',
      item: 'asked',
      asked: 'conduit sleeve',
      done: true,
    });
    press('Why each is asked');
    await whole();
    const why = within(screen.getByRole('dialog', { hidden: true }));
    expect(why.getByText(/Asked for by this job/)).toBeTruthy();
    expect(why.getAllByText(/From: /).length).toBeGreaterThan(14);
  });
});
