import type { Check } from '../job/entry-schema.ts';
import type { Placed } from './book.ts';
import type { JobView } from './view.ts';

/** A tick, and where it stands among the entries. */
export type Ticked = Placed<'check'>;

/** Whether a person vouched for something: `stale` when what it was said of has changed since. */
export type Tick = 'done' | 'stale' | 'not-done';

/** Whether a tick is still young enough to count. */
export type Fresh = (tick: Ticked) => boolean;
export const always: Fresh = () => true;
/** Younger than the entry at `index`; every tick is younger than −1. */
export const after =
  (index: number): Fresh =>
  (tick) =>
    tick.index > index;

/**
 * The tick that counts for a hole. The last one for that very hole goes before the last one for the whole job, unless it
 * has grown stale: a later round of the whole site then renews it.
 */
export function tickOf(view: JobView, item: Check, hole: string, fresh: Fresh): Tick {
  const own = stateOf(view.book.tick(item, hole), fresh);
  if (own === 'done' || own === 'not-done') return own;
  const whole = stateOf(view.book.tick(item, undefined), fresh) ?? 'not-done';
  return whole === 'not-done' ? (own ?? whole) : whole;
}

function stateOf(tick: Ticked | null, fresh: Fresh): Tick | null {
  if (!tick) return null;
  if (!tick.entry.body.done) return 'not-done';
  return fresh(tick) ? 'done' : 'stale';
}
