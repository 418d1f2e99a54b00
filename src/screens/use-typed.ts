import { useRef, useState } from 'preact/hooks';
import type { Draft } from '../ui/use-draft.ts';
import type { Result } from '../units/index.ts';

export interface Typed<T> {
  /** For the box. */
  readonly draft: Draft;
  /** What stands in the box now; `null`, with the reason beside the box, where that is no good value. */
  take(): T | null;
  /** The same where `null` is a good value. */
  read(): Result<T>;
}

/**
 * The text of a box in a sheet, read when the sheet's button is tapped and not only when the box is left: some phones leave
 * the box focused through a tap on a button.
 */
export function useTyped<T>(read: (text: string) => Result<T>): Typed<T> {
  const [text, setText] = useState('');
  const [error, setError] = useState<string | null>(null);
  const now = useRef('');
  const readNow = (): Result<T> => {
    const result = read(now.current);
    setError(result.ok ? null : result.problem.text);
    return result;
  };
  const take = (): T | null => {
    const result = readNow();
    return result.ok ? result.value : null;
  };
  const edit = (next: string) => {
    now.current = next;
    setText(next);
    setError(null);
  };
  // Nothing is said of a box that was never written in: a sheet is opened to look at, too.
  const commit = () => void (now.current !== '' && take());
  return { draft: { text, error, edit, commit }, take, read: readNow };
}
