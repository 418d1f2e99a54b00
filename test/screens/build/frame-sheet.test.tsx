// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { RecordScreen } from '../../../src/screens/record/record-screen.tsx';
import { sampleBodies } from '../../job/sample.ts';
import { Field, post, ringPlan, stake } from '../../judge/field.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { press, whole } from '../press.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const RING = ['1', '2', '3', '4', '5', '6'];

/** Six posts round a pier, pulled to from A and B and from their neighbours; the last is left out. */
function setRing(left: readonly string[] = []): Field {
  const book = new Field(ringPlan()).site();
  book.pull(stake('A'), stake('B'));
  for (const hole of [...RING, 'P'].filter((label) => !left.includes(label)))
    book.set(hole).pullsTo(post(hole), [stake('A'), stake('B')]);
  RING.forEach((hole, i) => {
    const next = RING[(i + 1) % RING.length]!;
    if (!left.includes(hole) && !left.includes(next)) book.pull(post(hole), post(next), { side: 'left' });
  });
  book.benchmark();
  return book;
}

const bodies = (book: Field): Body[] => book.log.map(({ body }) => body);
const sheet = () => within(screen.getByRole('dialog', { name: 'Frame and cuts' }));

async function openFrame(first: readonly Body[]) {
  const job = await openScreen(RecordScreen, first);
  press('Frame and cuts');
  await whole();
  return job;
}

describe('frame and cuts', () => {
  test('has every side and saw setting, each with its doubt and against the drawing', async () => {
    await openFrame(bodies(setRing()));
    const side = within(
      within(sheet().getByRole('table', { name: 'Sides' }))
        .getByRole('rowheader', { name: '1 to 2' })
        .closest('tr')!,
    );
    expect(side.getByText(/^3000 mm ± \d+ mm$/)).toBeTruthy();
    expect(side.getByText('as drawn')).toBeTruthy();
    const corner = within(
      within(sheet().getByRole('table', { name: 'Angles and the saw' }))
        .getByRole('rowheader', { name: 'Post 3' })
        .closest('tr')!,
    );
    expect(corner.getByText(/^30\.0° ± 0\.\d°$/)).toBeTruthy();
  });

  test('says what is not measured, not guarded and not poured before anything else', async () => {
    await openFrame(bodies(setRing(['4'])));
    const caution = within(sheet().getByRole('region', { name: 'Caution: before you cut' }));
    expect(caution.getByText(/^Post 4 is not measured: nothing is told/)).toBeTruthy();
    expect(caution.getByText(/pier P: no spare reading guards them/)).toBeTruthy();
    expect(caution.getByText(/are not poured yet and can still move/)).toBeTruthy();
    const sides = within(sheet().getByRole('table', { name: 'Sides' }));
    expect(sides.getAllByText('not measured')).toHaveLength(4);
  });

  test('tells how a typed edge lies, keeps it in the plan, and gives no tick to what is unchecked', async () => {
    const job = await openFrame(bodies(setRing()));
    press('Edge, opening, gap');
    const edge = sheet().getByLabelText('Radius of the edge');
    fireEvent.input(edge, { target: { value: '3300' } });
    fireEvent.blur(edge);
    expect(await sheet().findByText(/^Overhang beyond the outermost corner: smallest/)).toBeTruthy();
    expect(sheet().getByText(/^The edge covers every measured post.*unchecked/)).toBeTruthy();
    expect((await job.plan()).deck?.edge?.m).toBeCloseTo(3.3, 9);
  });

  test('names the post that governs, and each cut; a top that nobody read has none', async () => {
    const book = setRing();
    RING.slice(0, 5).forEach((hole, i) => {
      book.top(hole, 840 + 10 * i);
    });
    await openFrame(bodies(book));
    expect(sheet().getByText(/^Post 1 stands least above its height/)).toBeTruthy();
    const row = (name: string) =>
      within(
        within(sheet().getByRole('table', { name: 'Cut marks' }))
          .getByRole('rowheader', { name })
          .closest('tr')!,
      );
    expect(row('Post 3').getByText(/^60 mm ± \d mm$/)).toBeTruthy();
    expect(row('Post 6').getByText('top not measured')).toBeTruthy();
    fireEvent.click(sheet().getByRole('radio', { name: 'The shortest post' }));
    expect(row('Post 3').getByText(/^20 mm ± \d mm$/)).toBeTruthy();
    expect(row('Post 1').getByText(/^none: right within/)).toBeTruthy();
  });

  test('names a post that is too short, and by how much', async () => {
    const book = setRing();
    book.top('1', 860);
    book.top('2', 750);
    await openFrame(bodies(book));
    expect(sheet().getByText(/^Too short for the plan: post 2 by 50 mm\./)).toBeTruthy();
  });

  test('is copied as text with its tables, and says so', async () => {
    const writeText = vi.fn((_: string) => Promise.resolve());
    vi.stubGlobal('navigator', { ...navigator, clipboard: { writeText } });
    await openFrame(bodies(setRing()));
    press('Copy');
    await waitFor(() => expect(sheet().getByRole('status').textContent).toMatch(/^Copied/));
    const text = writeText.mock.calls[0]![0];
    expect(text).toMatch(/^Test ring: Frame and cuts\n/);
    expect(text).toMatch(/\nSides\nPosts\tCentres\tFaces\tDrawing\n1 to 2\t3000 mm ± /);
  });

  test('says so where the browser has no clipboard', async () => {
    vi.stubGlobal('navigator', { ...navigator, clipboard: undefined });
    await openFrame(bodies(setRing()));
    press('Copy');
    await waitFor(() =>
      expect(sheet().getByRole('status').textContent).toMatch(/cannot copy here: print it/),
    );
  });

  test('goes to paper as pages: a modal sheet would be cut off', async () => {
    await openFrame(bodies(setRing()));
    const dialog = screen.getByRole('dialog', { name: 'Frame and cuts' }) as HTMLDialogElement;
    const show = vi.spyOn(dialog, 'show');
    const showModal = vi.spyOn(dialog, 'showModal');
    dispatchEvent(new Event('beforeprint'));
    expect(show).toHaveBeenCalledOnce();
    dispatchEvent(new Event('afterprint'));
    expect(showModal).toHaveBeenCalledOnce();
  });

  test('without A and B has nothing to tell', async () => {
    await openFrame([sampleBodies.plan]);
    expect(sheet().getByText(/until then no post has a place/)).toBeTruthy();
  });
});
