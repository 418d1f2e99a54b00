import { type Check, DECISIONS, type Decision } from '../../job/entry-schema.ts';
import type { Gate, GateItem } from '../../judge/types.ts';
import { capital } from '../../judge/words.ts';

/** How an item that is missing at the gate gets green. */
export type Mend =
  /** By somebody's eyes: a tap logs it. */
  | { readonly by: 'tick'; readonly item: Check; readonly asked?: string; readonly words: string }
  /** By whoever is responsible: it is logged with who decided what. */
  | { readonly by: 'decision'; readonly on: Decision }
  /** By what is dug or measured in another phase. */
  | { readonly by: 'phase'; readonly phase: 'plan' | 'stake' | 'dig' | 'set' };

const TICK_WORDS = {
  clean: 'Clean, and measured again',
  gravel: 'The gravel is in',
  braced: 'It is braced two ways',
  inspection: 'Inspected, or none is asked for',
  room: 'Room all round, measured at the post',
  weather: 'The weather is fit for concrete',
} as const satisfies Partial<Record<Check, string>>;
type Tick = keyof typeof TICK_WORDS;
const isTick = (item: GateItem['item']): item is Tick => Object.hasOwn(TICK_WORDS, item);

const DUG: ReadonlySet<GateItem['item']> = new Set(['dug', 'depth', 'width', 'room']);
const STAKED: ReadonlySet<GateItem['item']> = new Set(['utilities', 'ties', 'baseline', 'staked']);

function phaseOf(item: GateItem['item']): 'plan' | 'stake' | 'dig' | 'set' {
  if (item === 'bought') return 'plan';
  if (DUG.has(item)) return 'dig';
  return STAKED.has(item) ? 'stake' : 'set';
}

export interface MissingItem {
  readonly item: GateItem['item'];
  /** Which of the job's own items, where `item` is `asked`. */
  readonly asked?: string;
  readonly text: string;
  readonly mend: Mend;
}

/**
 * What is missing at a pour's gate, each with the way to mend it: first what has to be measured, then what waits for a
 * decision, then what eyes can tell, in the order that it is done.
 *
 * A tick that could not hold yet is not offered: nobody has seen the bottom of a hole that is not dug. While something met
 * in the ground waits for a decision, its inspection is ticked by that decision alone, so that a note always goes with it.
 */
export function missingItems({ items }: Gate): MissingItem[] {
  const missing = items.filter(({ green }) => !green);
  const red = new Set(missing.map(({ item }) => item));
  const hidden: GateItem['item'][] = red.has('dug')
    ? ['obstruction', 'clean', 'gravel', 'room', 'inspection']
    : missing.some(({ decision }) => decision)
      ? ['inspection']
      : [];
  if (red.has('set')) hidden.push('braced', 'position', 'checked', 'spacing');
  if (red.has('set') && !missing.some(({ item, decision }) => item === 'room' && decision))
    hidden.push('room');
  return (
    items
      .filter(({ green, item }) => !green && !hidden.includes(item))
      // One trouble can stand in the way of two items; it is told once.
      .filter(({ text }, i, all) => all.findIndex((other) => other.text === text) === i)
      .map((each) => ({
        item: each.item,
        ...(each.asked === undefined ? {} : { asked: each.asked }),
        text: each.text,
        mend: mendOf(each),
      }))
      .sort((p, q) => RANK[p.mend.by] - RANK[q.mend.by])
  );
}

const RANK: Record<Mend['by'], number> = { phase: 0, decision: 1, tick: 2 };

function mendOf({ item, asked, decision, measured }: GateItem): Mend {
  const on = decision && DECISIONS.find((each) => each === item);
  if (on) return { by: 'decision', on };
  if (item === 'asked' && asked !== undefined) return { by: 'tick', item, asked, words: capital(asked) };
  if (isTick(item) && !measured) return { by: 'tick', item, words: TICK_WORDS[item] };
  return { by: 'phase', phase: phaseOf(item) };
}
