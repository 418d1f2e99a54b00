import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Body, Entry } from '../job/entry-schema.ts';
import { inOrder } from '../job/log.ts';
import { StoreError } from '../store/errors.ts';
import { useDerived } from './derived.ts';
import type { FirstJob } from './first-job.ts';
import type { JobBook, SaveState } from './job-book.ts';
import { useServices } from './services.ts';

export type OpenJob =
  | { readonly at: 'loading' }
  | { readonly at: 'failed'; readonly text: string }
  | { readonly at: 'open'; readonly book: JobBook };

export type Loaded = { readonly log: readonly Entry[] } | { readonly text: string } | null;

/**
 * Opens a job and keeps its log in step with the disk: first the write, then the screen. Coming back to the front it
 * reads again, for another window may have written.
 *
 * @param first the job where it has just been read
 */
export function useJob(jobId: string, first: FirstJob | null = null): OpenJob {
  const { book, kept } = useServices();
  const [loaded, setLoaded] = useState<Loaded>(first && { log: first.log });
  const [save, setSave] = useState<SaveState>({ at: 'saved', last: null });

  const load = useCallback(async () => {
    try {
      const log = await book.loadLog(jobId);
      setLoaded((was) => withEntries(was, log));
    } catch (error) {
      // What is on the screen stays there: only a job that never opened has nothing to show.
      setLoaded((was) => (was && 'log' in was ? was : { text: sentenceOf(error, NOT_OPENED) }));
      passOn(error);
    }
  }, [book, jobId]);

  useEffect(() => {
    if (!first) void load();
    const onVisible = () => {
      if (document.visibilityState === 'visible') void load();
    };
    document.addEventListener('visibilitychange', onVisible);
    return () => document.removeEventListener('visibilitychange', onVisible);
  }, [load, first]);

  const write = useCallback(async (work: () => Promise<Entry>): Promise<Entry | null> => {
    setSave({ at: 'saving' });
    try {
      const entry = await work();
      setLoaded((was) => withEntries(was, [entry]));
      setSave({ at: 'saved', last: entry });
      return entry;
    } catch (error) {
      setSave({ at: 'failed', text: sentenceOf(error, NOT_SAVED) });
      passOn(error);
      return null;
    }
  }, []);

  const log = loaded && 'log' in loaded ? loaded.log : null;
  const derived = useDerived(jobId, log, first?.kept ?? null, kept);
  const append = useCallback((body: Body) => write(() => book.append(jobId, body)), [book, jobId, write]);
  const strike = useCallback(
    async (id: string, reason: string) => (await write(() => book.strike(jobId, id, reason))) !== null,
    [book, jobId, write],
  );

  if (loaded && 'text' in loaded) return { at: 'failed', text: loaded.text };
  if (!log || !derived) return { at: 'loading' };
  const { situation, assessment } = derived;
  return { at: 'open', book: { jobId, log, situation, assessment, save, append, strike } };
}

/**
 * What is shown and what came from the disk, each entry once and in order: a read that began before an append was on disk
 * must not take it off the screen, and a log only grows. The same object when nothing is new, so that nothing is computed
 * again for it.
 */
export function withEntries(shown: Loaded, more: readonly Entry[]): Loaded {
  const log = shown && 'log' in shown ? shown.log : [];
  const known = new Set(log.map(({ id }) => id));
  const fresh = more.filter(({ id }) => !known.has(id));
  return shown && 'log' in shown && fresh.length === 0 ? shown : { log: inOrder([...log, ...fresh]) };
}

const NOT_SAVED =
  'Nothing was saved, by a fault of this app; what you entered is still here: try again, or load the page again.';
const NOT_OPENED =
  'The job did not open, by a fault of this app; its log is still on this phone: load the page again.';

const sentenceOf = (error: unknown, fault: string): string =>
  error instanceof StoreError ? error.message : fault;

/** A store's error has had its sentence; anything else is a fault of ours and goes on to the console. */
function passOn(error: unknown): void {
  if (!(error instanceof StoreError)) throw error;
}
