// @vitest-environment happy-dom
import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { RecordScreen } from '../../../src/screens/record/record-screen.tsx';
import { sampleBodies } from '../../job/sample.ts';
import { openScreen } from '../plan/open-screen.tsx';
import { press, whole } from '../press.ts';
import { PROVED } from '../stake/field-day.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const note = (n: number): Body => ({ kind: 'note', text: `note ${n}` });

describe('the record', () => {
  test('has the drawing, a table of posts and one of holes, and how it was computed', async () => {
    await openScreen(RecordScreen, [sampleBodies.plan, sampleBodies.site, sampleBodies.dug]);
    expect(screen.getByRole('img', { name: /^Garden room, seen from above/ })).toBeTruthy();
    const posts = within(screen.getByRole('table', { name: 'Posts as set' }));
    expect(posts.getByRole('rowheader', { name: 'Pier P' })).toBeTruthy();
    expect(posts.getByRole('columnheader', { name: 'Level with the others' })).toBeTruthy();
    expect(screen.getByText(/^The tops|^Tops|^No top is measured/)).toBeTruthy();
    const holes = within(screen.getByRole('table', { name: 'Holes as dug' }));
    const four = within(holes.getByRole('rowheader', { name: '4' }).closest('tr')!);
    expect(four.getByText('rock')).toBeTruthy();
    expect(screen.getByRole('heading', { name: 'How it was computed' })).toBeTruthy();
  });

  test('prints', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    await openScreen(RecordScreen, [sampleBodies.plan]);
    fireEvent.click(screen.getByRole('button', { name: 'Print' }));
    expect(print).toHaveBeenCalledOnce();
  });

  test('tells what the adjustment says of every reading, for paper too, one tap further', async () => {
    await openScreen(RecordScreen, PROVED);
    press('Every reading');
    await whole();
    const pulls = within(screen.getByRole('table', { name: 'Tape pulls' }));
    const sheet = within(screen.getByRole('dialog', { name: 'Every reading' }));
    expect(pulls.getByRole('rowheader', { name: '1. A to B' })).toBeTruthy();
    expect(pulls.getAllByRole('columnheader').map(({ textContent }) => textContent)).toEqual([
      'Pull',
      'Read',
      'Should read',
      'Off by',
      'Guarded',
      'Against luck',
      'Shows from',
    ]);
    expect(sheet.getByText(/^Shows from: the smallest misreading/)).toBeTruthy();
    expect(sheet.getByRole('button', { name: 'Print' })).toBeTruthy();
  });

  test('says that nothing tells of a place before anything is pulled', async () => {
    await openScreen(RecordScreen, [sampleBodies.plan, sampleBodies.site]);
    press('Every reading');
    await whole();
    expect(screen.getByText('No pull tells of a place yet.')).toBeTruthy();
  });

  test('without a plan still shows its field book', async () => {
    await openScreen(RecordScreen, [note(1)]);
    expect(screen.getByText(/^No plan stands/)).toBeTruthy();
    expect(screen.getByText('Note: note 1')).toBeTruthy();
  });
});

describe('its field book', () => {
  test('strikes an entry with a reason, and goes on showing it', async () => {
    const job = await openScreen(RecordScreen, [sampleBodies.plan, note(1)]);
    fireEvent.click(screen.getByRole('button', { name: 'Strike: Note: note 1' }));
    const form = within(screen.getByRole('dialog', { name: 'Strike an entry' }));
    fireEvent.click(form.getByRole('radio', { name: 'mistyped' }));
    fireEvent.click(form.getByRole('button', { name: 'Strike it' }));
    await waitFor(async () =>
      expect((await job.log()).at(-1)!.body).toMatchObject({ kind: 'strike', reason: 'mistyped' }),
    );
    expect(await screen.findByText('struck: mistyped')).toBeTruthy();
    expect(screen.getByText('Note: note 1').tagName).toBe('S');
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  test('is short until the rest is asked for, and has it all in the page for paper', async () => {
    const notes = Array.from({ length: 25 }, (_, i) => note(i));
    await openScreen(RecordScreen, [sampleBodies.plan, ...notes]);
    expect(screen.getByText('Note: note 0')).toBeTruthy();
    expect(document.querySelectorAll('.book-lines-short .book-line-late')).toHaveLength(6);
    fireEvent.click(screen.getByRole('button', { name: 'Show all 26 lines' }));
    expect(document.querySelectorAll('.book-lines-short')).toHaveLength(0);
  });
});

describe('backing up', () => {
  test('hands a file to the share sheet, notes it, and says what it knows', async () => {
    const share = vi.fn((_: ShareData) => Promise.resolve());
    vi.stubGlobal('navigator', { ...navigator, canShare: () => true, share });
    const job = await openScreen(RecordScreen, [sampleBodies.plan, note(1)]);
    expect(await screen.findByText(/^Never backed up/)).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Back up' }));
    expect(share.mock.calls[0]![0].files![0]!.name).toBe('Garden room.swingtape.txt');
    const said = await screen.findByText(/was handed to the app you chose/);
    expect(said.closest('.frame-actions')).toBeTruthy();
    await waitFor(async () => expect(await job.book.job(job.jobId)).toMatchObject({ backedUpCount: 2 }));
    expect(await screen.findByText('Nothing was logged since the last backup.')).toBeTruthy();
  });

  test('that was closed is not noted', async () => {
    const share = () => Promise.reject(new DOMException('closed', 'AbortError'));
    vi.stubGlobal('navigator', { ...navigator, canShare: () => true, share });
    const job = await openScreen(RecordScreen, [sampleBodies.plan]);
    await screen.findByText(/^Never backed up/);
    fireEvent.click(screen.getByRole('button', { name: 'Back up' }));
    expect(await screen.findByText(/^Not backed up/)).toBeTruthy();
    expect(await job.book.job(job.jobId)).toMatchObject({ lastBackupAt: null });
  });
});
