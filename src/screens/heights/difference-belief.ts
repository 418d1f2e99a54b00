import type { HeightPoint } from '../../job/entry-schema.ts';
import type { JobView } from '../../judge/view.ts';
import { heightKey, isBeyondBelief } from '../../measure/index.ts';
import { differenceInWords } from '../../ui/index.ts';
import { formatLength } from '../../units/index.ts';

/**
 * Asks back where a compared height is beyond belief beside the heights already known of both points.
 *
 * @param rise of `to` above `from`, metres
 * @returns one question; null when it is believable, or when one of the heights is not known
 */
export function differenceDoubt(
  view: JobView,
  from: HeightPoint,
  to: HeightPoint,
  rise: number,
): string | null {
  const [low, high] = [from, to].map((on) => view.heights.get(heightKey(on)));
  if (!low || !high) return null;
  const { units, instruments } = view.plan;
  const expected = high.height - low.height;
  const sigma = Math.hypot(low.sigma, high.sigma, Math.SQRT2 * instruments.rodError.m);
  if (!isBeyondBelief({ reading: rise, expected, sigma })) return null;
  if (!isBeyondBelief({ reading: -rise, expected, sigma }))
    return `By what was read before, it is the other way round: see which of the two is higher. Read it again, or keep it as read.`;
  const size = Math.abs(expected);
  const way = Math.sign(expected) === Math.sign(rise) ? '' : ', and the other way round';
  return `This is ${differenceInWords(Math.abs(rise) - size, units)} than what was read before comes to (${formatLength(size, units)}${way}). Read it again, or keep it as read.`;
}
