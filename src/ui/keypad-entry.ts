import type { Units } from '../units/index.ts';

/** Which piece of a feet-and-inches reading the pad is asking for. */
export type Stage = 'feet' | 'inches' | 'fraction';

/**
 * What stands on the keypad. `pieces`: feet, inches and fraction tapped one after the other. `typed`: plain text, from a
 * hardware keyboard or in decimal units.
 */
export type KeypadEntry =
  | {
      readonly how: 'pieces';
      readonly feet: string;
      readonly inches: string;
      /** Numerator over the units' denominator (16 or 32); null while untouched. */
      readonly fraction: number | null;
      readonly stage: Stage;
      readonly denominator: number;
    }
  | { readonly how: 'typed'; readonly text: string };

type Pieces = Extract<KeypadEntry, { how: 'pieces' }>;

/** Denominator of the finest fraction, or null in decimal units. */
export function denominatorOf(units: Units): 16 | 32 | null {
  return units === 'ft-in-16' ? 16 : units === 'ft-in-32' ? 32 : null;
}

/** As many digits as any length needs: 99999 mm is beyond every tape. */
const MOST_DIGITS = 5;
/** As `typed` in a stored length allows. */
const MOST_TEXT = 40;

/**
 * An entry with nothing in it, or with `draft` (text left from before) in it.
 *
 * @param from `inches` for what is never a foot
 */
export function startEntry(units: Units, draft = '', from: 'feet' | 'inches' = 'feet'): KeypadEntry {
  const denominator = denominatorOf(units);
  if (draft !== '' || denominator === null) return { how: 'typed', text: draft };
  return { how: 'pieces', feet: '', inches: '', fraction: null, stage: from, denominator };
}

/** The entry as text that `parseLength` reads; empty when nothing was entered. */
export function entryText(entry: KeypadEntry): string {
  if (entry.how === 'typed') return entry.text;
  const { feet, inches, fraction, stage, denominator } = entry;
  const small = [inches, fraction ? fractionText(fraction, denominator) : ''].filter(Boolean).join(' ');
  // A bare number is left bare, so that the reader asks whether it is feet or inches.
  if (small === '') return feet === '' ? (fraction === 0 ? '0″' : '') : stage === 'feet' ? feet : `${feet}′`;
  return `${feet === '' ? '' : `${feet}′ `}${small}″`;
}

/** `5/16` for 5 sixteenths, `1/2` for 8, `0` for none. */
export function fractionText(over: number, denominator: number): string {
  if (over === 0) return '0';
  let [n, d] = [over, denominator];
  while (n % 2 === 0) [n, d] = [n / 2, d / 2];
  return `${n}/${d}`;
}

/** A digit or decimal point of the pad. */
export function pressDigit(entry: KeypadEntry, digit: string): KeypadEntry {
  if (entry.how === 'typed') return typeText(entry, digit);
  const feet = entry.feet === '0' ? digit : entry.feet + digit;
  return feet.length > MOST_DIGITS ? entry : { ...entry, feet, stage: 'feet' };
}

/** The `′ ft` key: what was tapped is feet; now come the inches. */
export function pressFeetMark(entry: KeypadEntry): KeypadEntry {
  return entry.how === 'typed' ? typeText(entry, '′ ') : { ...entry, stage: 'inches' };
}

/** The `″ in` key: what was tapped is inches, without feet; now comes the fraction. */
export function pressInchMark(entry: KeypadEntry): KeypadEntry {
  if (entry.how === 'typed') return typeText(entry, '″');
  if (entry.feet === '') return { ...entry, stage: 'inches' };
  return { ...entry, feet: '', inches: entry.feet, stage: 'fraction' };
}

/** A whole inch of the inch pad, 0 to 11. */
export const pressInches = (entry: Pieces, inches: number): KeypadEntry => ({
  ...entry,
  inches: String(inches),
  stage: 'fraction',
});

/** A fraction of the fraction pad, as its numerator over the denominator. */
export const pressFraction = (entry: Pieces, over: number): KeypadEntry => ({ ...entry, fraction: over });

export const goToStage = (entry: Pieces, stage: Stage): KeypadEntry => ({ ...entry, stage });

/** A character of a hardware keyboard. From here on the entry is plain text. */
export function typeText(entry: KeypadEntry, character: string): KeypadEntry {
  const text = entryText(entry) + character;
  return text.length > MOST_TEXT ? entry : { how: 'typed', text };
}

/** Takes back the last step: a character, a fraction, the inches, the `′`, a digit. */
export function takeBack(entry: KeypadEntry, units: Units): KeypadEntry {
  if (entry.how === 'typed') {
    const text = entry.text.trimEnd().slice(0, -1).trimEnd();
    return text === '' ? startEntry(units) : { how: 'typed', text };
  }
  if (entry.fraction !== null) return { ...entry, fraction: null, stage: 'fraction' };
  if (entry.inches !== '') return { ...entry, inches: '', stage: 'inches' };
  if (entry.stage !== 'feet') return { ...entry, stage: 'feet' };
  return { ...entry, feet: entry.feet.slice(0, -1) };
}

export const isEmpty = (entry: KeypadEntry): boolean => entryText(entry) === '';
