import type { Check } from '../../job/entry-schema.ts';
import type { Gate, GateItem } from '../../judge/types.ts';

/** How an item that is missing at the gate gets green. */
export type Mend =
  /** By somebody's eyes: a tap logs it. */
  | { readonly by: 'tick'; readonly item: Check; readonly words: string }
  /** By whoever is responsible: it is logged with who decided what. */
  | { readonly by: 'decision' }
  /** By what is dug or measured in another phase. */
  | { readonly by: 'phase'; readonly phase: 'stake' | 'dig' | 'set' };

const TICK_WORDS = {
  clean: 'Clean, and measured again',
  gravel: 'The gravel is in',
  braced: 'It is braced two ways',
  inspection: 'Inspected, or none is asked for',
  weather: 'The weather is fit for concrete',
} as const satisfies Partial<Record<Check, string>>;
type Tick = keyof typeof TICK_WORDS;
const isTick = (item: GateItem['item']): item is Tick => Object.hasOwn(TICK_WORDS, item);

const DUG: ReadonlySet<GateItem['item']> = new Set(['dug', 'depth', 'width']);
const STAKED: ReadonlySet<GateItem['item']> = new Set(['utilities', 'ties', 'baseline', 'staked']);

function phaseOf(item: GateItem['item']): 'stake' | 'dig' | 'set' {
  if (DUG.has(item)) return 'dig';
  return STAKED.has(item) ? 'stake' : 'set';
}

export interface MissingItem {
  readonly item: GateItem['item'];
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
  const red = new Set(items.filter(({ green }) => !green).map(({ item }) => item));
  const hidden: GateItem['item'][] = red.has('dug')
    ? ['obstruction', 'clean', 'gravel', 'inspection']
    : red.has('obstruction')
      ? ['inspection']
      : [];
  if (red.has('set')) hidden.push('braced', 'position', 'checked', 'spacing');
  return (
    items
      .filter(({ green, item }) => !green && !hidden.includes(item))
      // One trouble can stand in the way of two items; it is told once.
      .filter(({ text }, i, all) => all.findIndex((other) => other.text === text) === i)
      .map(({ item, text }) => ({ item, text, mend: mendOf(item) }))
      .sort((p, q) => RANK[p.mend.by] - RANK[q.mend.by])
  );
}

const RANK: Record<Mend['by'], number> = { phase: 0, decision: 1, tick: 2 };

function mendOf(item: GateItem['item']): Mend {
  if (isTick(item)) return { by: 'tick', item, words: TICK_WORDS[item] };
  return item === 'obstruction' ? { by: 'decision' } : { by: 'phase', phase: phaseOf(item) };
}
