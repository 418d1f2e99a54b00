import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';
import { More } from '../more.tsx';

/** What to measure next in the whole job, in order and with what each is for; then what no tape can settle, and why. */
export function NextTapes() {
  const { nextPulls, beyondPulls } = useJobBook().assessment;
  if (nextPulls.length + beyondPulls.length === 0) return null;
  return (
    <More label={labelOf(nextPulls.length)}>
      <ol class="findings">
        {nextPulls.map(({ text }, i) => (
          <li key={`${i + 1}. ${text}`}>{unbroken(text)}</li>
        ))}
      </ol>
      {beyondPulls.map(({ text }) => (
        <p key={text}>{unbroken(text)}</p>
      ))}
    </More>
  );
}

function labelOf(count: number): string {
  if (count === 0) return 'What no tape can settle';
  return count === 1 ? 'The tape to read next' : `The next ${count} tapes, in order`;
}
