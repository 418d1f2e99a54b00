import { type Length, lengthWords } from '../../job/length.ts';
import type { Holds, HoleOverride, Plan, Ring, Shape, TapeSpec } from '../../job/plan-schema.ts';
import { shapeName } from '../../job/words.ts';
import { ringRadius, type Section, sectionOf } from '../../plan/index.ts';
import { formatLength, formatSmall, type Units } from '../../units/index.ts';
import { UNIT_CHOICES } from '../job-choices.ts';
import { gapWords, leanBase } from './lean-base.ts';
import type { Point } from './plan-edits.ts';

/** What is set, one line per group of fields, for the line that opens the group. */

export function shapeLine(shape: Shape): string {
  if (shape.kind !== 'ring') return shapeName(shape);
  return `${shapeName(shape)}, a ${shape.front} at the front`;
}

const RING_SIZE_LINES: Record<Ring['sizeBy'], string> = {
  radius: 'from the middle to post centres',
  'outer-faces': 'from the middle to the outer faces',
  'flat-to-flat': 'flat to flat, between centres',
  side: 'a side, between centres',
};

export function sizeLine(shape: Shape): string {
  switch (shape.kind) {
    case 'ring':
      return `${lengthWords(shape.size)} ${RING_SIZE_LINES[shape.sizeBy]}`;
    case 'rows': {
      const apart = shape.measuredTo === 'centres';
      const sizes = [
        ...(shape.columns > 1
          ? [`${lengthWords(shape.columnSpacing)} ${apart ? 'between columns' : 'wide'}`]
          : []),
        ...(shape.rows > 1 ? [`${lengthWords(shape.rowSpacing)} ${apart ? 'between rows' : 'deep'}`] : []),
      ];
      const how = apart ? 'centre to centre' : 'over the outer faces';
      return sizes.length === 0 ? 'One post, in the middle' : `${sizes.join(', ')}, ${how}`;
    }
    case 'points':
      return shape.points.length === 0 ? 'No holes yet' : `Holes ${listed(shape.points)}`;
  }
}

/** Labels shown before a list is cut short. */
const LABELS_SHOWN = 8;

function listed(points: readonly Point[]): string {
  const labels = points.slice(0, LABELS_SHOWN).map(({ label }) => label);
  const more = points.length - labels.length;
  return more > 0 ? `${labels.join(', ')} and ${more} more` : labels.join(', ');
}

function holdsWords(holds: Holds, units: Units): string {
  if (holds.kind === 'pier') return `round pier, ${lengthWords(holds.diameter)} across`;
  const actual = actualSize(holds, units);
  if (holds.nominal === 'typed') return `post, ${actual}`;
  return isNamedBySize(holds) ? `${holds.nominal} mm post` : `${holds.nominal} post, really ${actual}`;
}

/** Metric posts are called by what they measure. */
const isNamedBySize = ({ nominal, width, depth }: Extract<Holds, { kind: 'post' }>): boolean =>
  nominal === [width, depth].map(({ m }) => Math.round(m * 1000)).join('×');

/** `5 1/2″ × 5 1/2″`: what a tape finds, whatever the yard calls it. A line may end after ×, not within a number. */
export function actualSize(
  { width, depth }: { readonly width: Length; readonly depth: Length },
  units: Units,
): string {
  const whole = ({ m }: Length) => formatSmall(m, units).replaceAll(' ', '\u00a0');
  return `${whole(width)}\u00a0× ${whole(depth)}`;
}

export function holdsLine({ each, pier, shape, units }: Plan): string {
  const middle = shape.kind === 'ring' && shape.pier;
  const line = `${capital(holdsWords(each.holds, units))}, in holes ${lengthWords(each.holeDiameter)} wide`;
  return middle ? `${line}; in the middle a ${holdsWords(pier.holds, units)}` : line;
}

/** A height without its sign: `2′ 0″ above the benchmark`, `6″ below the benchmark`. */
export function heightWords(height: Length, units: Units): string {
  if (height.m === 0) return 'level with the benchmark';
  return `${formatLength(Math.abs(height.m), units)} ${height.m > 0 ? 'above' : 'below'} the benchmark`;
}

export function heightsLine({ each, pier, shape, units }: Plan): string {
  const posts = `Tops ${heightWords(each.top, units)}`;
  const middle = shape.kind === 'ring' && shape.pier;
  return middle ? `${posts}; pier ${heightWords(pier.top, units)}` : posts;
}

/** What one hole has instead: `height of the top 3′ 0 1/2″`. */
export function ownWords(own: HoleOverride, units: Units): string {
  return [
    ...(own.holds ? [holdsWords(own.holds, units)] : []),
    ...(own.top ? [`top ${heightWords(own.top, units)}`] : []),
    ...(own.holeDiameter ? [`hole ${lengthWords(own.holeDiameter)} wide`] : []),
    ...(own.depth ? [`${lengthWords(own.depth)} deep${own.depthWhy ? ` (${own.depthWhy})` : ''}`] : []),
  ].join(', ');
}

export function singleLine({ overrides }: Plan): string {
  const labels = Object.keys(overrides);
  return labels.length === 0 ? 'All alike' : `Different: ${labels.join(', ')}`;
}

export function rulesLine({ rules }: Plan): string {
  const frost = rules.frostDepth ? `Frost ${lengthWords(rules.frostDepth)}` : 'Frost depth not known yet';
  return `${frost}, gravel ${lengthWords(rules.gravel)}, embedment ${lengthWords(rules.embedment)}`;
}

export function tolerancesLine({ tolerances, units }: Plan): string {
  const { metres, words } = leanBase(units);
  const lean = gapWords(tolerances.plumb * metres, units);
  const { position, spacing, level, tops } = tolerances;
  const among = tops ? `, tops ${lengthWords(tops)}` : '';
  return `Place ${lengthWords(position)}, spacing ${lengthWords(spacing)}, plumb ${lean} in ${words}, level ${lengthWords(level)}${among}`;
}

export function instrumentsLine({ instruments }: Plan): string {
  const { tapeLength, tapeError, rodError, tapes = [] } = instruments;
  const wrong =
    tapes.length === 0
      ? ''
      : `; ${tapes.length === 1 ? 'tape' : 'tapes'} ${tapes.map(({ label }) => label).join(', ')} put right`;
  return `Tape ${lengthWords(tapeLength)}, good to ${lengthWords(tapeError)}; rod good to ${lengthWords(rodError)}${wrong}`;
}

/** `Tape Red: reads 100′ 0″ where there are 100′ 0 1/4″; readings 1/16″ too long`. */
export function tapeLine({ label, nominal, actual, zero }: TapeSpec, units: Units): string {
  const scale =
    nominal.m === actual.m
      ? 'true by its length'
      : `reads ${lengthWords(nominal)} where there are ${lengthWords(actual)}`;
  const end =
    zero.m === 0
      ? ''
      : `; its end makes readings ${formatSmall(Math.abs(zero.m), units)} too ${zero.m < 0 ? 'long' : 'short'}`;
  return `Tape ${label}: ${scale}${end}`;
}

export function nameLine({ name, units }: Plan): string {
  const choice = UNIT_CHOICES.find(({ value }) => value === units);
  return `${name}; ${(choice?.label ?? units).toLowerCase()}`;
}

/** A point's place without signs: `3′ 0″ left, 2′ 0″ behind`. */
export function pointWords({ right, front }: Point, units: Units): string {
  const across = along(right.m, 'right', 'left', units);
  return `${across}, ${along(front.m, 'in front', 'behind', units)}`;
}

const along = (m: number, positive: string, negative: string, units: Units): string =>
  `${formatLength(Math.abs(m), units)} ${m < 0 ? negative : positive}`;

/**
 * The other ways to say a ring's size, so that a second number on the drawing can be held against the first. Half of the
 * angle between neighbours is pi/n: apothem R cos(pi/n), side 2 R sin(pi/n). Null while the ring has no radius.
 */
export function ringSizesLine(ring: Ring, section: Section, units: Units): string | null {
  const radius = ringRadius(ring, section);
  if (!(radius > 0)) return null;
  const half = Math.PI / ring.count;
  const across = radius * Math.cos(half) + (ring.count % 2 === 0 ? radius * Math.cos(half) : radius);
  const sizes: Record<Ring['sizeBy'], string> = {
    radius: `${formatLength(radius, units)} to post centres`,
    'outer-faces': `${formatLength(radius + depthOf(section) / 2, units)} to the outer faces`,
    'flat-to-flat': `${formatLength(across, units)} flat to flat`,
    side: `${formatLength(2 * radius * Math.sin(half), units)} between neighbours`,
  };
  const others = Object.entries(sizes).filter(([way]) => way !== ring.sizeBy);
  return `That is ${others.map(([, words]) => words).join(', ')}.`;
}

const depthOf = (section: Section): number => (section.kind === 'post' ? section.depth : section.diameter);

export const sectionOfEach = ({ each }: Plan): Section => sectionOf(each.holds);

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
