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

/** What a person vouched for, and by which tick; null where there is none. */
export interface Counted {
  readonly state: Tick;
  readonly tick: Ticked | null;
}

/**
 * The tick that counts for a hole. The last one for that very hole goes before the last one for the whole job, unless it
 * has grown stale: a later round of the whole site then renews it.
 *
 * @param before ticks at this index of the entries or later do not count
 * @param asked which of the job's own items, where `item` is `asked`
 */
export function countedTick(
  view: JobView,
  item: Check,
  hole: string,
  fresh: Fresh,
  before = Number.POSITIVE_INFINITY,
  asked: string | undefined = undefined,
): Counted {
  const own = counted(view.book.tick(item, hole, before, asked), fresh);
  if (own?.state === 'done' || own?.state === 'not-done') return own;
  const whole = counted(view.book.tick(item, undefined, before, asked), fresh);
  return whole && whole.state !== 'not-done' ? whole : (own ?? whole ?? NOT_TICKED);
}

const NOT_TICKED: Counted = { state: 'not-done', tick: null };

export const tickOf = (view: JobView, item: Check, hole: string, fresh: Fresh): Tick =>
  countedTick(view, item, hole, fresh).state;

function counted(tick: Ticked | null, fresh: Fresh): Counted | null {
  if (!tick) return null;
  if (!tick.entry.body.done) return { state: 'not-done', tick };
  return { state: fresh(tick) ? 'done' : 'stale', tick };
}
