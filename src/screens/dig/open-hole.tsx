import { useRef } from 'preact/hooks';
import type { HoleAssessment } from '../../judge/types.ts';
import { ButtonLink, Problem } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { MissingList } from '../pour/missing-list.tsx';
import { hrefOf } from '../route.ts';
import { useLog } from '../use-log.ts';
import { lastDugWaiting, openHoleTicks, waitWords } from './dig-ticks.ts';

interface OpenHoleProps {
  readonly hole: HoleAssessment;
}

/** What eyes can tell of the open hole, each by one tap. None of it holds anything up here. */
export function OpenHoleTicks({ hole }: OpenHoleProps) {
  const { failed, log } = useLog();
  const ticks = openHoleTicks(hole);
  // Once it is shown it stays until the card is left: a list that shrinks brings other lines under the thumb.
  const shown = useRef(false);
  shown.current ||= ticks.length > 0;
  if (!shown.current || hole.set.done) return null;
  return (
    <section aria-labelledby="open-hole">
      <h3 id="open-hole">While hole {hole.hole} is open</h3>
      {failed && <Problem text="Not saved; free some space, then tap again." />}
      <MissingList
        hole={hole.hole}
        items={ticks}
        gate={hole.pourGate.items}
        onLog={(body) => void log(body)}
      />
    </section>
  );
}

/** That what was met is decided, where it is. */
export function Decided({ hole: { dug, pourGate } }: OpenHoleProps) {
  if (dug.obstruction === null || dug.obstruction === 'none') return null;
  const decided = pourGate.items.find(({ item, green }) => item === 'obstruction' && green);
  return decided ? <p>{decided.text}</p> : null;
}

/** A way back to the hole that was dug last: logging it led on to the next one. */
export function LastDug({ but }: { readonly but: string | null }) {
  const { jobId, situation, assessment } = useJobBook();
  const hole = lastDugWaiting(situation.entries, assessment.holes, but);
  if (!hole) return null;
  return (
    <ButtonLink href={hrefOf({ at: 'job', job: jobId, phase: 'dig', hole: hole.hole })}>
      Hole {hole.hole} is dug; open: {waitWords(hole)}
    </ButtonLink>
  );
}
