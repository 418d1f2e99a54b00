import { formatLength } from './format.ts';
import { ok, type Problem, type Result, refuse } from './problem.ts';
import { METRES_PER_FOOT, type Units } from './units.ts';

/** Longer than any tape (the longest sold are 100 m), shorter than a slip by a power of ten. */
const GREATEST_M = 300;
/** Longest text that is read as a length; a log keeps the text, so it has to be short. */
const LONGEST_TEXT = 40;
/** How much of a bad text a sentence repeats. */
const LONGEST_QUOTE = 24;

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
 * wins. Feet and inches may be written `12' 6 1/2"`, `12'-6½"`, `12 6 1/2` or `12-6-1/2`; `6 1/2` is inches. In a job in feet
 * and inches a single bare number is refused, since it could be either.
 *
 * @param field label of the field, as the user sees it
 * @returns metres, or a sentence that names `field`
 */
export function parseLength(text: string, units: Units, field: string, bounds: Bounds = {}): Result<number> {
  const typed = text.trim();
  if (typed === '') return refuse(field, `${field} is empty: type a length, such as ${EXAMPLES[units]}.`);
  const reading = read(typed, units);
  if ('fault' in reading) {
    const { fault, cure = `type it like ${EXAMPLES[units]}` } = reading;
    return refuse(field, `${field}: “${quote(typed)}” ${fault}; ${cure}.`);
  }
  const problem = outside(reading.metres, typed, units, field, bounds);
  return problem ? { ok: false, problem } : ok(reading.metres);
}

/** What a text says, or a clause that says what is wrong with it and one that says what would be right. */
type Reading = { readonly metres: number } | { readonly fault: string; readonly cure?: string };

const NO_LENGTH: Reading = { fault: 'is not a length' };

function read(typed: string, units: Units): Reading {
  if (typed.length > LONGEST_TEXT) return { fault: `has more than ${LONGEST_TEXT} characters` };
  const plain = inPlainMarks(typed);
  const negative = plain.startsWith('-');
  const body = negative ? plain.slice(1).trimStart() : plain;
  const reading = readMetric(body) ?? readMarked(body) ?? readBare(body, units) ?? NO_LENGTH;
  return negative && 'metres' in reading ? { metres: -reading.metres } : reading;
}

/** One spelling of everything that people and keyboards spell in many ways: `12’–6½ in.` becomes `12' 6 1/2"`. */
function inPlainMarks(typed: string): string {
  return (
    typed
      // A space first: compatibility normalising turns `6½` into `61⁄2`. It also undoes ″, wide digits and odd spaces.
      .replace(/[¼-¾⅐-⅞]/g, ' $&')
      .normalize('NFKC')
      .replace(/⁄/g, '/')
      .replace(/′′|''|’’|["“”]|inch(?:es)?|in\.?/gi, '"')
      .replace(/[′‘’]|feet|foot|ft\.?/gi, "'")
      .replace(/[−–]/g, '-')
      // Between two parts a dash is only a gap; a minus stands in front.
      .replace(/(?<=[\d'"]) *- *(?=\d)/g, ' ')
      .replace(/\s*([/'"])\s*/g, '$1')
      .replace(/\s+/g, ' ')
      .trim()
  );
}

const DECIMAL = String.raw`\d+(?:\.\d*)?|\.\d+`;
const DECIMAL_ONLY = new RegExp(`^(?:${DECIMAL})$`);
const COMMA_ONLY = /^\d+,\d+$/;

/** Divided by, not multiplied with: 1000 is exact in binary, and 0.001 is not. */
const PER_METRE = { m: 1, cm: 100, mm: 1000 } as const;
type Metric = keyof typeof PER_METRE;
const METRIC = new RegExp(`^(?<number>${DECIMAL}|\\d+,\\d+) ?(?<unit>m|cm|mm)$`, 'i');

function readMetric(body: string): Reading | null {
  const groups = METRIC.exec(body)?.groups;
  return groups ? metric(groups['number']!, groups['unit']!.toLowerCase() as Metric) : null;
}

/** A comma is a decimal comma, except where a comma for thousands would make sense as well. */
function metric(number: string, unit: Metric): Reading {
  if (unit !== 'm' && /,\d{3}$/.test(number))
    return {
      fault: 'could have a comma for thousands or for decimals',
      cure: `type ${number.replace(',', '')} ${unit} or ${number.replace(',', '.')} ${unit}`,
    };
  return { metres: Number(number.replace(',', '.')) / PER_METRE[unit] };
}

const FRACTION = String.raw`\d+/\d+`;
/** `6`, `6.5`, `6 1/2` or `1/2`. The space matters: `61/2` is a slip, not six and a half. */
const INCHES = `(?<inches>${DECIMAL})(?: (?<fraction>${FRACTION}))?|(?<onlyFraction>${FRACTION})`;
/** With at least one mark: `12'`, `12'6`, `12'6 1/2"`, `6.5"`, `1/2"`. */
const MARKED = [new RegExp(`^(?<feet>${DECIMAL})'(?:(?:${INCHES})"?)?$`), new RegExp(`^(?:${INCHES})"$`)];
/** Without marks: `12 6`, `12 6 1/2`, `6 1/2`, `1/2`. One number before a fraction is inches. */
const BARE = [
  new RegExp(`^(?<inches>\\d+) (?<fraction>${FRACTION})$|^(?<onlyFraction>${FRACTION})$`),
  new RegExp(`^(?<feet>\\d+) (?:${INCHES})$`),
];

function readMarked(body: string): Reading | null {
  const parts = partsOf(body, MARKED);
  return parts && feetAndInches(parts);
}

function readBare(body: string, units: Units): Reading | null {
  const feetInches = units === 'ft-in-16' || units === 'ft-in-32';
  if (DECIMAL_ONLY.test(body)) return feetInches ? feetOrInches(body) : bareNumber(body, units);
  if (COMMA_ONLY.test(body)) return bareComma(body, units);
  const parts = partsOf(body, BARE);
  if (!parts) return null;
  return feetInches ? feetAndInches(parts) : { fault: 'has more than one number and no marks' };
}

function bareNumber(body: string, units: 'ft' | 'm' | 'mm'): Reading {
  return { metres: units === 'ft' ? Number(body) * METRES_PER_FOOT : Number(body) / PER_METRE[units] };
}

function bareComma(body: string, units: Units): Reading {
  if (units === 'm' || units === 'mm') return metric(body, units);
  return { fault: 'has a comma' };
}

function feetOrInches(body: string): Reading {
  if (Number(body) === 0) return { metres: 0 };
  return { fault: 'could be feet or inches', cure: `type ${body}′ or ${body}″` };
}

/** The texts of a length in feet and inches. */
interface Parts {
  readonly feet?: string | undefined;
  readonly inches?: string | undefined;
  readonly fraction?: string | undefined;
}

function partsOf(body: string, forms: readonly RegExp[]): Parts | null {
  for (const form of forms) {
    const groups = form.exec(body)?.groups as (Parts & { onlyFraction?: string }) | undefined;
    if (groups) return { ...groups, fraction: groups.fraction ?? groups.onlyFraction };
  }
  return null;
}

function feetAndInches({ feet, inches, fraction }: Parts): Reading {
  const part = fraction === undefined ? 0 : tapeFraction(fraction);
  if (part === null) return { fault: 'has a fraction that no tape shows' };
  if (fraction !== undefined && inches?.includes('.'))
    return { fault: 'has both decimals and a fraction of an inch' };
  const inch = Number(inches ?? 0) + part;
  if (feet?.includes('.'))
    return inch > 0
      ? { fault: 'has both decimals of a foot and inches' }
      : { metres: Number(feet) * METRES_PER_FOOT };
  if (feet !== undefined && inch >= INCHES_PER_FOOT)
    return { fault: 'has 12 inches or more beside the feet' };
  // Inches and 64ths are exact in binary, so only the division rounds: 12′ 6 1/2″ is 3.8227, to the last bit.
  const total = Number(feet ?? 0) * INCHES_PER_FOOT + inch;
  return { metres: (total * TENTHS_OF_MM_PER_INCH) / TENTHS_OF_MM_PER_METRE };
}

const INCHES_PER_FOOT = 12;
/** The international inch is 25.4 mm exactly. */
const TENTHS_OF_MM_PER_INCH = 254;
const TENTHS_OF_MM_PER_METRE = 10_000;

/** Marks on a tape halve the inch again and again; 5/15 is a slip for 5/16, and 8/8 or 9/8 is a slip too. */
const DENOMINATORS = [2, 4, 8, 16, 32, 64];

function tapeFraction(fraction: string): number | null {
  const [over, under] = fraction.split('/').map(Number) as [number, number];
  return DENOMINATORS.includes(under) && over < under ? over / under : null;
}

/** A bare number in metres so many times beyond the most was read off a tape in millimetres. */
const FAR_TOO_LONG = 5;

function outside(m: number, typed: string, units: Units, field: string, bounds: Bounds): Problem | null {
  const { min, max = GREATEST_M, minName, maxName } = bounds;
  const say = (what: string) => ({ field, text: `${field}: “${quote(typed)}” ${what}.` });
  const named = (limit: number, name: string | undefined) => name ?? formatLength(limit, units);
  if (min === undefined && m <= 0) return say(`must be more than zero; type it like ${EXAMPLES[units]}`);
  if (min === 0 && m < 0) return say(`must not be below zero; type it like ${EXAMPLES[units]}`);
  if (min !== undefined && m < min) return say(`is less than ${named(min, minName)}; type that or more`);
  if (m > max) {
    const meansMm = units === 'm' && DECIMAL_ONLY.test(typed) && m > FAR_TOO_LONG * max;
    const inMm = meansMm && m / PER_METRE.mm <= max ? `, or ${typed} mm` : '';
    return say(`is more than ${named(max, maxName)}; type that or less${inMm}`);
  }
  return null;
}

const quote = (text: string): string =>
  text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
