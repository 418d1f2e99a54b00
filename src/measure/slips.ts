import { CRITICAL } from '../plan/luck.ts';
import {
  formatLength,
  isMetric,
  METRES_PER_FOOT,
  METRES_PER_INCH,
  parseLength,
  type Units,
} from '../units/index.ts';

export type SlipCode =
  | 'foot'
  | 'metre'
  | 'inch'
  | 'ten-marks'
  | 'tenths-for-inches'
  | 'inches-for-tenths'
  | 'hook'
  | 'swapped-digits'
  | 'six-nine'
  | 'centre-for-face'
  | 'level-for-slope';

/** A slip of the hand or eye that would explain a reading. */
export interface Slip {
  readonly code: SlipCode;
  /** One sentence for the person who holds the tape. */
  readonly text: string;
  /** What the reading would be without the slip, metres. */
  readonly instead: number;
}

export interface Reading {
  /** Metres, as typed and as expected. */
  readonly reading: number;
  readonly expected: number;
  /** One sigma of the difference between the two, the tape's own error included. */
  readonly sigma: number;
  readonly units: Units;
  /** The text as typed; without it, as the tool would write the reading. */
  readonly typed?: string;
  /** Centre to face of whatever ends touched a face or a near side, or might have, metres. */
  readonly halfSections?: readonly number[];
  /** From the end of the tape to its zero mark, metres, where this tape has such an end. */
  readonly hook?: number;
  /** Height difference between the ends, metres, where the tape was to be held level. */
  readonly rise?: number;
}

/** True when a reading is so far from what is expected that luck does not explain it (0.1 % two-sided). */
export function isBeyondBelief({
  reading,
  expected,
  sigma,
}: Pick<Reading, 'reading' | 'expected' | 'sigma'>): boolean {
  return !(Math.abs(reading - expected) <= CRITICAL * sigma);
}

/**
 * The slips that would bring a reading back to what was expected, most likely first. Empty when it is believable as it is,
 * or when no known slip fits.
 */
export function slips(about: Reading): Slip[] {
  if (!isBeyondBelief(about)) return [];
  const seen = new Set<SlipCode>();
  return candidates(about)
    .map((slip) => ({ slip, cost: costOf(slip, about) }))
    .filter(({ slip, cost }) => slip.instead > 0 && cost < Number.POSITIVE_INFINITY)
    .sort((p, q) => p.cost - q.cost)
    .map(({ slip }) => slip)
    .filter(({ code }) => !seen.has(code) && seen.add(code));
}

type Candidate = Slip & { readonly rank: number };

/**
 * How readily each slip is made, as the cost that is added to half the squared misfit in sigmas; a guess at what is common
 * practice. A whole foot or metre is lost more often than a digit is turned round.
 */
const RANK: Record<SlipCode, number> = {
  foot: 0,
  metre: 0,
  inch: 0.5,
  'tenths-for-inches': 0.5,
  'inches-for-tenths': 0.5,
  'centre-for-face': 0.5,
  'ten-marks': 1,
  'level-for-slope': 1,
  hook: 1,
  'swapped-digits': 1.5,
  'six-nine': 1.5,
};

function costOf({ instead, rank }: Candidate, { expected, sigma }: Reading): number {
  const misfit = Math.abs(instead - expected) / sigma;
  return misfit <= CRITICAL ? (misfit * misfit) / 2 + rank : Number.POSITIVE_INFINITY;
}

function candidates(about: Reading): Candidate[] {
  return [...shifted(about), ...wrongScale(about), ...wrongTouch(about), ...wrongDigits(about)];
}

function candidate(code: SlipCode, instead: number, what: string, { units }: Reading): Candidate {
  return { code, instead, rank: RANK[code], text: `${what}: is it ${formatLength(instead, units)}?` };
}

const CENTIMETRE = 0.01;

/** Whole marks lost or gained. */
function shifted(about: Reading): Candidate[] {
  const metric = isMetric(about.units);
  const shifts: [SlipCode, number, string][] = metric
    ? [
        ['metre', 1, 'One metre'],
        ['inch', CENTIMETRE, 'One centimetre'],
        ['ten-marks', 10 * CENTIMETRE, 'Ten centimetres'],
      ]
    : [
        ['foot', METRES_PER_FOOT, 'One foot'],
        ['inch', METRES_PER_INCH, 'One inch'],
        about.units === 'ft'
          ? ['ten-marks', METRES_PER_FOOT / 10, 'A tenth of a foot']
          : ['ten-marks', 10 * METRES_PER_INCH, 'Ten inches'],
      ];
  if (about.hook !== undefined && about.hook > 0)
    shifts.push(['hook', about.hook, 'The end of the tape before its zero']);
  return shifts.flatMap(([code, shift, name]) => [
    candidate(code, about.reading - shift, `${name} too much`, about),
    candidate(code, about.reading + shift, `${name} too little`, about),
  ]);
}

/** A tape in tenths of a foot read as inches, and the other way round. */
function wrongScale(about: Reading): Candidate[] {
  if (isMetric(about.units)) return [];
  const feet = Math.floor(about.reading / METRES_PER_FOOT + ROUNDING);
  const rest = about.reading - feet * METRES_PER_FOOT;
  if (about.units === 'ft') {
    const digits = Math.round((rest / METRES_PER_FOOT) * 100);
    const inches = digits % 10 === 0 ? digits / 10 : digits;
    const instead = feet * METRES_PER_FOOT + inches * METRES_PER_INCH;
    return inches < 12
      ? [candidate('inches-for-tenths', instead, 'Inches typed as tenths of a foot', about)]
      : [];
  }
  const inches = rest / METRES_PER_INCH;
  const instead = (feet + inches / 10) * METRES_PER_FOOT;
  return inches <= 10
    ? [candidate('tenths-for-inches', instead, 'Tenths of a foot read as inches', about)]
    : [];
}

/** Keeps 12.999999999 ft from counting as 12; in feet, far below any mark. */
const ROUNDING = 1e-6;

function wrongTouch(about: Reading): Candidate[] {
  const faces = (about.halfSections ?? []).flatMap((half) => [
    candidate(
      'centre-for-face',
      about.reading - half,
      'Pulled to the far side of what was meant, centre for face',
      about,
    ),
    candidate(
      'centre-for-face',
      about.reading + half,
      'Pulled short of what was meant, face for centre',
      about,
    ),
  ]);
  const rise = about.rise ?? 0;
  if (rise === 0 || about.reading <= Math.abs(rise)) return faces;
  const level = Math.sqrt(about.reading * about.reading - rise * rise);
  return [...faces, candidate('level-for-slope', level, 'Held along the slope, not level', about)];
}

/** Two neighbouring digits swapped, or a 6 and a 9 seen upside down. */
function wrongDigits(about: Reading): Candidate[] {
  const text = about.typed ?? formatLength(about.reading, about.units);
  const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
  const out: Candidate[] = [];
  digits.forEach((at, i) => {
    const next = digits[i + 1];
    if (next !== undefined && text[at] !== text[next]) {
      out.push(...reread('swapped-digits', swapped(text, at, next), 'Two digits swapped', about));
    }
    const turned = text[at] === '6' ? '9' : text[at] === '9' ? '6' : null;
    if (turned) {
      const other = text.slice(0, at) + turned + text.slice(at + 1);
      out.push(...reread('six-nine', other, 'A 6 and a 9 mixed up', about));
    }
  });
  return out;
}

function swapped(text: string, i: number, j: number): string {
  const characters = [...text];
  [characters[i], characters[j]] = [characters[j]!, characters[i]!];
  return characters.join('');
}

function reread(code: SlipCode, text: string, what: string, about: Reading): Candidate[] {
  const parsed = parseLength(text, about.units, 'Reading');
  return parsed.ok ? [candidate(code, parsed.value, what, about)] : [];
}
