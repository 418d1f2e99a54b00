import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Body, Entry } from '../job/entry-schema.ts';
import type { Situation } from '../judge/situation.ts';
import type { Assessment } from '../judge/types.ts';

/** What the header says of the disk. `saved` is only ever said after the database has said so. */
export type SaveState =
  | { readonly at: 'saved'; readonly last: Entry | null }
  | { readonly at: 'saving' }
  | { readonly at: 'failed'; readonly text: string };

/** One job as the screens see it: its log, what follows from it, and the two ways to add to it. */
export interface JobBook {
  readonly jobId: string;
  readonly log: readonly Entry[];
  readonly situation: Situation;
  readonly assessment: Assessment;
  readonly save: SaveState;
  /** Resolves to the entry once it is on disk; to null when it is not, and then `save` says why. */
  append(body: Body): Promise<Entry | null>;
  /** Resolves to true once the strike is on disk. */
  strike(entryId: string, reason: string): Promise<boolean>;
}

export const JobBookContext = createContext<JobBook | null>(null);

/** The job that is open. */
export function useJobBook(): JobBook {
  const book = useContext(JobBookContext);
  if (!book) throw new Error('useJobBook: no JobBookContext.Provider above this component');
  return book;
}
