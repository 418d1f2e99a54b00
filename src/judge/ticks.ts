import type { Check, EntryOf } from '../job/entry-schema.ts';
import { isKind } from '../job/log.ts';
import type { JobView } from './view.ts';

/** Whether a person vouched for something: `stale` when what it was said of has changed since. */
export type Tick = 'done' | 'stale' | 'not-done';

/**
 * The tick that counts for a hole: the last one for that hole, or else the last one for the whole job.
 *
 * @param after index in the view's entries of the last change that a tick must be younger than; −1 for none
 */
export function tickOf(view: JobView, item: Check, hole: string, after: number): Tick {
  const found = lastTick(view, item, hole) ?? lastTick(view, item, undefined);
  if (!found?.entry.body.done) return 'not-done';
  return found.index > after ? 'done' : 'stale';
}

/** The last tick of an item for exactly this hole, or for the whole job where `hole` is undefined. */
export function lastTick(
  view: JobView,
  item: Check,
  hole: string | undefined,
): { entry: EntryOf<'check'>; index: number } | null {
  for (let index = view.entries.length - 1; index >= 0; index--) {
    const entry = view.entries[index]!;
    if (isKind(entry, 'check') && entry.body.item === item && entry.body.hole === hole)
      return { entry, index };
  }
  return null;
}
