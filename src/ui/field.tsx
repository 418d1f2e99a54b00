import type { ComponentChildren } from 'preact';
import { Problem } from './problem.tsx';

/** What every form field can say of itself. */
export interface FieldWords {
  readonly label: string;
  /** What it is, or what a good entry looks like. */
  readonly hint?: string;
  /** Where the value comes from: `a lumber standard`. */
  readonly from?: string;
  /** Where a default comes from, while the user has not put a value of their own: `common practice`. */
  readonly usual?: string;
}

export interface FieldProps extends FieldWords {
  /** The control's id; its hint and error are `${id}-hint` and `${id}-error`. */
  readonly id: string;
  readonly error?: string | null;
  readonly children: ComponentChildren;
}

/** Label above, control, hint and error below it, all tied together for a screen reader. */
export function Field({ id, label, hint, from, usual, error, children }: FieldProps) {
  return (
    <div class={error ? 'field field-wrong' : 'field'}>
      <label class="field-label" for={id}>
        {label}
      </label>
      {children}
      {error && <Problem id={`${id}-error`} text={error} />}
      <FieldHint id={`${id}-hint`} {...{ hint, from, usual }} />
    </div>
  );
}

interface FieldHintProps {
  readonly id: string;
  readonly hint?: string | undefined;
  readonly from?: string | undefined;
  readonly usual?: string | undefined;
}

export function FieldHint({ id, hint, from, usual }: FieldHintProps) {
  if (hint === undefined && from === undefined && usual === undefined) return null;
  return (
    <p class="field-hint" id={id}>
      {hint}
      {usual !== undefined && <span class="field-from"> The usual value, not yet yours: {usual}.</span>}
      {from !== undefined && <span class="field-from"> From: {from}.</span>}
    </p>
  );
}

/** For `aria-describedby`: the ids of what is really there. */
export function describedBy(
  id: string,
  { hint, from, usual }: FieldWords,
  error: string | null,
): string | undefined {
  const ids = [
    ...(error ? [`${id}-error`] : []),
    ...(hint !== undefined || from !== undefined || usual !== undefined ? [`${id}-hint`] : []),
  ];
  return ids.length > 0 ? ids.join(' ') : undefined;
}
