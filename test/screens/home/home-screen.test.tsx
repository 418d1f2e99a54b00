// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { HomeScreen } from '../../../src/screens/home/home-screen.tsx';
import { readRoute } from '../../../src/screens/route.ts';
import { type Services, ServicesContext } from '../../../src/screens/services.ts';
import type { FieldBook } from '../../../src/store/field-book.ts';
import { MOST_BACKUP_BYTES } from '../../../src/store/read-backup.ts';
import { samplePlan } from '../../job/sample.ts';
import { bookOn, phone } from '../../store/fake-store.ts';
import { press } from '../press.ts';
import { exampleLog, exampleText } from '../set/set-day.ts';

const SLOW = { timeout: 8000 };

beforeEach(() => {
  location.hash = '';
});

const opened: FieldBook[] = [];

afterEach(async () => {
  cleanup();
  // A database that is still opening would outlive the page that it belongs to.
  for (const book of opened.splice(0)) {
    await Promise.allSettled([book.listJobs()]);
    book.close();
  }
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

function open(book: FieldBook = bookOn(phone())): FieldBook {
  opened.push(book);
  const services: Services = {
    book,
    kept: null,
    offline: {
      state: () => ({ ready: true, updateReady: false, trouble: null }),
      subscribe: () => () => {},
      applyUpdate: () => Promise.reject(new Error('no update here')),
    },
    storage: async () => ({
      persisted: false,
      usedBytes: null,
      quotaBytes: null,
      text: 'The browser may delete this job.',
    }),
  };
  render(
    <ServicesContext.Provider value={services}>
      <HomeScreen />
    </ServicesContext.Provider>,
  );
  return book;
}

/** Chooses a file by the box that the keyboard reaches. */
function choose(file: File): void {
  const input = screen.getByLabelText('Restore a backup');
  Object.defineProperty(input, 'files', { value: [file], configurable: true });
  fireEvent.change(input);
}

const backup = (text: string, name = 'Orchard.swingtape.txt') => new File([text], name);
const goesTo = () => vi.waitFor(() => expect(readRoute(location.hash).at).toBe('job'), SLOW);

describe('a new job', () => {
  test('asks for what is missing by name, begins once for two taps, with a name that the box still holds', async () => {
    const book = open();
    await screen.findByText(/^Begin a job/);
    press('New job');
    press('Begin the plan');
    expect(screen.getAllByRole('alert', { hidden: true }).map((each) => each.textContent)).toEqual([
      'Name is empty: type what this job is, such as “Shed, north side”.',
      'Units are not chosen: choose what your tape is marked in.',
    ]);
    expect(await book.listJobs()).toEqual([]);
    // Not left, as on phones where a tap on a button does not take the focus.
    fireEvent.input(screen.getByLabelText('Name'), { target: { value: ' Shed ' } });
    fireEvent.click(screen.getByRole('radio', { name: /^Metres/, hidden: true }));
    press('Begin the plan');
    press('Begin the plan');
    await goesTo();
    const jobs = await book.listJobs();
    expect(jobs.map(({ name }) => name)).toEqual(['Shed']);
    expect(readRoute(location.hash)).toMatchObject({ job: jobs[0]!.id, phase: 'plan' });
  });
});

describe('the example', () => {
  test('opens on Set', async () => {
    vi.stubGlobal('fetch', async () => new Response(exampleText()));
    const book = open();
    press('Open the example job');
    await goesTo();
    expect(readRoute(location.hash)).toMatchObject({ phase: 'set' });
    expect((await book.listJobs())[0]).toMatchObject({ entryCount: exampleLog().length });
  });

  test.each([
    ['it is not there', async () => new Response('', { status: 404 })],
    ['there is no signal', () => Promise.reject(new TypeError('Failed to fetch'))],
  ])('says so where %s', async (_, fetch) => {
    vi.stubGlobal('fetch', fetch);
    open();
    press('Open the example job');
    await screen.findByText(
      'The example job is not on this phone: open the app once with a signal.',
      {},
      SLOW,
    );
    expect(location.hash).toBe('');
  });
});

describe('a backup file', () => {
  test('says what it brought, lists the job, and leads to it', async () => {
    open();
    const count = exampleLog().length;
    choose(backup(exampleText()));
    await screen.findByText(`${count} entries added.`, {}, SLOW);
    expect(screen.getByText('“Orchard yurt deck” is restored.')).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Open it' }).getAttribute('href')).toMatch(/\/record$/);
    expect([...document.querySelectorAll('.button-main')].map((each) => each.textContent)).toEqual([
      'Open it',
    ]);
    expect(screen.getByRole('link', { name: /^Orchard yurt deck/ })).toBeTruthy();
    choose(backup(exampleText()));
    await screen.findByText(`Nothing to add: all ${count} entries of it were here already.`, {}, SLOW);
  });

  test('cut off: a sentence, and nothing changed', async () => {
    const book = open();
    choose(backup(exampleText().slice(0, 5000)));
    const trouble = await screen.findByRole('alert', {}, SLOW);
    expect(trouble.textContent).toMatch(/^Backup: the file is cut off/);
    expect(await book.listJobs()).toEqual([]);
  });

  test('too large to be one: it is refused without being read', async () => {
    open();
    const large = backup('x', 'holiday.mov');
    Object.defineProperty(large, 'size', { value: MOST_BACKUP_BYTES + 1 });
    const text = vi.spyOn(large, 'text');
    choose(large);
    const trouble = await screen.findByRole('alert', {}, SLOW);
    expect(trouble.textContent).toBe(
      'Backup: “holiday.mov” is larger than 20 MB, and no job is; choose the right file.',
    );
    expect(text).not.toHaveBeenCalled();
  });

  test('out of reach: it says to copy it first', async () => {
    open();
    const away = backup('x', 'away.txt');
    vi.spyOn(away, 'text').mockRejectedValue(new DOMException('gone', 'NotReadableError'));
    choose(away);
    const trouble = await screen.findByRole('alert', {}, SLOW);
    expect(trouble.textContent).toMatch(/“away.txt” could not be read from where it lies/);
  });
});

describe('what is true of this phone', () => {
  test('speaks of no job before there is one', async () => {
    open();
    await screen.findByText('A job is kept on this phone alone, until you back it up to a file.');
    expect(screen.queryByText('The browser may delete this job.')).toBeNull();
  });

  test('asks for a backup of a job with much to lose, counted in entries', async () => {
    const book = bookOn(phone());
    const job = await book.createJob(Array.from({ length: 25 }, () => ({ kind: 'plan', plan: samplePlan })));
    open(book);
    await screen.findByText(/25 entries are on this phone alone/, {}, SLOW);
    expect(screen.getByText('The browser may delete this job.')).toBeTruthy();
    cleanup();
    await book.noteBackup(job.id, 25);
    open(book);
    await screen.findByText(/, backed up$/, {}, SLOW);
    expect(screen.queryByText(/on this phone alone\. A phone/)).toBeNull();
  });

  test('warns in a tab of Safari on a phone, and nowhere else', async () => {
    open();
    await screen.findByText(/^Begin a job/);
    expect(screen.queryByText(/Add Swingtape to the home screen/)).toBeNull();
    cleanup();
    Object.defineProperty(navigator, 'standalone', { value: false, configurable: true });
    try {
      open();
      expect(screen.getByText(/^Add Swingtape to the home screen before you enter a job/)).toBeTruthy();
    } finally {
      Reflect.deleteProperty(navigator, 'standalone');
    }
  });
});
