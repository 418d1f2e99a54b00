// @vitest-environment happy-dom
import { cleanup, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { REPEAT_TAP_MS } from '../../../src/ui/repeat-tap.ts';
import { inches, samplePlan } from '../../job/sample.ts';
import { fillDisk } from '../../store/fake-store.ts';
import { press } from '../press.ts';
import { DIGGABLE, dug, middleOf, ORDER } from '../stake/field-day.ts';
import { heading, tap, typeReading } from '../taps.ts';
import { choose, link, openDig, typeDug } from './dig-taps.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const [FIRST, SECOND] = ORDER as [string, string];

describe('the middle of a dug hole', () => {
  const DUG = [...DIGGABLE, dug(FIRST, '4 2')];

  test('is asked for before the next hole is dug, and one tap goes on without it', async () => {
    await openDig(DUG);
    expect(heading()).toBe(`Hole ${FIRST} is in: deep and wide enough, unchecked. Now its middle`);
    expect(screen.getByText(/Lay a lath across the foot/)).toBeTruthy();
    expect(link(`Go on without: hole ${SECOND}`)).toMatch(new RegExp(`/dig/${SECOND}$`));
    expect(screen.getByRole('link', { name: new RegExp(`^Hole ${FIRST}`) }).textContent).toContain(
      'in, unchecked',
    );
  });

  test('is read tape by tape, and says what room it leaves', async () => {
    const job = await openDig(DUG, FIRST);
    const [fromA, fromB] = middleOf(FIRST).map((body) => (body.kind === 'pull' ? body.reading.typed : ''));
    press('Enter the tape');
    await screen.findByText(/^Tape, A to the middle of hole 1/);
    typeReading(fromA!);
    press(/^Read it/);
    await screen.findByText(/One pull does not fix the middle of hole 1/);
    press('Enter the tape');
    await screen.findByText(/^Tape, B to the middle of hole 1/);
    typeReading(fromB!);
    press(/^Read it/);
    await screen.findByText(/^The middle of hole 1 lies .* from the planned centre\. Post 1 fits, with/);
    expect(heading()).toBe(`Hole ${FIRST} is in: deep and wide enough, unchecked`);
    expect((await job.log()).slice(-2).map(({ body }) => body.kind)).toEqual(['pull', 'pull']);
    expect(screen.getByRole('button', { name: 'One more tape to its middle' })).toBeTruthy();
  });

  /** A plan that asks for so much beside every post. */
  const asking = (cover: string): Body[] => [
    { kind: 'plan', plan: { ...samplePlan, rules: { ...samplePlan.rules, cover: inches(cover) } } },
    ...DIGGABLE.slice(1),
  ];
  /** Four inches and an eighth are left. */
  const TIGHT = [...asking('0 5'), dug(FIRST, '4 2'), ...middleOf(FIRST, 1.3)];
  test('too far off says which side to shave; shaved and read again, it is another hole', async () => {
    const job = await openDig(TIGHT, FIRST);
    expect(heading()).toMatch(/^Hole 1 is too tight\. Shave .* off the side that lies /);
    // Once: the table says it again to whoever opens its row.
    expect(screen.getAllByText(/Shave /).filter((at) => !at.closest('details'))).toHaveLength(1);
    tap('It is shaved: read it again');
    typeDug('4 2', '1 8');
    choose('Nothing');
    tap('Log it');
    await screen.findByText(/Now its middle$/);
    expect((await job.log()).slice(-2).map(({ body }) => body)).toMatchObject([
      { kind: 'stand', thing: { kind: 'dug-hole', hole: FIRST }, event: 'moved' },
      { kind: 'dug', hole: FIRST },
    ]);
  });

  test('shaved while the disk fills is unmeasured, what was typed stays, and the next tap logs its size', async () => {
    const job = await openDig(TIGHT, FIRST);
    tap('It is shaved: read it again');
    typeDug('4 2', '1 8');
    choose('Nothing');
    fillDisk('aborted', 1);
    tap('Log it');
    await screen.findByText(/phone is full/, { selector: 'dialog .problem' });
    const since = async () => (await job.log()).slice(TIGHT.length).map(({ body }) => body.kind);
    expect(await since()).toEqual(['stand']);
    vi.restoreAllMocks();
    await new Promise((resolve) => setTimeout(resolve, REPEAT_TAP_MS + 1));
    tap('Log it');
    await screen.findByText(/Now its middle$/);
    expect(await since()).toEqual(['stand', 'dug']);
  });

  test('too close to tell asks for one more tape, and shaving stands beside it', async () => {
    await openDig([...asking('3 1/2'), dug(FIRST, '4 2'), ...middleOf(FIRST, 1.5)], FIRST);
    expect(heading()).toBe('Hole 1 may be too tight: too close to tell');
    expect(screen.getByRole('button', { name: 'One more tape to its middle' }).className).toContain(
      'button-main',
    );
    expect(screen.getByRole('button', { name: 'It is shaved: read it again' })).toBeTruthy();
  });
});
