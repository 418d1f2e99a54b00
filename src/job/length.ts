import * as v from 'valibot';
import {
  type Bounds,
  formatLength,
  ok,
  parseLength,
  type Result,
  UNITS,
  type Units,
} from '../units/index.ts';

/**
 * A length as it was typed: the text is kept, so that what was read off the tape is what is stored. `m` is what the
 * text says, in metres; a file in which the two disagree is refused by the schema.
 */
export const LengthSchema = v.pipe(
  v.strictObject({
    m: v.pipe(v.number(), v.finite(), v.description('metres')),
    typed: v.pipe(v.string(), v.maxLength(40), v.description('the text as typed, in `units`')),
    units: v.picklist(UNITS),
  }),
  v.check(agrees, 'has a typed text and metres that disagree'),
);
export type Length = v.InferOutput<typeof LengthSchema>;

/** A thousandth of a millimetre: far below any tape, far above what writing a number down can lose. */
const AGREEMENT_M = 1e-6;

function agrees({ m, typed, units }: { m: number; typed: string; units: Units }): boolean {
  const parsed = parseLength(typed, units, 'Length', { min: Number.NEGATIVE_INFINITY });
  return parsed.ok && Math.abs(parsed.value - m) <= AGREEMENT_M;
}

/** Reads what was typed into a `Length`; on bad input says so and makes nothing. */
export function typedLength(typed: string, units: Units, field: string, bounds?: Bounds): Result<Length> {
  const m = parseLength(typed, units, field, bounds);
  return m.ok ? ok({ m: m.value, typed: typed.trim(), units }) : m;
}

/** A `Length` as the tool would type it: rounded to the step of `units`, so that text and metres agree. */
export function roundedLength(m: number, units: Units): Length {
  const typed = formatLength(m, units);
  const parsed = parseLength(typed, units, 'Length', { min: Number.NEGATIVE_INFINITY });
  if (!parsed.ok) throw new RangeError(parsed.problem.text);
  return { m: parsed.value, typed, units };
}

const HAS_MARK = /[a-z′″'"’”]/i;
const UNIT_NAME: Record<Units, string> = {
  'ft-in-16': 'ft in',
  'ft-in-32': 'ft in',
  ft: 'ft',
  m: 'm',
  mm: 'mm',
};

/** A length as it was typed, always with its unit: `18′ 6 5/16″`, `3.825 m`. */
export function lengthWords({ m, typed, units }: Length): string {
  if (HAS_MARK.test(typed)) return typed;
  const written = formatLength(m, units);
  // Bare feet and inches get their marks where that changes nothing: `12 6 1/2` is `12′ 6 1/2″`, but 3/7 of an inch stays.
  const same = agrees({ m, typed: written, units });
  return UNIT_NAME[units] === 'ft in' && same ? written : `${typed} ${UNIT_NAME[units]}`;
}
