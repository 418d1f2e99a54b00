import { unbroken } from '../ui/unbroken.ts';
import { useJobBook } from './job-book.ts';
import { More } from './more.tsx';

/**
 * What to measure next in the whole job, with what each is for: tapes in order, then the rod; last what no reading can settle,
 * and why.
 */
export function NextReadings() {
  const { nextPulls, nextHeights, beyondPulls } = useJobBook().assessment;
  const next = [...nextPulls, ...nextHeights];
  if (next.length + beyondPulls.length === 0) return null;
  return (
    <More label={labelOf(next.length)}>
      <ol class="findings">
        {next.map(({ text }, i) => (
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
  if (count === 0) return 'What no reading can settle';
  return count === 1 ? 'The reading to take next' : `The next ${count} readings, in order`;
}
