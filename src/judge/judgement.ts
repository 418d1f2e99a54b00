import { HALF_WIDTH_95 } from './normal.ts';
import type { Judgement, Quantity } from './types.ts';
import { type MeasuredVerdict, OUT_TO, verdictOf } from './verdict.ts';

/** A quantity of which nothing is known yet; `why` says so and what to do. Never in, never checked. */
export function unmeasured(quantity: Quantity, tolerance: number, why: string): Judgement {
  return {
    quantity,
    verdict: 'unmeasured',
    chance: null,
    error: null,
    uncertainty: null,
    tolerance,
    checked: false,
    text: 'unmeasured',
    why,
  };
}

/** What a judge found of a measured quantity, before it is put in words. */
export interface Found {
  readonly quantity: Quantity;
  readonly chance: number;
  /** Chance that the same readings give to a thing exactly on its mark; asked for only where the chance is small. */
  readonly best: () => number;
  readonly error: number;
  /** One sigma of `error`. */
  readonly sigma: number;
  readonly tolerance: number;
  readonly checked: boolean;
}

/** How a quantity is said: the cell's text, and why it is not yet `in` and checked. */
export interface Sayings {
  readonly cell: (verdict: MeasuredVerdict, error: number, uncertainty: number) => string;
  readonly out: () => string;
  readonly unsure: () => string;
  readonly unchecked: (verdict: MeasuredVerdict) => string;
}

/** What a finding comes to. What the same readings give to a thing on its mark counts only where the chance is small. */
export const verdictFound = ({ chance, best }: Pick<Found, 'chance' | 'best'>): MeasuredVerdict =>
  verdictOf(chance, chance <= OUT_TO ? best() : 1);

/** Puts a finding and its words together. */
export function judged(found: Found, say: Sayings): Judgement {
  const verdict = verdictFound(found);
  const uncertainty = HALF_WIDTH_95 * found.sigma;
  const { quantity, chance, error, tolerance, checked } = found;
  const trouble = verdict === 'in' ? '' : verdict === 'out' ? say.out() : say.unsure();
  const unguarded = checked ? '' : say.unchecked(verdict);
  return {
    quantity,
    verdict,
    chance,
    error,
    uncertainty,
    tolerance,
    checked,
    text: say.cell(verdict, error, uncertainty) + (checked ? '' : ', unchecked'),
    why: [trouble, unguarded].filter((sentence) => sentence !== '').join(' '),
  };
}
