import { METRES_PER_FOOT, METRES_PER_INCH, type Units } from './units.ts';

/** A length cut up for large figures: `sign` `whole` `fraction` `mark` = − | 18′ 6 | 5/16 | ″. */
export interface LengthParts {
  readonly sign: '' | '−';
  readonly whole: string;
  readonly fraction: string;
  readonly mark: string;
}

const DENOMINATORS: Partial<Record<Units, number>> = { 'ft-in-16': 16, 'ft-in-32': 32 };

/** Smallest step that is shown in these units, metres. */
export function stepOf(units: Units): number {
  const denominator = DENOMINATORS[units];
  return denominator ? METRES_PER_INCH / denominator : units === 'ft' ? METRES_PER_FOOT / 100 : 0.001;
}

/** Millionths of a step: what a decimal half may lose in binary and still be rounded as the half that it is. */
const HALF_SLACK = 1e-6;

/** Metres rounded to the nearest step of `units` and cut up for showing. Halves go away from zero. */
export function lengthParts(m: number, units: Units): LengthParts {
  const steps = Math.round(Math.abs(m) / stepOf(units) + HALF_SLACK);
  const sign = m < 0 && steps > 0 ? '−' : '';
  const denominator = DENOMINATORS[units];
  if (denominator) return { sign, ...feetInches(steps, denominator) };
  if (units === 'ft') return { sign, whole: (steps / 100).toFixed(2), fraction: '', mark: ' ft' };
  if (units === 'mm') return { sign, whole: String(steps), fraction: '', mark: ' mm' };
  return { sign, whole: (steps / 1000).toFixed(3), fraction: '', mark: ' m' };
}

function feetInches(steps: number, denominator: number): Omit<LengthParts, 'sign'> {
  const perFoot = 12 * denominator;
  const feet = Math.floor(steps / perFoot);
  const inches = Math.floor((steps % perFoot) / denominator);
  const rest = steps % denominator;
  const divisor = rest === 0 ? 1 : greatestCommonDivisor(rest, denominator);
  const fraction = rest === 0 ? '' : `${rest / divisor}/${denominator / divisor}`;
  // `5/16″` rather than `0 5/16″`, but `18′ 0 5/16″`.
  const whole = feet > 0 ? `${feet}′ ${inches}` : inches > 0 || rest === 0 ? `${inches}` : '';
  return { whole, fraction, mark: '″' };
}

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b);

/** `18′ 6 5/16″`, `18.53 ft`, `5.647 m` or `5647 mm`. Always with its unit. */
export function formatLength(m: number, units: Units): string {
  if (!Number.isFinite(m)) return '—';
  const { sign, whole, fraction, mark } = lengthParts(m, units);
  return `${sign}${whole}${whole && fraction ? ' ' : ''}${fraction}${mark}`;
}

const smallUnits = (units: Units): Units => (units === 'm' ? 'mm' : units);

/** The finest mark that small lengths are told to, metres: a millimetre for a metric job. */
export const smallStep = (units: Units): number => stepOf(smallUnits(units));

/** As `formatLength`, but millimetres for a metric job: for errors, tolerances and sections, which are small. */
export function formatSmall(m: number, units: Units): string {
  return formatLength(m, smallUnits(units));
}
