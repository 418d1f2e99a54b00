import { ok, type Result, refuse } from '../units/index.ts';
import type { FieldWords } from './field.tsx';
import { TextInput } from './text-input.tsx';
import { useDraft } from './use-draft.ts';

export interface TextFieldProps extends FieldWords {
  readonly value: string;
  /** Not called while the text is too long, or empty where it must not be. Edges are trimmed. */
  readonly onChange: (value: string) => void;
  readonly maxLength: number;
  readonly required?: boolean;
  /** More than one makes room for a note or a pasted table. */
  readonly lines?: number;
}

/** Plain words: a name, a note, a pasted table. */
export function TextField({ value, onChange, maxLength, required, lines, ...words }: TextFieldProps) {
  const read = (text: string) => readText(text, words.label, maxLength, required ?? false);
  const draft = useDraft(value, read, onChange);
  return <TextInput {...words} draft={draft} {...(lines === undefined ? {} : { lines })} />;
}

function readText(text: string, field: string, maxLength: number, required: boolean): Result<string> {
  const clean = text.trim();
  if (required && clean === '') return refuse(field, `${field} is empty: type something.`);
  if (clean.length > maxLength)
    return refuse(field, `${field} has ${clean.length} characters: shorten it to ${maxLength} or fewer.`);
  return ok(clean);
}
