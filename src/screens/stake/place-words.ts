import { bearingOf, type PlanPoint, subtract } from '../../geometry/point.ts';
import { type RigidMotion, toSite } from '../../geometry/rigid.ts';
import { type Length, roundedLength } from '../../job/length.ts';
import type { PlanPlace } from '../../job/place-schema.ts';
import { small } from '../../judge/words.ts';
import type { StakeChoice } from '../../stakeout/types.ts';
import { formatLength, type Units } from '../../units/index.ts';

/** A place as the tool would type it, rounded to the step of the job's units. */
export const typedPlace = ({ x, y }: PlanPoint, units: Units): PlanPlace => ({
  right: roundedLength(x, units),
  front: roundedLength(y, units),
});

/** `12′ 0″ to the left of the plan’s centre and 15′ 6″ behind it`; what rounds to nothing is not said. */
export function placeWords({ right, front }: { right: number; front: number }, units: Units): string {
  const size = (m: number) => formatLength(Math.abs(m), units);
  const isNothing = (m: number) => size(m) === formatLength(0, units);
  const aside = `to the ${right < 0 ? 'left' : 'right'} of`;
  const along = front < 0 ? 'behind' : 'in front of';
  if (isNothing(right) && isNothing(front)) return 'at the plan’s centre';
  if (isNothing(front)) return `${size(right)} straight ${aside} the plan’s centre`;
  if (isNothing(right)) return `${size(front)} straight ${along} the plan’s centre`;
  return `${size(right)} ${aside} the plan’s centre and ${size(front)} ${along} it`;
}

/** How the plan lies, for someone who walks from A to B. */
export function lieWords(motion: RigidMotion, units: Units): string {
  const centre = toSite(motion, { x: 0, y: 0 });
  const front = bearingOf(subtract(toSite(motion, { x: 0, y: 1 }), centre));
  const along =
    centre.x < 0 ? `${formatLength(-centre.x, units)} back from A` : `${formatLength(centre.x, units)} along`;
  const off = formatLength(Math.abs(centre.y), units);
  const square =
    off === formatLength(0, units) ? 'on the line' : `${off} to the ${centre.y < 0 ? 'right' : 'left'}`;
  return `Walk from A to B: the plan’s centre lies ${along} and ${square}. Its front looks ${frontWords(front, centre.y)}.`;
}

const QUARTER = Math.PI / 2;
const DEGREES = 180 / Math.PI;

/** @param bearing of the plan's front, radians anticlockwise from A→B; @param side of the centre, left positive */
function frontWords(bearing: number, side: number): string {
  const quarter = Math.round(bearing / QUARTER);
  return wayOfQuarter(((quarter % 4) + 4) % 4, side) + turnWords(bearing - quarter * QUARTER);
}

function wayOfQuarter(quarter: number, side: number): string {
  switch (quarter) {
    case 0:
      return 'the way from A to B';
    case 2:
      return 'the way from B to A';
    case 1:
      return `${side < 0 ? 'toward' : 'away from'} A–B`;
    default:
      return `${side < 0 ? 'away from' : 'toward'} A–B`;
  }
}

/** `, turned 22° clockwise seen from above`; nothing for what rounds to no degree. @param off radians anticlockwise */
function turnWords(off: number): string {
  const degrees = Math.round(Math.abs(off) * DEGREES);
  if (degrees === 0) return '';
  return `, turned ${degrees}° ${off > 0 ? 'anticlockwise' : 'clockwise'} seen from above`;
}

/** How good the worst hole will be: `Worst is hole 6: good to 3/16″, where the tapes cross at 63°.` */
export function worstWords({ worst }: Pick<StakeChoice, 'worst'>, units: Units): string {
  if (!worst) return '';
  const { hole, crossing } = worst;
  if (!Number.isFinite(crossing.drms))
    return `Hole ${hole} lies in line with A and B: two tapes do not fix it.`;
  const angle = Math.round((crossing.angle * 180) / Math.PI);
  return `Worst is hole ${hole}: good to ${small(crossing.drms, units)}, where the tapes cross at ${angle}°.`;
}

/** `The flattest crossing is 52°, at hole 3.`; empty where that is the worst hole, of which it is said already. */
export function flattestWords({ perHole, worst }: Pick<StakeChoice, 'perHole' | 'worst'>): string {
  const sharpness = ({ crossing }: (typeof perHole)[number]) =>
    Math.min(crossing.angle, Math.PI - crossing.angle);
  const [first, ...rest] = perHole;
  if (!first || !worst) return '';
  const flattest = rest.reduce(
    (least, each) => (sharpness(each) < sharpness(least) - TIE ? each : least),
    first,
  );
  const least = Math.min(worst.crossing.angle, Math.PI - worst.crossing.angle);
  if (sharpness(flattest) > least - TIE) return '';
  return `The flattest crossing is ${Math.round(flattest.crossing.angle * DEGREES)}°, at hole ${flattest.hole}.`;
}

/** Angles that differ by less are alike: half a degree, as they are told. */
const TIE = Math.PI / 360;

/** A length without its sign, and whether it had one: for a field beside a choice of left or right. */
export function unsigned({ m, typed, units }: Length): { size: Length; negative: boolean } {
  const negative = m < 0;
  return { size: { m: Math.abs(m), typed: typed.replace(/^[-−]\s*/, ''), units }, negative };
}

/** The length with a minus in front where `negative`; nothing is nothing either way. */
export function signed(size: Length, negative: boolean): Length {
  if (!negative || size.m === 0) return size;
  return { ...size, m: -size.m, typed: `-${size.typed}` };
}
