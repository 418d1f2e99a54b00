// @vitest-environment happy-dom
import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import type { GroundLine } from '../../../src/job/place-schema.ts';
import { PlanScreen } from '../../../src/screens/plan/plan-screen.tsx';
import { StakeScreen } from '../../../src/screens/stake/stake-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { inches, samplePlan } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { onTheFieldDay } from '../field-clock.ts';
import { openScreen, painted } from '../plan/open-screen.tsx';
import { heading, tap, tapWhenThere } from '../taps.ts';
import { PLACED, PLAN } from './field-day.ts';

onTheFieldDay();

async function type(label: string, text: string) {
  const field = screen.getByLabelText(label);
  fireEvent.input(field, { target: { value: text } });
  fireEvent.blur(field);
  await painted();
}

async function choose(group: string, name: string | RegExp) {
  fireEvent.click(within(screen.getByRole('group', { name: group })).getByRole('radio', { name }));
  await painted();
}

async function openSheet(button: RegExp | string, bodies: readonly Body[] = PLAN) {
  const job = await openScreen(StakeScreen, bodies);
  if (button !== 'Boundary, house, other lines') tap('Something stands already');
  await tapWhenThere(button);
  await screen.findByRole('dialog');
  await waitFor(() => expect(screen.queryByText('One moment…')).toBeNull());
  return job;
}

/** A second tap sooner than this on the same button is taken for a tremble. */
const beyondRepeat = () => new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));

const inSheet = () => within(screen.getByRole('dialog', { hidden: true }));
const problems = () =>
  screen.queryAllByRole('alert').map(({ textContent }) => textContent!.replaceAll('\u00a0', ' '));
const SIDE = (name: string) => `${name}: which side, as you walk from A to B`;

describe('two points that are there', () => {
  test('with the centre by two tapes and the front away from them, carry the plan, and stand at once', async () => {
    const job = await openSheet(/^Two points are there/);
    await type('A to B', '24 0');
    await type('Centre: tape from A', '20 0');
    await type('Centre: tape from B', '20 0');
    tap('Lay the plan on them');
    expect(problems().at(-1)).toBe(
      'Centre: which side, as you walk from A to B: nothing is chosen; choose left or right.',
    );
    await choose(SIDE('Centre'), 'left');
    await choose('The plan’s front looks, as you walk from A to B', 'to the left');
    await beyondRepeat();
    expect(
      inSheet()
        .getByText(/^Walk from A to B: the plan’s centre lies/)
        .textContent!.replaceAll('\u00a0', ' '),
    ).toBe(
      'Walk from A to B: the plan’s centre lies 12′ 0″ along and 16′ 0″ to the left. Its front looks away from A–B.',
    );
    tap('Lay the plan on them');
    await screen.findByText('First have buried utilities marked');
    await waitFor(async () => expect(await job.log()).toHaveLength(5));
    const bodies = (await job.log()).slice(1).map(({ body }) => body);
    expect(bodies.map(({ kind }) => kind)).toEqual(['site', 'stand', 'stand', 'pull']);
    expect(bodies[0]).toMatchObject({
      a: { right: { m: -3.6576 }, front: { m: -4.8768 } },
      b: { right: { m: 3.6576 }, front: { m: -4.8768 } },
      chosenBy: 'user',
      laid: { on: 'stakes', baseline: { typed: '24 0' }, front: { by: 'way', way: 'left' } },
    });
  });

  test('an impossible triangle is refused in words, and nothing is logged', async () => {
    const job = await openSheet(/^Two points are there/);
    await type('A to B', '24 0');
    await type('Centre: tape from A', '50 0');
    await type('Centre: tape from B', '20 0');
    await choose(SIDE('Centre'), 'left');
    await choose('The plan’s front looks, as you walk from A to B', 'to the left');
    expect(problems()).toEqual([
      'Centre: 50′ 0″ from A and 20′ 0″ from B differ by more than A to B, 24′ 0″, so that no such place is there; pull again from A and from B, and A to B.',
    ]);
    tap('Lay the plan on them');
    expect(await job.log()).toHaveLength(1);
  });

  test('that fix the holes more than twice as badly as the best places are asked back about, once', async () => {
    const job = await openSheet(/^Two points are there/);
    await type('A to B', '4 0');
    await type('Centre: tape from A', '20 0');
    await type('Centre: tape from B', '20 0');
    await choose(SIDE('Centre'), 'left');
    await choose('The plan’s front looks, as you walk from A to B', 'to the left');
    tap('Lay the plan on them');
    await waitFor(() => expect(problems().at(-1)).toMatch(/^What your own choice costs: .* tap again\.$/));
    expect(await job.log()).toHaveLength(1);
    await beyondRepeat();
    tap('Lay the plan on them');
    await screen.findByText('First have buried utilities marked');
    await waitFor(async () => expect(await job.log()).toHaveLength(5));
  });

  test('with the centre and the front by station and offset', async () => {
    const job = await openSheet(/^Two points are there/);
    await type('A to B', '24 0');
    await choose('Centre: how it is told', 'Along and off A–B');
    await type('Centre: along A–B, from A', '-2 0');
    await type('Centre: square off A–B', '18 0');
    await choose(SIDE('Centre'), 'left');
    await choose('The plan’s front looks, as you walk from A to B', 'toward a stake or mark before it');
    await choose('Front: how it is told', 'Along and off A–B');
    await type('Front: along A–B, from A', '10 0');
    await type('Front: square off A–B', '18 0');
    await choose(SIDE('Front'), 'left');
    tap('Lay the plan on them');
    await screen.findByText('First have buried utilities marked');
    const [, site] = await job.log();
    // The front looks from A to B, so the plan's right is toward the line: A is 18 ft to the right and 2 ft in front.
    expect(site!.body).toMatchObject({ a: { right: { m: 5.4864 }, front: { m: 0.6096 } } });
  });
});

describe('two stakes of holes', () => {
  const fill = async (fromA: string) => {
    const job = await openSheet('Two of the holes are staked');
    await type('A to B', '24 0');
    await choose('First stake: which hole it is of', '3');
    await type('First stake: tape from A', '26 4 13/16');
    await type('First stake: tape from B', '16 3 3/8');
    await choose(SIDE('First stake'), 'left');
    await choose('Second stake: which hole it is of', '7');
    await type('Second stake: tape from A', fromA);
    await type('Second stake: tape from B', '26 4 13/16');
    await choose(SIDE('Second stake'), 'left');
    return job;
  };

  test('that close carry the plan, and their tapes are logged as pulls', async () => {
    const job = await fill('16 3 3/8');
    expect(inSheet().getByText(/it closes\.$/)).toBeTruthy();
    tap('Lay the plan on them');
    await screen.findByText('First have buried utilities marked');
    await waitFor(async () => expect(await job.log()).toHaveLength(11));
    const bodies = (await job.log()).slice(1).map(({ body }) => body);
    expect(bodies.map(({ kind }) => kind)).toEqual([
      'site',
      ...Array(4).fill('stand'),
      ...Array(5).fill('pull'),
    ]);
    expect(bodies.slice(-4).map((body) => (body.kind === 'pull' ? body.reading.typed : ''))).toEqual([
      '26 4 13/16',
      '16 3 3/8',
      '16 3 3/8',
      '26 4 13/16',
    ]);
  });

  test('that do not close are said not to, with the foot that one tape would explain', async () => {
    await fill('15 3 3/8');
    expect(problems()[0]).toMatch(/It does not close\. It would if .* were .* One foot/);
    expect(
      screen.getByRole('button', { name: 'Lay the plan on them as they are', hidden: true }),
    ).toBeTruthy();
  });
});

describe('what was typed', () => {
  const half = async (bodies: readonly Body[] = PLAN) => {
    const job = await openSheet(/^Two points are there/, bodies);
    await type('A to B', '24 0');
    await type('Centre: tape from A', '20 0');
    await choose(SIDE('Centre'), 'left');
    await choose('The plan’s front looks, as you walk from A to B', 'to the left');
    return job;
  };
  /** The box is not left: some phones leave it focused through a tap on a button. */
  const typeOnly = (label: string, text: string) =>
    fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
  const pulls = (bodies: readonly Body[]) =>
    bodies.flatMap((body) => (body.kind === 'pull' ? [body.reading.typed] : []));

  test('stays when the disk fills between two entries, and is all logged by the next tap', async () => {
    const job = await half();
    await type('Centre: tape from B', '20 0');
    fillDisk('aborted', 2);
    tap('Lay the plan on them');
    await screen.findByText(/^Places of A and B: not all saved/);
    expect(await job.log()).toHaveLength(3);
    expect((screen.getByLabelText('A to B') as HTMLInputElement).value).toBe('24′ 0″');
    vi.restoreAllMocks();
    await beyondRepeat();
    tap('Lay the plan on them');
    await waitFor(() => expect(screen.queryByRole('dialog', { hidden: true })).toBeNull());
    const bodies = (await job.log()).map(({ body }) => body);
    expect(bodies.slice(-4).map(({ kind }) => kind)).toEqual(['site', 'stand', 'stand', 'pull']);
  });

  test('and not left yet is read at the tap; what is no length is refused, not the one before it logged', async () => {
    const job = await half();
    typeOnly('Centre: tape from B', '20 0');
    typeOnly('A to B', 'abc');
    tap('Lay the plan on them');
    await painted();
    expect(problems().at(-1)).toMatch(/^A to B/);
    expect(await job.log()).toHaveLength(1);
    typeOnly('A to B', '24 6');
    await beyondRepeat();
    tap('Lay the plan on them');
    await waitFor(async () => expect(await job.log()).toHaveLength(5));
    expect(pulls((await job.log()).map(({ body }) => body))).toEqual(['24 6']);
  });

  test('is there again after Back', async () => {
    await half();
    typeOnly('Centre: tape from B', '19 0');
    fireEvent(screen.getByRole('dialog', { hidden: true }), new Event('cancel'));
    await waitFor(() => expect(screen.queryByRole('dialog', { hidden: true })).toBeNull());
    await beyondRepeat();
    tap(/^Two points are there/);
    await waitFor(() =>
      expect((screen.getByLabelText('Centre: tape from A') as HTMLInputElement).value).toBe('20′ 0″'),
    );
    expect((screen.getByLabelText('Centre: tape from B') as HTMLInputElement).value).toBe('19′ 0″');
  });

  test('is what the tape in hand reads: the plan lies by what is there, and the pulls name the tape', async () => {
    // 100 ft of it are a foot more.
    const red = { label: 'Red', nominal: inches('100′'), actual: inches('101′'), zero: inches('0″') };
    const plan = { ...samplePlan, instruments: { ...samplePlan.instruments, tapes: [red] } };
    const job = await half([{ kind: 'plan', plan }]);
    expect(inSheet().getByRole('button', { name: 'Tape Red. Another?', hidden: true })).toBeTruthy();
    await type('Centre: tape from B', '20 0');
    tap('Lay the plan on them');
    await waitFor(async () => expect(await job.log()).toHaveLength(5));
    const bodies = (await job.log()).slice(1).map(({ body }) => body);
    expect(bodies.at(-1)).toMatchObject({ kind: 'pull', tape: 'Red', reading: { typed: '24 0' } });
    const { a, b } = bodies[0] as Extract<Body, { kind: 'site' }>;
    expect(b.right.m - a.right.m).toBeCloseTo(inches('24 0').m * 1.01, 3);
  });
});

describe('lines on the ground', () => {
  const signed = (typed: string) => inches(typed);
  const boundary: GroundLine = {
    name: 'Boundary',
    kind: 'boundary',
    from: { by: 'plan', right: signed('16 0'), front: signed('-10 0') },
    to: { by: 'plan', right: signed('16 0'), front: signed('10 0') },
    keep: signed('8 0'),
    noStakes: 'right',
  };

  test('a wall is typed, drawn and logged with the plan', async () => {
    const job = await openSheet('Boundary, house, other lines');
    tap('Add a line');
    await choose('What it is', /^Wall of a house/);
    for (const [point, way] of [
      ['First point', 'left'],
      ['Second point', 'right'],
    ] as const) {
      await type(`${point}: how far to the side of the centre`, '14 0');
      await choose(`${point}: which way, left or right, as you face the plan’s front`, way);
      await type(`${point}: how far before or behind the centre`, '13 0');
      await choose(`${point}: which way, in front or behind, as you face the plan’s front`, 'in front');
    }
    tap('Add it');
    expect(problems()).toEqual(['Where the house is: nothing is chosen; choose its side of the wall.']);
    await choose('Where the house is, as you face the plan’s front', 'in front of it');
    await beyondRepeat();
    tap('Add it');
    await screen.findByRole('button', { name: 'Change House', hidden: true });
    expect((await job.plan()).lines).toEqual([
      expect.objectContaining({ name: 'House', kind: 'house', noStakes: 'left' }),
    ]);
    expect(screen.getByText(/^House, by the plan: post 1, the nearest, keeps its outer face/)).toBeTruthy();
  });

  test('one told by two tapes lies by what is there, and again by the same when it is opened again', async () => {
    const red = { label: 'Red', nominal: inches('100′'), actual: inches('101′'), zero: inches('0″') };
    const plan = { ...samplePlan, instruments: { ...samplePlan.instruments, tapes: [red] } };
    const job = await openScreen(PlanScreen, [...PLACED, { kind: 'plan', plan }]);
    await tapWhenThere('Boundary, house, other lines');
    await tapWhenThere('Add a line');
    await painted();
    await choose('What it is', /^Another line/);
    for (const [point, fromA] of [
      ['First point', '30 0'],
      ['Second point', '40 0'],
    ] as const) {
      await choose(`${point}: how it is told`, /^Two tapes/);
      await type(`${point}: tape from A`, fromA);
      await type(`${point}: tape from B`, '30 0');
      await choose(SIDE(point), 'left');
    }
    expect(inSheet().getByRole('button', { name: 'Tape Red. Another?', hidden: true })).toBeTruthy();
    tap('Add it');
    await screen.findByRole('button', { name: 'Change Line', hidden: true });
    const from = async () =>
      (await job.plan()).lines![0]!.from as Extract<GroundLine['from'], { by: 'pulls' }>;
    expect((await from()).fromA.m).toBeCloseTo(inches('30 0').m * 1.01, 3);
    const was = await from();
    tap('Change Line');
    await beyondRepeat();
    tap('Change it');
    await screen.findByRole('button', { name: 'Change Line', hidden: true });
    expect(await from()).toEqual(was);
  });

  test('one that is too near is told on top of the page, and can be taken off again', async () => {
    const job = await openSheet('Boundary, house, other lines', [
      { kind: 'plan', plan: { ...samplePlan, lines: [boundary] } },
    ]);
    expect(screen.getByText(/^Boundary, by the plan: .* short\./)).toBeTruthy();
    expect(screen.getByText(/^Post 3 comes within .* of Boundary/).closest('.caution')).not.toBeNull();
    tap('Change Boundary');
    tap('Remove Boundary');
    await waitFor(() => expect(heading()).not.toContain('Boundary'));
    expect((await job.plan()).lines).toBeUndefined();
  });
});
