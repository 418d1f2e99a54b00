import type { Check, Decision } from '../job/entry-schema.ts';
import { type Counted, countedTick, type Fresh } from './ticks.ts';
import type { Gate, GateItem, Judgement } from './types.ts';
import type { JobView } from './view.ts';

/** A gate opens when every item of it is green, and an empty list opens nothing. */
export const gateOf = (items: readonly GateItem[]): Gate => ({
  open: items.length > 0 && items.every((item) => item.green),
  items,
});

export const green = (item: GateItem['item'], text: string): GateItem => ({ item, green: true, text });
export const red = (item: GateItem['item'], text: string): GateItem => ({ item, green: false, text });
/** What waits for a decision by whoever is responsible. */
export const undecided = (item: GateItem['item'], text: string): GateItem => ({
  ...red(item, text),
  decision: true,
});

/**
 * Whether whoever is responsible has decided on something about this very hole since an entry: the sign of it is an
 * inspection ticked for the hole that says so. One for the whole job does not say that anybody saw what was met there, and
 * a decision on one thing is none on another.
 */
export function isDecided(view: JobView, hole: string, on: Decision, since: number): boolean {
  const tick = view.book.decision(on, hole);
  return tick?.entry.body.done === true && tick.index > since;
}

/** Green only for what was measured and is in. */
export const inItem = (judgement: Judgement, good: string): GateItem =>
  judgement.verdict === 'in' ? green(judgement.quantity, good) : red(judgement.quantity, judgement.why);

/** Green only for what is in and guarded by a spare reading. */
export const inAndChecked = (judgement: Judgement, good: string): GateItem =>
  judgement.verdict === 'in' && judgement.checked
    ? green(judgement.quantity, good)
    : red(judgement.quantity, judgement.why);

/** How a tick reads in a gate: when it is there, when it is not, and when it is older than what it vouches for. */
export interface TickWords {
  readonly done: string;
  readonly missing: string;
  readonly stale: string;
}

/** A gate's item that a person vouches for. */
export const tickItem = (
  view: JobView,
  item: Check,
  hole: string,
  fresh: Fresh,
  words: TickWords,
): GateItem => countedItem(item, countedTick(view, item, hole, fresh), words);

/** As `tickItem`, where the tick is found already. */
export function countedItem(item: Check, { state }: Pick<Counted, 'state'>, words: TickWords): GateItem {
  if (state === 'done') return green(item, words.done);
  return state === 'stale' ? staleItem(item, words.stale) : red(item, words.missing);
}

/** A tick that was there, and does not count any more. */
export const staleItem = (item: Check, text: string): GateItem => ({ ...red(item, text), stale: true });
