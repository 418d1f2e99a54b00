import type { LevelError } from '../measure/plumb-reading.ts';
import { PlumbReader } from '../measure/plumb-reading.ts';
import type { JobView } from './view.ts';
import { leanWords } from './words.ts';

/** Made once for each book, though every post asks. */
const made = new WeakMap<JobView['entries'], PlumbReader>();

/** What the plumb readings of the book say, the levels' own errors taken off where they are known. */
export function plumbReaderOf({ entries, plan }: JobView): PlumbReader {
  const before = made.get(entries);
  if (before) return before;
  const reader = new PlumbReader(entries, plan.instruments);
  made.set(entries, reader);
  return reader;
}

/** A level may seem to err by so many of its own sigmas and be true. */
const FOUND_FROM = 2;

/** Whether a level is known to be out of true. */
export const isFound = ({ slope, sigma }: Pick<LevelError, 'slope' | 'sigma'>): boolean =>
  Math.abs(slope) > FOUND_FROM * sigma;

/** What turning a level showed of it, and what follows. */
export function levelErrorWords({ plan: { units } }: JobView, { slope, sigma, turns }: LevelError): string {
  const times = turns === 1 ? 'once' : turns === 2 ? 'twice' : `${turns} times`;
  if (!isFound({ slope, sigma })) return `Turned end for end ${times}, this level shows no error of its own.`;
  return `By itself this level shows a top ${leanWords(slope, units)} too far ${slope > 0 ? 'out' : 'in'} with its marked end up, as turning it ${times} tells: that is taken off.`;
}
