import type { PullEnd, Thing } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import type { Situation } from '../../judge/situation.ts';
import { CRITICAL, lengthBy, type PredictedOffset, predictOffset, readingOn } from '../../measure/index.ts';
import { formatLength } from '../../units/index.ts';
import { doubtWords } from '../belief.ts';

/** A string, and what is measured off it. */
export interface OffString {
  readonly from: Thing;
  readonly to: Thing;
  readonly of: PullEnd;
}

export type StringSide = 'left' | 'right' | 'on';

/** What would be read, from all that was read so far; null where too little is known. */
export function stringPrediction(
  { plan, laid, measured }: Situation,
  off: OffString,
): PredictedOffset | null {
  if (!plan || !laid || !measured) return null;
  return predictOffset(off.from, off.to, off.of, measured, laid.holes, plan.instruments);
}

/** Asks back when a station is beyond belief. @param m metres */
export function stationDoubt(situation: Situation, off: OffString, m: number): string | null {
  const found = stringPrediction(situation, off)?.station;
  if (!found || !situation.plan) return null;
  const expected = readingOn(situation.inHand, found.reading);
  return doubtWords({ reading: m, expected, sigma: found.sigma, units: situation.plan.units });
}

/** Asks back when an offset is beyond belief, or on the other side. @param m metres, 0 on the string */
export function offsetDoubt(
  situation: Situation,
  off: OffString,
  side: StringSide,
  m: number,
): string | null {
  const found = stringPrediction(situation, off)?.offset;
  if (!found || !situation.plan) return null;
  const { units } = situation.plan;
  const sign = side === 'left' ? 1 : side === 'right' ? -1 : 0;
  if (Math.abs(sign * lengthBy(situation.inHand, m) - found.reading) <= CRITICAL * found.sigma) return null;
  const expected = readingOn(situation.inHand, Math.abs(found.reading));
  const there = found.reading > 0 ? 'left' : 'right';
  const astray = sign * found.reading <= 0 && expected > CRITICAL * found.sigma;
  return astray
    ? `By what was read so far ${thingName(off.of.thing, situation.plan)} is ${formatLength(expected, units)} to the ${there} of this string. Look again which way the string runs, or keep it as read.`
    : doubtWords({ reading: m, expected, sigma: found.sigma, units });
}
