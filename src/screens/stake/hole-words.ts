import type { Hold } from '../../job/entry-schema.ts';
import { small } from '../../judge/words.ts';
import type { Crossing, HolePulls } from '../../stakeout/types.ts';
import { formatLength, type Units } from '../../units/index.ts';

/** Which side of the line a hole is on: two tapes always meet at two points, one on each side. */
export function sideWords({ side }: Pick<HolePulls, 'side'>): string {
  if (side === 'on-line') return 'It lies on the line A–B itself.';
  return `It lies on the ${side} of A–B as you walk from A to B.`;
}

/** Station and offset: `4′ 1″ along from A, then 12′ 3″ square off to the left.` */
export function stationWords({ station, offset, side }: HolePulls, units: Units): string {
  const off = formatLength(Math.abs(offset), units);
  if (formatLength(Math.abs(station), units) === formatLength(0, units) && side !== 'on-line')
    return `${off} square off A–B from A’s own nail, to the ${side}.`;
  const along =
    station < 0
      ? `${formatLength(-station, units)} back from A, away from B`
      : `${formatLength(station, units)} along from A`;
  if (side === 'on-line') return `${along}, on the line.`;
  return `${along}, then ${off} square off to the ${side}.`;
}

const DEGREES = 180 / Math.PI;

/** How good two tapes make a place: `The tapes cross at 84°: good to 1/8″.` */
export function crossingWords(crossing: Crossing, units: Units): string {
  if (!Number.isFinite(crossing.drms)) return 'The tapes lie in one line here and fix nothing sideways.';
  const angle = `${Math.round(crossing.angle * DEGREES)}°`;
  const good = `good to ${small(crossing.drms, units)}`;
  if (crossing.grade === 'poor')
    return `The tapes cross at only ${angle}: ${good} at best. Prove it with check pulls.`;
  return `The tapes cross at ${angle}: ${good}.`;
}

/** How one person finds the place, and whether a second hand is wanted for it. */
export function aloneWords(how: Hold['how'], unknownRise: boolean): string {
  const arcs = 'Alone: scratch an arc at the reading from A, then meet it with the tape from B.';
  if (!unknownRise && how === 'slope') return arcs;
  const level = 'Held level, a tape wants a second hand at its low end.';
  const instead = unknownRise
    ? 'To hold it along the slope, read the heights first.'
    : 'Hold it along the slope instead.';
  return `${arcs} ${level} ${instead}`;
}

/** Steepest slope that the sentence on a sloping tape speaks of: 1 in 10, from which people hold a tape level. */
const SPOKEN_SLOPE = 10;

/** Why a tape along the slope does not find the place, told by its size on this very length. */
export function slopeWords(level: number, units: Units): string {
  const more = level * (Math.hypot(1, 1 / SPOKEN_SLOPE) - 1);
  return `These are level lengths. Where the ground rises 1 in ${SPOKEN_SLOPE}, a tape along the slope reads ${small(more, units)} more here.`;
}
