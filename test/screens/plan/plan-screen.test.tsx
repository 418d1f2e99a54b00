// @vitest-environment happy-dom
import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import * as v from 'valibot';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { ofKind } from '../../../src/job/log.ts';
import { type Plan, PlanSchema } from '../../../src/job/plan-schema.ts';
import { defaultPlan } from '../../../src/plan/index.ts';
import { PlanScreen } from '../../../src/screens/plan/plan-screen.tsx';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { unbroken } from '../../../src/ui/unbroken.ts';
import { sampleBodies, samplePlan } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { openScreen, painted } from './open-screen.tsx';

afterEach(() => {
  vi.restoreAllMocks();
});

const open = (plan: Plan = samplePlan, hole: string | null = null) =>
  openScreen(PlanScreen, [{ kind: 'plan', plan }], hole);

/** Types into a field and leaves it, as a thumb does. */
function type(field: HTMLElement, text: string): void {
  fireEvent.input(field, { target: { value: text } });
  fireEvent.blur(field);
}

const field = (label: string) => screen.getByLabelText(label);
const choose = (label: string | RegExp) =>
  fireEvent.click(screen.getByRole('radio', { name: label, hidden: true }));
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name, hidden: true }));

/** A second tap on the same button counts only after this long. */
const beyondRepeat = () => new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));

describe('a field of the plan', () => {
  test('writes one entry with the whole plan when it is left', async () => {
    const job = await open();
    type(field('Number of posts'), '10');
    await waitFor(async () => expect((await job.plan()).shape).toMatchObject({ count: 10 }));
    const plans = ofKind(await job.log(), 'plan');
    expect(plans).toHaveLength(2);
    expect(plans[1]!.body.plan).toEqual({ ...samplePlan, shape: { ...samplePlan.shape, count: 10 } });
    expect(await screen.findByText('10 posts on a ring round a pier, a post at the front')).toBeTruthy();
  });

  test('keeps rubbish on the screen with the reason, and changes nothing', async () => {
    const job = await open();
    for (const bad of ['', 'ten', '-3', '0', '1e9', '61']) {
      type(field('Number of posts'), bad);
      await waitFor(() => expect(screen.getByRole('alert').textContent).toMatch(/^Number of posts/));
      expect((field('Number of posts') as HTMLInputElement).value).toBe(bad);
    }
    expect(await job.log()).toHaveLength(1);
  });

  test.each([
    ['Size of the ring', ['', 'wide', '-8′', '0', '1e9', '12']],
    ['Gravel', ['', 'much', '-6″', '1e9']],
    ['Frost depth', ['', 'none', '-1′', '1e9']],
    ['Plumb tolerance', ['', 'straight', '-1/4″', '0']],
  ])('%s refuses what is no good, and changes nothing', async (label, texts) => {
    const job = await open();
    for (const bad of texts) {
      type(field(label), bad);
      await waitFor(() => expect(screen.getByRole('alert').textContent).toMatch(new RegExp(`^${label}`)));
      expect((field(label) as HTMLInputElement).value).toBe(bad);
    }
    expect(await job.log()).toHaveLength(1);
  });

  test('left by tapping another choice loses neither change', async () => {
    const job = await open();
    type(field('Number of posts'), '12');
    choose('A flat');
    await waitFor(async () => expect((await job.plan()).shape).toMatchObject({ count: 12, front: 'flat' }));
    expect(ofKind(await job.log(), 'plan')).toHaveLength(3);
  });

  test('left as it was writes nothing', async () => {
    const job = await open();
    type(field('Number of posts'), '8');
    choose(/^Ring/);
    await painted();
    expect(screen.getByText('✓ saved')).toBeTruthy();
    expect(await job.log()).toHaveLength(1);
  });

  test('can be taken back by Undo, and then shows what stands', async () => {
    const job = await open();
    type(field('Number of posts'), '10');
    fireEvent.click(await screen.findByText('Undo'));
    await waitFor(async () => expect(await job.plan()).toEqual(samplePlan));
    await waitFor(() => expect((field('Number of posts') as HTMLInputElement).value).toBe('8'));
  });

  test('that could not be written stays, says so, and can be saved again', async () => {
    const job = await open();
    fillDisk('aborted');
    type(field('Number of posts'), '10');
    const again = await screen.findByRole('button', { name: 'Save the plan again' });
    expect(screen.getByText(/the phone is full/)).toBeTruthy();
    expect((field('Number of posts') as HTMLInputElement).value).toBe('10');
    expect(await job.log()).toHaveLength(1);
    vi.restoreAllMocks();
    fireEvent.click(again);
    await waitFor(async () => expect((await job.plan()).shape).toMatchObject({ count: 10 }));
  });
});

describe('sizes and sections', () => {
  test('a post by its trade name brings its actual size', async () => {
    const job = await open();
    choose(/^8×8/);
    await waitFor(async () =>
      expect((await job.plan()).each.holds).toMatchObject({
        nominal: '8×8',
        width: { typed: '7 1/2″' },
        depth: { typed: '7 1/2″' },
        turned: 'centre',
      }),
    );
  });

  test('a lean is typed as so much over such a length, and stored as a ratio', async () => {
    const job = await open();
    type(field('Plumb tolerance'), '1/8″');
    await waitFor(async () => expect((await job.plan()).tolerances.plumb).toBeCloseTo(0.125 / 120, 12));
    type(field('Plumb tolerance, over'), '4′');
    await waitFor(async () => expect((await job.plan()).tolerances.plumb).toBeCloseTo(0.125 / 48, 12));
  });

  test('a tape of 2.4 mm and 5 m of gravel are slips of units, and refused', async () => {
    const job = await open(defaultPlan('mm'));
    const before = await job.plan();
    type(field('Tape length'), '2,4');
    await screen.findByText(/“2,4” is less than 3000 mm; type that or more/);
    type(field('Gravel'), '5000');
    await screen.findByText(/“5000” is more than 1000 mm; type that or less/);
    expect(await job.plan()).toEqual(before);
  });

  test('in a metric job a lean is typed in millimetres in a metre, a tape’s growth in ten', async () => {
    const job = await open(defaultPlan('m'));
    expect((field('Plumb tolerance') as HTMLInputElement).value).toBe('2.1');
    expect(document.body.textContent?.replaceAll('\u00a0', ' ')).toContain('plumb 2.1 mm in 1 m');
    type(field('Plumb tolerance'), '3');
    await waitFor(async () => expect((await job.plan()).tolerances.plumb).toBeCloseTo(0.003, 12));
    type(field('Tape error by length'), '2');
    await waitFor(async () =>
      expect((await job.plan()).instruments.tapeErrorPerMetre).toBeCloseTo(0.0002, 12),
    );
  });

  test('other units write the same lengths another way', async () => {
    const job = await open();
    choose(/^Metres/);
    await waitFor(() => expect((field('Size of the ring') as HTMLInputElement).value).toBe('2.743 m'));
    expect(await job.plan()).toEqual({ ...samplePlan, units: 'm' });
  });

  test('a top may lie below the benchmark', async () => {
    const job = await open();
    type(field('Height of the top'), '-6″');
    await waitFor(async () => expect((await job.plan()).each.top.m).toBeCloseTo(-0.1524, 9));
    expect(await screen.findByText(/^Tops 6″ below the benchmark/)).toBeTruthy();
  });
});

describe('single holes', () => {
  test('a hole in the address opens its sheet; what is typed there is for it alone', async () => {
    const job = await open(samplePlan, '5');
    const sheet = within(screen.getByRole('dialog', { name: 'Hole 5' }));
    type(sheet.getByLabelText('Hole diameter'), '1′ 8″');
    await waitFor(async () =>
      expect((await job.plan()).overrides).toEqual({
        ...samplePlan.overrides,
        '5': { holeDiameter: { m: 0.508, typed: '1′ 8″', units: 'ft-in-16' } },
      }),
    );
    fireEvent.click(await sheet.findByRole('button', { name: 'Make it like the others' }));
    await waitFor(async () => expect((await job.plan()).overrides).toEqual(samplePlan.overrides));
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  test('a tap on the drawing opens the sheet of that hole', async () => {
    await open();
    press(/^Hole 3: planned/);
    expect(await screen.findByRole('dialog', { name: 'Hole 3' })).toBeTruthy();
    expect(screen.getByText(/^Of its own it has: top 3′ 0 1\/2″ above the benchmark/)).toBeTruthy();
  });
});

describe('points', () => {
  const openPoints = async () => {
    const job = await open();
    choose(/^Points/);
    await screen.findByRole('button', { name: 'Add a hole', hidden: true });
    return job;
  };

  test('one is added only when all of it can be read', async () => {
    const job = await openPoints();
    press('Add a hole');
    press('Add it');
    expect(screen.getAllByRole('alert').map((alert) => alert.textContent)).toEqual([
      unbroken('To the right is empty: type a length, such as 12′ 6 1/2″.'),
      unbroken('To the front is empty: type a length, such as 12′ 6 1/2″.'),
    ]);
    expect(ofKind(await job.log(), 'plan')).toHaveLength(2);
    fireEvent.input(screen.getByLabelText('To the right'), { target: { value: '20′' } });
    fireEvent.input(screen.getByLabelText('To the front'), { target: { value: '-3′' } });
    await beyondRepeat();
    press('Add it');
    expect(
      await screen.findByRole('button', {
        name: unbroken('Hole 10: 20′ 0″ right, 3′ 0″ behind'),
        hidden: true,
      }),
    ).toBeTruthy();
  });

  test('one is changed and one removed', async () => {
    const job = await openPoints();
    press(/^Hole 1: 0″ right/);
    fireEvent.input(screen.getByLabelText('Label'), { target: { value: 'Gate' } });
    press('Change it');
    await screen.findByRole('button', { name: /^Hole Gate: /, hidden: true });
    press(/^Hole Gate: 0/);
    press('Remove hole Gate');
    await waitFor(async () => {
      const { shape } = await job.plan();
      expect(shape.kind === 'points' && shape.points.map(({ label }) => label)).toEqual([
        '2',
        '3',
        '4',
        '5',
        '6',
        '7',
        '8',
        'P',
      ]);
    });
  });

  test.each([
    ['a missing column', 'label,right\n1,2', /no column “front”/],
    ['a repeated label', 'label,right,front\n1,0,0\n1,5\u2032,0', /both have the label “1”/],
    ['nothing', '', /the text is empty/],
  ])('a list with %s is refused, kept, and changes nothing', async (_, csv, reason) => {
    const job = await openPoints();
    const before = await job.plan();
    press('Bring in a list');
    fireEvent.input(screen.getByLabelText('List of holes'), { target: { value: csv } });
    press('Use this list');
    expect(screen.getByRole('alert').textContent).toMatch(reason);
    expect((screen.getByLabelText('List of holes') as HTMLTextAreaElement).value).toBe(csv);
    expect(await job.plan()).toEqual(before);
  });

  test('a list out of a file fills the box, and takes the place of all holes when it is used', async () => {
    const job = await openPoints();
    const before = await job.plan();
    press('Bring in a list');
    const file = new File(['label,right,front\nN,0,5\u2032\nS,0,-5\u2032'], 'holes.csv', {
      type: 'text/csv',
    });
    fireEvent.change(screen.getByLabelText('Open a CSV file'), { target: { files: [file] } });
    const box = screen.getByLabelText('List of holes') as HTMLTextAreaElement;
    await waitFor(() => expect(box.value).toMatch(/^label,right,front/));
    expect(await job.plan()).toEqual(before);
    press('Use this list');
    await waitFor(async () => {
      const { shape } = await job.plan();
      expect(shape.kind === 'points' && shape.points.map(({ label }) => label)).toEqual(['N', 'S']);
    });
    expect(v.safeParse(PlanSchema, await job.plan()).success).toBe(true);
  });
});

describe('the top of the page', () => {
  test('shows the head of a group that is opened', async () => {
    await open();
    const group = screen.getByText('Tolerances').closest('details')!;
    const intoView = vi.spyOn(group, 'scrollIntoView').mockImplementation(() => {});
    group.open = true;
    fireEvent(group, new Event('toggle'));
    expect(intoView).toHaveBeenCalledWith({ block: 'start' });
  });

  test('says what stops the plan, and what is still to settle', async () => {
    const { each } = samplePlan;
    await open({
      ...samplePlan,
      each: { ...each, holeDiameter: { m: 0.127, typed: '5″', units: 'ft-in-16' } },
      rules: { ...samplePlan.rules, frostDepth: null },
    });
    expect(screen.getByRole('alert').textContent).toMatch(/^Hole diameter: hole 1 is 5″ wide/);
    const notes = within(screen.getByRole('list', { name: 'Still to settle' }));
    expect(notes.getByText(/^Frost depth: it is not known yet/)).toBeTruthy();
  });

  test('cautions when things already stand by the plan', async () => {
    await openScreen(PlanScreen, [
      sampleBodies.plan,
      { kind: 'stand', thing: { kind: 'hole-stake', hole: '1' }, event: 'driven' },
      sampleBodies.dug,
    ]);
    const caution = screen.getByRole('region', { name: /^Caution: things stand/ });
    expect(caution.textContent).toContain('1 stake is driven, 1 hole is dug.');
    // What is dug is no longer only planned, here too.
    expect(screen.getByLabelText('Hole 4: dug')).toBeTruthy();
    expect(screen.getByLabelText('Hole 1: staked')).toBeTruthy();
  });

  test('cautions where a floor will want a guard, and says who decides', async () => {
    await open();
    const caution = screen.getByRole('region', { name: 'Caution: height above the ground' });
    expect(caution.textContent).toMatch(/a guard is usually required\. The building office decides\./);
  });

  test('leads on to Stake', async () => {
    const job = await open();
    const link = screen.getByRole('link', { name: 'Go to Stake' });
    expect(link.getAttribute('href')).toBe(`#/job/${job.jobId}/stake`);
  });
});

test('a job whose plans are all struck can begin one again', async () => {
  const job = await open();
  type(field('Number of posts'), '10');
  await waitFor(async () => expect(await job.log()).toHaveLength(2));
  for (const { id } of await job.log()) await job.book.strike(job.jobId, id, 'wrong drawing');
  fireEvent(document, new Event('visibilitychange'));
  await screen.findByText(/^No plan stands/);
  choose(/^Millimetres/);
  await waitFor(async () => expect(await job.plan()).toEqual(defaultPlan('mm')));
});
