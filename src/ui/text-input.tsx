import { useId } from 'preact/hooks';
import { describedBy, Field, type FieldWords } from './field.tsx';
import type { Draft } from './use-draft.ts';

export interface TextInputProps extends FieldWords {
  readonly draft: Draft;
  /** A few lines, as for a note or a pasted table. */
  readonly lines?: number;
  /** Short unit after the box: `posts`, `ft`. */
  readonly suffix?: string;
}

/** The box that every typed field uses. It commits when the user leaves it or presses Enter. */
export function TextInput({ draft, lines = 1, suffix, ...words }: TextInputProps) {
  const id = useId();
  const shared = {
    id,
    value: draft.text,
    'aria-invalid': draft.error !== null,
    'aria-describedby': describedBy(id, words, draft.error),
    autocomplete: 'off',
    onInput: (event: { currentTarget: { value: string } }) => draft.edit(event.currentTarget.value),
    onBlur: draft.commit,
  } as const;
  return (
    <Field id={id} {...words} error={draft.error}>
      {lines > 1 ? (
        <textarea class="field-box" rows={lines} {...shared} />
      ) : (
        <span class="field-line">
          <input
            class="field-box"
            type="text"
            inputMode="text"
            autocapitalize="off"
            spellcheck={false}
            {...shared}
            onKeyDown={(event) => event.key === 'Enter' && draft.commit()}
          />
          {suffix && <span class="field-suffix">{suffix}</span>}
        </span>
      )}
    </Field>
  );
}
