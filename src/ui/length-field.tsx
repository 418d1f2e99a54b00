import { type Length, typedLength } from '../job/length.ts';
import { type Bounds, EXAMPLES, formatLength, type Units } from '../units/index.ts';
import type { FieldWords } from './field.tsx';
import { TextInput } from './text-input.tsx';
import { useDraft } from './use-draft.ts';

export interface LengthFieldProps extends FieldWords {
  readonly value: Length | null;
  readonly units: Units;
  /** Not called while the text is no length within `bounds`. */
  readonly onChange: (value: Length) => void;
  readonly bounds?: Bounds;
}

/** A typed length. It commits on leaving or Enter; what cannot be read stays on the screen with the reason. */
export function LengthField({ value, units, onChange, bounds, ...words }: LengthFieldProps) {
  const shown = value === null ? '' : inUnits(value, units);
  const draft = useDraft(shown, (text) => typedLength(text, units, words.label, bounds), onChange);
  const hint = words.hint ?? `Such as ${EXAMPLES[units]}.`;
  return <TextInput {...words} hint={hint} draft={draft} />;
}

/** As typed while the job's units are those it was typed in; a bare number gets its unit. */
function inUnits({ m, typed, units: typedIn }: Length, units: Units): string {
  const bare = /^[\d.,\s-]+$/.test(typed);
  return typedIn === units && !bare ? typed : formatLength(m, units);
}
