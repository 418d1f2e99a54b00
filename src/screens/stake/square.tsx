import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';
import { squareWords } from './square-words.ts';

/** How square the outer stakes of rows and columns stand. */
export function Square() {
  const words = squareWords(useJobBook().situation);
  if (words.length === 0) return null;
  return (
    <>
      <h3>Square</h3>
      {words.map((text) => (
        <p key={text}>{unbroken(text)}</p>
      ))}
    </>
  );
}
