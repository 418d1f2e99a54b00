import { type Length, typedLength } from '../../job/length.ts';
import { isLabel, type TapeSpec } from '../../job/plan-schema.ts';
import { shownIn } from '../../job/pulling-words.ts';
import { isTape } from '../../plan/tape.ts';
import {
  forceScale,
  ok,
  type Result,
  refuse,
  temperatureScale,
  type Units,
  weightScale,
} from '../../units/index.ts';
import { faultOf, readScaled, TEMPERATURES_C, TENSIONS_N } from '../read-pulling.ts';
import { lengthText } from './read-point.ts';

/** Which way a bent hook or a torn end puts every reading wrong. */
export type EndOff = 'none' | 'long' | 'short';
export type Material = 'steel' | 'other';

/** A tape as it stands in its fields: text, right or wrong; empty where nobody knows. */
export interface TapeTexts {
  readonly label: string;
  readonly nominal: string;
  readonly actual: string;
  readonly end: EndOff;
  readonly zero: string;
  readonly material: Material;
  readonly temperature: string;
  readonly tension: string;
  readonly stiffness: string;
  readonly weight: string;
}

export const TAPE_FIELDS = {
  label: 'Written on the tape',
  nominal: 'It reads',
  actual: 'Where there really are',
  zero: 'Too much or too little by',
  temperature: 'Temperature it is true at',
  tension: 'Pull it is true at',
  stiffness: 'Pull that would double its length',
  weight: 'Weight',
} as const;

type Field = keyof typeof TAPE_FIELDS;

/** Why each field cannot be read; null where it can. */
export type TapeFaults = { readonly [K in Field]: string | null };
export const NO_TAPE_FAULTS: TapeFaults = {
  label: null,
  nominal: null,
  actual: null,
  zero: null,
  temperature: null,
  tension: null,
  stiffness: null,
  weight: null,
};

/** Steel, per °C: 6.45e-6 per °F (US Navy, Engineering Aid Basic, ch. 12). */
const STEEL_PER_C = 11.6e-6;

/** Bounds that the plan has for them, newtons and newtons per metre. */
const STIFFNESSES_N = { min: 1000, max: 1e7 } as const;
const WEIGHTS = { min: 0, max: 10 } as const;

const NEW_TAPE: TapeTexts = {
  label: '',
  nominal: '',
  actual: '',
  end: 'none',
  zero: '',
  material: 'other',
  temperature: '',
  tension: '',
  stiffness: '',
  weight: '',
};

/** The texts of a tape that is listed already, each length with its marks; of a new one, mostly empty. */
export function tapeTexts(tape: TapeSpec | null, units: Units): TapeTexts {
  if (!tape) return NEW_TAPE;
  const { zero, temperature, tension, expansion, stiffness, weight } = tape;
  const force = forceScale(units);
  const shown = (scale: typeof force, si: number | undefined) =>
    si === undefined ? '' : String(shownIn(scale, si));
  return {
    label: tape.label,
    nominal: lengthText(tape.nominal, units),
    actual: lengthText(tape.actual, units),
    end: zero.m === 0 ? 'none' : zero.m < 0 ? 'long' : 'short',
    zero: zero.m === 0 ? '' : lengthText(unsigned(zero), units),
    material: expansion === undefined ? 'other' : 'steel',
    temperature: shown(temperatureScale(units), temperature),
    tension: shown(force, tension),
    stiffness: shown(force, stiffness),
    weight: shown(weightScale(units), weight),
  };
}

const unsigned = (length: Length): Length => ({
  ...length,
  m: Math.abs(length.m),
  typed: length.typed.replace(/^[-−]\s*/, ''),
});

/**
 * Reads a tape out of its fields, all of them or nothing. What was left alone stays as it was typed.
 *
 * @param taken labels of the other tapes
 * @param before the tape that is changed; null for a new one
 */
export function readTape(
  texts: TapeTexts,
  units: Units,
  taken: readonly string[],
  before: TapeSpec | null,
): { readonly tape: TapeSpec } | { readonly faults: TapeFaults } {
  const same = tapeTexts(before, units);
  const length = (field: 'nominal' | 'actual') =>
    before && texts[field] === same[field]
      ? ok(before[field])
      : typedLength(texts[field], units, TAPE_FIELDS[field]);
  const number = (
    field: 'temperature' | 'tension' | 'stiffness' | 'weight',
    scale: ReturnType<typeof forceScale>,
    bounds: { readonly min: number; readonly max: number },
  ) =>
    before && texts[field] === same[field]
      ? ok(before[field])
      : readScaled(texts[field], TAPE_FIELDS[field], scale, bounds);
  const force = forceScale(units);
  const read = {
    label: readLabel(texts.label, taken),
    nominal: length('nominal'),
    actual: length('actual'),
    zero:
      before && texts.end === same.end && texts.zero === same.zero ? ok(before.zero) : readZero(texts, units),
    temperature: number('temperature', temperatureScale(units), TEMPERATURES_C),
    tension: number('tension', force, TENSIONS_N),
    stiffness: number('stiffness', force, STIFFNESSES_N),
    weight: number('weight', weightScale(units), WEIGHTS),
  };
  const { label, nominal, actual, zero, temperature, tension, stiffness, weight } = read;
  const allRead = label.ok && nominal.ok && actual.ok && zero.ok;
  if (!allRead || !temperature.ok || !tension.ok || !stiffness.ok || !weight.ok)
    return { faults: faultsOf(read) };
  const tape: TapeSpec = {
    label: label.value,
    nominal: nominal.value,
    actual: actual.value,
    zero: zero.value,
    ...(texts.material === 'steel' ? { expansion: before?.expansion ?? STEEL_PER_C } : {}),
    ...given('temperature', temperature.value),
    ...given('tension', tension.value),
    ...given('stiffness', stiffness.value),
    ...given('weight', weight.value),
  };
  return isTape(tape) ? { tape } : { faults: { ...NO_TAPE_FAULTS, actual: NOT_SO } };
}

const given = <K extends string>(key: K, value: number | undefined) =>
  (value === undefined ? {} : { [key]: value }) as Partial<Record<K, number>>;

const NOT_SO = `${TAPE_FIELDS.actual}: no tape is that far from what it reads, nor its end that far off; type both lengths nearly alike.`;

const faultsOf = (read: { readonly [K in Field]: Result<unknown> }): TapeFaults => ({
  label: faultOf(read.label),
  nominal: faultOf(read.nominal),
  actual: faultOf(read.actual),
  zero: faultOf(read.zero),
  temperature: faultOf(read.temperature),
  tension: faultOf(read.tension),
  stiffness: faultOf(read.stiffness),
  weight: faultOf(read.weight),
});

/** A reading that comes out too long is put right by taking away. */
function readZero({ end, zero }: TapeTexts, units: Units): Result<Length> {
  if (end === 'none') return typedLength(NOTHING[units], units, TAPE_FIELDS.zero, { min: 0 });
  const typed = typedLength(zero, units, TAPE_FIELDS.zero);
  if (!typed.ok || end === 'short') return typed;
  return ok({ ...typed.value, m: -typed.value.m, typed: `-${typed.value.typed}` });
}

const NOTHING: Record<Units, string> = {
  'ft-in-16': '0″',
  'ft-in-32': '0″',
  ft: '0 ft',
  m: '0 m',
  mm: '0 mm',
};

function readLabel(text: string, taken: readonly string[]): Result<string> {
  const label = text.trim();
  const field = TAPE_FIELDS.label;
  if (!isLabel(label))
    return refuse(
      field,
      `${field}: “${label.slice(0, 24)}” will not do; type 1 to 12 letters or digits, such as Red.`,
    );
  if (taken.includes(label))
    return refuse(field, `${field}: there is a tape “${label}” already; mark this one otherwise.`);
  return ok(label);
}
