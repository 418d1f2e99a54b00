import type { PullEnd } from '../job/entry-schema.ts';
import type { Situation } from '../judge/situation.ts';
import { riseBetween as measuredRise } from '../measure/index.ts';

/**
 * How much higher one end of a tape is than the other, metres and never negative, where a level has read what both stand on;
 * else null. `measure` takes the same rise for a pull along the slope that was logged without one.
 */
export function riseBetween(
  { measured }: Pick<Situation, 'measured'>,
  from: PullEnd,
  to: PullEnd,
): number | null {
  const heightOf = (key: string) => measured?.heights.find((each) => each.key === key);
  return measuredRise(heightOf, from, to)?.rise ?? null;
}

/** What a tape along a slope reads for a level length. Metres. */
export const alongSlope = (level: number, rise: number): number => Math.hypot(level, rise);
