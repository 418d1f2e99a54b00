import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import type { Body, Entry } from '../job/entry-schema.ts';
import { assessSituation } from '../judge/assess.ts';
import { situate } from '../judge/situation.ts';
import { StoreError } from '../store/errors.ts';
import type { JobBook, SaveState } from './job-book.ts';
import { useServices } from './services.ts';

export type OpenJob =
  | { readonly at: 'loading' }
  | { readonly at: 'failed'; readonly text: string }
  | { readonly at: 'open'; readonly book: JobBook };

type Loaded = { readonly log: readonly Entry[] } | { readonly text: string } | null;

/**
 * Opens a job and keeps its log in step with the disk: first the write, then the screen. Coming back to the front it
 * reads again, for another window may have written.
 */
export function useJob(jobId: string): OpenJob {
  const { book } = useServices();
  const [loaded, setLoaded] = useState<Loaded>(null);
  const [save, setSave] = useState<SaveState>({ at: 'saved', last: null });

  const load = useCallback(async () => {
    try {
      setLoaded({ log: await book.loadLog(jobId) });
    } catch (error) {
      setLoaded({ text: sentenceOf(error) });
    }
  }, [book, jobId]);

  useEffect(() => {
    void load();
    const onVisible = () => {
      if (document.visibilityState === 'visible') void load();
    };
    document.addEventListener('visibilitychange', onVisible);
    return () => document.removeEventListener('visibilitychange', onVisible);
  }, [load]);

  const write = useCallback(async (work: () => Promise<Entry>): Promise<Entry | null> => {
    setSave({ at: 'saving' });
    try {
      const entry = await work();
      setLoaded((was) => ({ log: was && 'log' in was ? [...was.log, entry] : [entry] }));
      setSave({ at: 'saved', last: entry });
      return entry;
    } catch (error) {
      setSave({ at: 'failed', text: sentenceOf(error) });
      return null;
    }
  }, []);

  const log = loaded && 'log' in loaded ? loaded.log : null;
  const situation = useMemo(() => (log ? situate(log) : null), [log]);
  const assessment = useMemo(() => (situation ? assessSituation(situation) : null), [situation]);
  const append = useCallback((body: Body) => write(() => book.append(jobId, body)), [book, jobId, write]);
  const strike = useCallback(
    async (id: string, reason: string) => (await write(() => book.strike(jobId, id, reason))) !== null,
    [book, jobId, write],
  );

  if (loaded && 'text' in loaded) return { at: 'failed', text: loaded.text };
  if (!log || !situation || !assessment) return { at: 'loading' };
  return { at: 'open', book: { jobId, log, situation, assessment, save, append, strike } };
}

/** A store's error has a sentence for the user; anything else is a fault of ours and goes on to the console. */
function sentenceOf(error: unknown): string {
  if (error instanceof StoreError) return error.message;
  throw error;
}
