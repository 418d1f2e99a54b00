import { thingName } from '../../job/words.ts';
import { minutesWords } from '../../judge/pour-clock.ts';
import type { JobView } from '../../judge/view.ts';
import { listWords } from '../../judge/words.ts';
import { ButtonLink } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import { pouredState } from './poured-words.ts';

export interface WetHolesProps {
  readonly view: JobView;
  /** The hole whose card is open. */
  readonly but: string;
  /** What time it is, milliseconds since 1970. */
  readonly now: number;
}

/**
 * Posts in concrete that are to be read again, while work goes on at another hole: those that can still be pushed one by one,
 * with what is left of their time, and the looks of the next day together.
 */
export function WetHoles({ view, but, now }: WetHolesProps) {
  const { jobId } = useJobBook();
  const href = (label: string) => hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: label });
  const nameOf = (label: string) => thingName({ kind: 'post', hole: label }, view.plan);
  const poured = view.holes.flatMap(({ label }) => {
    const state = label === but ? null : pouredState(view, label, now);
    return state ? [{ label, state }] : [];
  });
  const wet = poured
    .flatMap(({ label, state: { clock, wants } }) =>
      clock.stage === 'workable' && clock.left !== null && wants.length > 0
        ? [{ label, left: clock.left }]
        : [],
    )
    .sort((p, q) => p.left - q.left);
  const due = poured.filter(({ state }) => state.dueNextDay).map(({ label }) => label);
  return (
    <>
      {wet.map(({ label, left }) => (
        <ButtonLink key={label} href={href(label)}>
          {minutesWords(left)} left to push {nameOf(label)}: measure it
        </ButtonLink>
      ))}
      {due[0] !== undefined && (
        <ButtonLink href={href(due[0])}>The next day: measure {listWords(due.map(nameOf))} again</ButtonLink>
      )}
    </>
  );
}
