import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import { Problem } from './problem.tsx';

/** One sentence that concerns the whole app, from the moment it is told until the app is closed. */
export class Notice {
  #sentence: string | null = null;
  readonly #listeners = new Set<() => void>();

  readonly sentence = (): string | null => this.#sentence;

  readonly tell = (sentence: string): void => {
    this.#sentence = sentence;
    for (const listener of this.#listeners) listener();
  };

  /** @returns ends it */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}

/** Where every frame finds it; a page without one has nothing to be told. */
export const NoticeContext = createContext<Notice | null>(null);

/** The notice, on top of whatever is shown. */
export function NoticeLine() {
  const notice = useContext(NoticeContext);
  const [sentence, setSentence] = useState(notice?.sentence() ?? null);
  useEffect(() => {
    if (!notice) return;
    const read = () => setSentence(notice.sentence());
    // It may have been told between the first drawing and now.
    read();
    return notice.subscribe(read);
  }, [notice]);
  return sentence === null ? null : <Problem text={sentence} />;
}
