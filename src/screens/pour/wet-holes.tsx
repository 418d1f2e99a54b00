import { thingName } from '../../job/words.ts';
import { minutesWords } from '../../judge/pour-clock.ts';
import type { JobView } from '../../judge/view.ts';
import { ButtonLink } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import { pouredState } from './poured-words.ts';
import { useNow } from './use-now.ts';

/** Posts in concrete that are to be read again, while work goes on at another hole: first those that can still be pushed. */
export function WetHoles({ view, but }: { readonly view: JobView; readonly but: string }) {
  const { jobId } = useJobBook();
  const now = useNow();
  const waiting = view.holes.flatMap(({ label }) => {
    const state = label === but ? null : pouredState(view, label, now);
    if (!state) return [];
    const { clock, wants, dueNextDay } = state;
    const wet = clock.stage === 'workable' && clock.left !== null && wants.length > 0;
    return wet || dueNextDay ? [{ label, left: wet ? clock.left : null }] : [];
  });
  const first = waiting.sort((p, q) => (p.left ?? now) - (q.left ?? now));
  return (
    <>
      {first.map(({ label, left }) => {
        const post = thingName({ kind: 'post', hole: label }, view.plan);
        return (
          <ButtonLink key={label} href={hrefOf({ at: 'job', job: jobId, phase: 'pour', hole: label })}>
            {left === null
              ? `The next day: measure ${post} again`
              : `${minutesWords(left)} left to push ${post}: measure it`}
          </ButtonLink>
        );
      })}
    </>
  );
}
