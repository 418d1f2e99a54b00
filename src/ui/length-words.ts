import { formatSmall, lengthParts, type Units } from '../units/index.ts';

/** Rounding that a person would not call one: far below the finest step (1/32 in is 0.8 mm). Metres. */
const EXACT_M = 0.000005;

/**
 * A length as it is said aloud, rounded to the units' step: `18 feet 6 and 5/16 inches`, `5.647 metres`. Begins with
 * `about` when rounding changed it.
 */
export function lengthInWords(m: number, units: Units): string {
  const { sign, whole, fraction, mark } = lengthParts(m, units);
  const minus = sign ? 'minus ' : '';
  if (mark !== '″') return `${about(m, Number(whole), mark)}${minus}${whole} ${plural(mark, whole)}`;
  const [feet, inches] = whole.includes('′') ? whole.split('′ ') : ['', whole];
  const shown = inchesOf(feet ?? '', inches ?? '', fraction);
  return `${about(m, shown, '″')}${minus}${feetAndInches(feet ?? '', inches ?? '', fraction)}`;
}

/** How a reading compares with what was expected: `3/16″ more`, `1′ 0″ less` or `the same`. */
export function differenceInWords(difference: number, units: Units): string {
  const size = formatSmall(Math.abs(difference), units);
  if (size === formatSmall(0, units)) return 'the same';
  return `${size} ${difference > 0 ? 'more' : 'less'}`;
}

const METRES_PER: Record<string, number> = { '″': 0.0254, ' ft': 0.3048, ' m': 1, ' mm': 0.001 };
const NAMES: Record<string, readonly [string, string]> = {
  ' ft': ['foot', 'feet'],
  ' m': ['metre', 'metres'],
  ' mm': ['millimetre', 'millimetres'],
};

const about = (m: number, shown: number, mark: string): string =>
  Math.abs(Math.abs(m) - shown * METRES_PER[mark]!) > EXACT_M ? 'about ' : '';

const plural = (mark: string, whole: string): string => NAMES[mark]![Number(whole) === 1 ? 0 : 1];

function inchesOf(feet: string, inches: string, fraction: string): number {
  const [over = 0, under = 1] = fraction ? fraction.split('/').map(Number) : [];
  return Number(feet) * 12 + Number(inches) + over / under;
}

function feetAndInches(feet: string, inches: string, fraction: string): string {
  const parts: string[] = [];
  if (feet) parts.push(`${feet} ${feet === '1' ? 'foot' : 'feet'}`);
  const whole = feet && inches === '0' ? '' : inches;
  if (whole && fraction) parts.push(`${whole} and ${fraction} inches`);
  else if (fraction) parts.push(`${feet ? 'and ' : ''}${fraction} inch`);
  else if (whole) parts.push(`${whole} ${whole === '1' ? 'inch' : 'inches'}`);
  return parts.join(' ');
}
