import { ok, type Problem, type Result, refuse } from './problem.ts';
import { METRES_PER_FOOT, METRES_PER_INCH, type Units } from './units.ts';

/** Longer than any tape, shorter than any typing slip by a power of ten that matters. */
const GREATEST_M = 300;

export interface Bounds {
  /** Metres. Zero and below are refused unless `min` says otherwise. */
  readonly min?: number;
  readonly max?: number;
  /** Show `min` and `max` in words when they are broken, such as `the tape's length`. */
  readonly minName?: string;
  readonly maxName?: string;
}

/** What a good entry looks like, for the end of a refusal and for a field's hint. */
export const EXAMPLES: Record<Units, string> = {
  'ft-in-16': '12′ 6 1/2″',
  'ft-in-32': '12′ 6 5/32″',
  ft: '12.54',
  m: '3.825',
  mm: '3825',
};

/**
 * Reads a length as people write it. Bare numbers are in the job's `units`; a mark (′ ″ ' " ft in m cm mm) always
 * wins. Feet and inches may be written `12' 6 1/2"`, `12 6 1/2` or `12-6-1/2`; `6 1/2` is inches.
 *
 * @returns metres, or a sentence that names `field`
 */
export function parseLength(text: string, units: Units, field: string, bounds: Bounds = {}): Result<number> {
  const clean = text.trim();
  const example = EXAMPLES[units];
  if (clean === '') return refuse(field, `${field} is empty: type a length, such as ${example}.`);
  const metres = read(clean, units, field);
  if (!metres.ok) return metres;
  const problem = outside(metres.value, clean, units, field, bounds);
  return problem ? { ok: false, problem } : metres;
}

function read(clean: string, units: Units, field: string): Result<number> {
  const negative = /^[-−]/.test(clean);
  const body = negative ? clean.slice(1).trim() : clean;
  const magnitude = readMarked(body) ?? readBare(body, units);
  if (typeof magnitude === 'number') return ok(negative ? -magnitude : magnitude);
  return refuse(
    field,
    `${field}: “${shorten(clean)}” ${magnitude ?? 'is not a length'}; type it like ${EXAMPLES[units]}.`,
  );
}

const NUMBER = String.raw`\d+(?:\.\d+)?|\.\d+`;
const FRACTION = String.raw`(\d+)\s*/\s*(\d+)`;
const FEET_MARK = String.raw`(?:′|'|’|ft\.?|feet|foot)`;
const INCH_MARK = String.raw`(?:″|"|”|''|’’|′′|in\.?|inch|inches)`;

const METRIC = new RegExp(`^(${NUMBER}|\\d+,\\d+)\\s*(m|cm|mm)$`, 'i');
const FEET_AND_INCHES = new RegExp(
  `^(?:(${NUMBER})\\s*${FEET_MARK})?[\\s-]*(?:(?:(${NUMBER})(?:[\\s-]+${FRACTION})?|${FRACTION})\\s*(${INCH_MARK})?)?$`,
  'i',
);
const METRES_PER = { m: 1, cm: 0.01, mm: 0.001 } as const;

/** Metres, a clause that says what is wrong, or null when the text carries no mark. */
function readMarked(body: string): number | string | null {
  const metric = METRIC.exec(body);
  if (metric) return toNumber(metric[1]!) * METRES_PER[metric[2]!.toLowerCase() as keyof typeof METRES_PER];
  const match = FEET_AND_INCHES.exec(body);
  if (!match) return null;
  const [, feet, inches, over, under, loneOver, loneUnder, mark] = match;
  if (feet === undefined && mark === undefined) return null;
  return feetAndInches(feet, inches, over ?? loneOver, under ?? loneUnder);
}

/** Metres, a clause that says what is wrong, or null when it is no length at all. */
function readBare(body: string, units: Units): number | string | null {
  if (units === 'ft-in-16' || units === 'ft-in-32') return readBareFeetAndInches(body);
  const comma = units === 'm' ? /^\d+,\d+$/ : /^$/;
  if (!new RegExp(`^(?:${NUMBER})$`).test(body) && !comma.test(body)) return null;
  const value = toNumber(body);
  return units === 'ft' ? value * METRES_PER_FOOT : units === 'mm' ? value / 1000 : value;
}

const BARE = new RegExp(`^(?:(\\d+)[\\s-]+)??(?:(${NUMBER})[\\s-]+)?${FRACTION}$|^(\\d+)[\\s-]+(${NUMBER})$`);

function readBareFeetAndInches(body: string): number | string | null {
  if (/^0+$/.test(body)) return 0;
  if (new RegExp(`^(?:${NUMBER})$`).test(body)) return 'could be feet or inches';
  const match = BARE.exec(body);
  if (!match) return null;
  const [, feet, inches, over, under, wholeFeet, wholeInches] = match;
  return feetAndInches(feet ?? wholeFeet, inches ?? wholeInches, over, under);
}

function feetAndInches(
  feet: string | undefined,
  inches: string | undefined,
  over: string | undefined,
  under: string | undefined,
): number | string {
  const fraction = over === undefined ? 0 : Number(over) / Number(under);
  if (over !== undefined && !(fraction < 1)) return 'has a fraction that is not below one';
  const inch = Number(inches ?? 0) + fraction;
  if (feet?.includes('.') && inch > 0) return 'has both tenths of a foot and inches';
  if (feet !== undefined && inch >= 12) return 'has 12 inches or more beside the feet';
  return Number(feet ?? 0) * METRES_PER_FOOT + inch * METRES_PER_INCH;
}

const toNumber = (text: string): number => Number(text.replace(',', '.'));
const shorten = (text: string): string => (text.length > 24 ? `${text.slice(0, 24)}…` : text);

function outside(m: number, clean: string, units: Units, field: string, bounds: Bounds): Problem | null {
  const { min, max = GREATEST_M, minName, maxName } = bounds;
  const say = (what: string) => ({ field, text: `${field}: “${shorten(clean)}” ${what}` });
  if (!Number.isFinite(m)) return say(`is not a length; type it like ${EXAMPLES[units]}.`);
  if (min === undefined && m <= 0) return say(`must be more than zero; type it like ${EXAMPLES[units]}.`);
  if (min !== undefined && m < min)
    return say(`is less than ${minName ?? inUnits(min, units)}; type that or more.`);
  if (m > max) return say(`is more than ${maxName ?? inUnits(max, units)}; type that or less.`);
  return null;
}

function inUnits(m: number, units: Units): string {
  const feet = units === 'm' || units === 'mm' ? null : Math.round((m / METRES_PER_FOOT) * 100) / 100;
  return feet === null ? (units === 'mm' ? `${Math.round(m * 1000)} mm` : `${m} m`) : `${feet} ft`;
}
