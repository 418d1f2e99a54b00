import { useEffect, useRef, useState } from 'preact/hooks';
import type { Result } from '../units/index.ts';
import { useAmongBoxes } from './boxes.ts';

export interface Draft {
  readonly text: string;
  readonly error: string | null;
  edit(text: string): void;
  commit(): void;
}

/**
 * The text in a field until it is a good value. On commit, bad text stays on the screen beside its error and nothing is
 * passed on; good text is passed on once.
 *
 * @param shown the present value as text; when it changes from outside, the draft follows
 */
export function useDraft<T>(
  shown: string,
  read: (text: string) => Result<T>,
  pass: (value: T) => void,
): Draft {
  const [text, setText] = useState(shown);
  const [error, setError] = useState<string | null>(null);
  const now = useRef(shown);
  const followed = useRef(shown);
  useEffect(() => {
    // Not on the first run: what was typed before the first frame was drawn stays.
    if (followed.current === shown) return;
    followed.current = shown;
    now.current = shown;
    setText(shown);
    setError(null);
  }, [shown]);
  const commit = (): string | null => {
    if (now.current === shown && error === null) return null;
    const result = read(now.current);
    const why = result.ok ? null : result.problem.text;
    setError(why);
    if (result.ok) pass(result.value);
    return why;
  };
  useAmongBoxes(commit);
  const edit = (next: string) => {
    now.current = next;
    setText(next);
  };
  return { text, error, edit, commit: () => void commit() };
}
