import { forceScale, type Scale, temperatureScale, type Units } from '../units/index.ts';
import type { EntryOf, Pulling } from './entry-schema.ts';
import { lengthWords } from './length.ts';

/** Numbers are shown to a tenth: finer than any thermometer or arm. */
const TENTHS = 10;
export const shownIn = (scale: Scale, si: number): number => Math.round(scale.fromSI(si) * TENTHS) / TENTHS;

/** How a tape was pulled, as far as it was noted: `86 °F`, `pulled with 20 lb`, `6′ 0″ + 4′ 6″ hung free`. */
export function pullingWords({ temperature, tension, spans }: Pulling, units: Units): string[] {
  const [warmth, force] = [temperatureScale(units), forceScale(units)];
  return [
    ...(temperature === undefined ? [] : [`${shownIn(warmth, temperature)} ${warmth.mark}`]),
    ...(tension === undefined ? [] : [`pulled with ${shownIn(force, tension)} ${force.mark}`]),
    ...(spans && spans.length > 0 ? [`${spans.map(lengthWords).join(' + ')} hung free`] : []),
  ];
}

/** `, tape Red, 86 °F`, for the end of a reading's line; nothing for a tape that needs no correction. */
export function tapeWords(
  { tape, pulling }: Pick<EntryOf<'pull' | 'offset'>['body'], 'tape' | 'pulling'>,
  units: Units,
): string {
  if (tape === undefined) return '';
  return [`, tape ${tape}`, ...pullingWords(pulling ?? {}, units)].join(', ');
}
