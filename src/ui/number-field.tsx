import { ok, type Result, refuse } from '../units/index.ts';
import type { FieldWords } from './field.tsx';
import { TextInput } from './text-input.tsx';
import { useDraft } from './use-draft.ts';

export interface NumberBounds {
  readonly min: number;
  readonly max: number;
  /** Whole numbers only. */
  readonly whole?: boolean;
}

export interface NumberFieldProps extends FieldWords, NumberBounds {
  readonly value: number | null;
  /** Not called while the text is no number within bounds. */
  readonly onChange: (value: number) => void;
  /** Short unit after the box: `posts`, `°`. */
  readonly suffix?: string;
}

/** A typed number that is not a length: a count, an angle, a share. */
export function NumberField({ value, onChange, min, max, whole, suffix, ...words }: NumberFieldProps) {
  const bounds = whole === undefined ? { min, max } : { min, max, whole };
  const shown = value === null ? '' : String(value);
  const draft = useDraft(shown, (text) => readNumber(text, words.label, bounds), onChange);
  return <TextInput {...words} draft={draft} {...(suffix === undefined ? {} : { suffix })} />;
}

/** Reads a plain number; a comma may stand for the point. */
export function readNumber(text: string, field: string, { min, max, whole }: NumberBounds): Result<number> {
  const clean = text.trim().replace('−', '-');
  const kind = whole ? 'a whole number' : 'a number';
  const range = `from ${min} to ${max}`;
  if (clean === '') return refuse(field, `${field} is empty: type ${kind} ${range}.`);
  const value = /^-?(\d+([.,]\d*)?|[.,]\d+)$/.test(clean) ? Number(clean.replace(',', '.')) : Number.NaN;
  const wrong = Number.isNaN(value) || (whole === true && !Number.isInteger(value));
  if (wrong) return refuse(field, `${field}: “${clean.slice(0, 24)}” is not ${kind}; type one ${range}.`);
  if (value < min || value > max)
    return refuse(field, `${field}: ${clean.slice(0, 24)} is out of range; type ${kind} ${range}.`);
  return ok(value);
}
