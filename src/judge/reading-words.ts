import type { Entry, EntryOf } from '../job/entry-schema.ts';
import { lengthWords } from '../job/length.ts';
import { isKind } from '../job/log.ts';
import { describeEntry, endName } from '../job/words.ts';
import type { JobView } from './view.ts';
import { capital } from './words.ts';

/** A reading by what it was of and what it said: `A to post 4, the middle of the outer face, 18′ 6 5/16″`. */
export function readingWords(view: JobView, entry: Entry): string {
  if (!isKind(entry, 'pull')) return describeEntry(entry, view.plan);
  return `${pullWords(view, entry)}, ${lengthWords(entry.body.reading)}`;
}

const pullWords = (view: JobView, { body }: EntryOf<'pull'>): string =>
  capital(`${endName(body.from, view.plan)} to ${endName(body.to, view.plan)}`);

/** Readings by their ids, in the order of the log, each in quotes. */
export function quotedReadings(view: JobView, ids: Iterable<string>): string[] {
  const wanted = new Set(ids);
  return view.entries.filter(({ id }) => wanted.has(id)).map((entry) => `“${readingWords(view, entry)}”`);
}
