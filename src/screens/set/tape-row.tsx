import type { Hold } from '../../job/entry-schema.ts';
import type { Plan } from '../../job/plan-schema.ts';
import type { PullPlan } from '../../judge/pull-ends.ts';
import { readingOn } from '../../measure/index.ts';
import { PullRow } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { alongSlope, riseBetween } from '../rise.ts';
import { heldWords } from '../rise-words.ts';
import { fromWords, toWords } from './set-words.ts';

export interface TapeRowProps {
  readonly pull: PullPlan;
  readonly plan: Plan;
  readonly how: Hold['how'];
}

/**
 * What a tape ought to read, held as it is. Along the slope that is known only where a level has read the ground at both
 * ends; else the level length stands there, and says that it is no such reading.
 */
export function TapeRow({ pull, plan, how }: TapeRowProps) {
  const { situation } = useJobBook();
  const rise = how === 'slope' ? riseBetween(situation, pull.from, pull.to) : null;
  const unknown = how === 'slope' && rise === null;
  return (
    <PullRow
      live
      from={fromWords(pull.from, plan)}
      to={toWords(pull.to, plan)}
      held={heldWords(situation, unknown ? 'level' : how)}
      m={readingOn(situation.inHand, rise === null ? pull.expected : alongSlope(pull.expected, rise))}
      units={plan.units}
      {...(unknown ? { note: 'along the slope it reads more' } : {})}
    />
  );
}
