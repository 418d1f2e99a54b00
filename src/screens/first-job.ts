import type { Entry } from '../job/entry-schema.ts';
import type { Kept } from '../store/kept-results.ts';

/** The job that the app starts with, as read from the disk. */
export interface FirstJob {
  readonly job: string;
  readonly log: readonly Entry[];
  readonly kept: Kept | null;
}
