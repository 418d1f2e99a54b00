import type { Length } from '../job/length.ts';
import { ownLength } from '../plan/sections.ts';
import { isMetric, METRES_PER_FOOT, type Units } from '../units/index.ts';

/** Posts are sold by the even foot, and in metres by steps of 300 mm and then 600 mm (common practice). */
const FEET = [6, 8, 10, 12, 14, 16, 18, 20, 24] as const;
const METRES = [1.8, 2.1, 2.4, 2.7, 3, 3.6, 4.2, 4.8, 5.4, 6] as const;

/** The lengths that yards usually keep, shortest first. */
export function usualStock(units: Units): Length[] {
  return isMetric(units)
    ? METRES.map((metres) => ownLength(`${metres} m`, units))
    : FEET.map((feet) => ownLength(`${feet}′`, units));
}

/** Left on each post for cutting, where nobody has said: three inches, 75 mm (our choice). */
export const usualSpare = (units: Units): Length => ownLength(isMetric(units) ? '75 mm' : '3″', units);

/** What a cut may be off and still be the length that was asked for: a tenth of a millimetre. */
const SAME_M = 1e-4;

/** The shortest stock that is long enough; null where none is. */
export function stockFor(needed: number, stock: readonly Length[]): Length | null {
  const enough = stock.filter(({ m }) => m >= needed - SAME_M).sort((p, q) => p.m - q.m);
  return enough[0] ?? null;
}

/** A stock length as it is asked for over the counter: `8 ft`, `2.4 m`; one that is no round figure as it was typed. */
export function stockName({ m, typed }: Length, units: Units): string {
  const unit = isMetric(units) ? 1 : METRES_PER_FOOT;
  const count = m / unit;
  const round = isMetric(units) ? Math.round(count * 1000) / 1000 : Math.round(count);
  return Math.abs(round - count) * unit > SAME_M ? typed : `${round} ${isMetric(units) ? 'm' : 'ft'}`;
}
