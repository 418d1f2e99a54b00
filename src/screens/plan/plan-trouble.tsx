import type { Assessment } from '../../judge/types.ts';
import { checkPlan } from '../../plan/index.ts';
import { Caution, Problem } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';

/** What is wrong with the plan, what ought to be known of it, and what already stands by it. */
export function PlanTrouble() {
  const { situation, assessment } = useJobBook();
  const problems = situation.plan ? checkPlan(situation.plan) : [];
  const stops = problems.filter((problem) => problem.stops);
  const notes = problems.filter((problem) => !problem.stops);
  const standing = standingWords(assessment);
  return (
    <>
      {stops.map(({ text }) => (
        <Problem key={text} text={text} />
      ))}
      {notes.length > 0 && (
        <ul class="plan-notes" aria-label="Still to settle">
          {notes.map(({ text }) => (
            <li key={text}>{unbroken(text)}</li>
          ))}
        </ul>
      )}
      {standing && (
        <Caution title="things stand by this plan">
          {standing} A change here does not move them: it changes what they are held against.
        </Caution>
      )}
    </>
  );
}

/** `3 stakes are driven, 2 holes are dug.`; null before anything is. */
function standingWords({ holes }: Pick<Assessment, 'holes'>): string | null {
  const count = (done: (hole: Assessment['holes'][number]) => boolean) => holes.filter(done).length;
  const parts = [
    words(
      count(({ staked }) => staked.driven),
      'stake',
      'driven',
    ),
    words(
      count(({ dug }) => dug.at !== null),
      'hole',
      'dug',
    ),
    words(
      count(({ set }) => set.done),
      'post',
      'set',
    ),
    words(
      count(({ poured }) => poured !== null),
      'hole',
      'poured',
    ),
  ].filter((part) => part !== null);
  return parts.length === 0 ? null : `${parts.join(', ')}.`;
}

function words(count: number, thing: string, done: string): string | null {
  if (count === 0) return null;
  return count === 1 ? `1 ${thing} is ${done}` : `${count} ${thing}s are ${done}`;
}
