import { useId } from 'preact/hooks';
import { FieldHint, type FieldWords } from './field.tsx';

export interface CheckFieldProps extends FieldWords {
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Yes or no, ticked in a box as large as a thumb. */
export function CheckField({ value, onChange, label, hint, from }: CheckFieldProps) {
  const id = useId();
  const described = hint !== undefined || from !== undefined ? `${id}-hint` : undefined;
  return (
    <div class="field">
      <label class="choice">
        <input
          type="checkbox"
          checked={value}
          aria-describedby={described}
          onChange={(event) => onChange(event.currentTarget.checked)}
        />
        <span class="choice-words">{label}</span>
      </label>
      <FieldHint id={`${id}-hint`} hint={hint} from={from} />
    </div>
  );
}
