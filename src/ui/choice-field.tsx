import { useId } from 'preact/hooks';
import { FieldHint, type FieldWords } from './field.tsx';

export interface Choice<T extends string> {
  readonly value: T;
  readonly label: string;
  /** One short line under the label. */
  readonly hint?: string;
}

export interface ChoiceFieldProps<T extends string> extends FieldWords {
  readonly value: T | null;
  readonly choices: readonly Choice<T>[];
  readonly onChange: (value: T) => void;
}

/** One of a few, each as large as a button. Arrow keys move the choice. */
export function ChoiceField<T extends string>({
  value,
  choices,
  onChange,
  label,
  hint,
  from,
}: ChoiceFieldProps<T>) {
  const id = useId();
  const described = hint !== undefined || from !== undefined ? `${id}-hint` : undefined;
  return (
    <fieldset class="field choices" aria-describedby={described}>
      <legend class="field-label">{label}</legend>
      <div class="choices-grid">
        {choices.map((choice) => (
          <label key={choice.value} class="choice">
            <input
              type="radio"
              name={id}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => onChange(choice.value)}
            />
            <span class="choice-words">
              {choice.label}
              {choice.hint && <span class="choice-hint"> {choice.hint}</span>}
            </span>
          </label>
        ))}
      </div>
      <FieldHint id={`${id}-hint`} hint={hint} from={from} />
    </fieldset>
  );
}
