import { thingName } from '../../job/words.ts';
import { readingOn } from '../../measure/index.ts';
import type { PlannedPull } from '../../stakeout/types.ts';
import { Button } from '../../ui/index.ts';
import { formatLength } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { More } from '../more.tsx';
import { useOpenPull } from '../open-pull.ts';
import { readWords } from '../rise-words.ts';
import type { StakeState } from './stake-step.ts';

/** Every check pull between stakes with what it should read, and what it read; a tap reads it. */
export function CheckList({ state: { checks, present } }: { readonly state: StakeState }) {
  const read = checks.filter(({ from, to }) => present.pull(from.thing, to.thing)).length;
  if (checks.length === 0) return null;
  return (
    <More label={`Check pulls: ${read} of ${checks.length} read`}>
      <ul class="check-rows">
        {checks.map((pull) => (
          <CheckRow key={nameOf(pull)} pull={pull} state={{ present }} />
        ))}
      </ul>
    </More>
  );
}

/** The third tapes: from every further stake to the stake of every hole; a tap reads one. */
export function FurtherPulls({ state: { fromFurther, present } }: { readonly state: StakeState }) {
  const froms = [...new Set(fromFurther.map(({ from }) => from.thing))];
  return froms.map((from) => {
    const pulls = fromFurther.filter((pull) => pull.from.thing === from);
    const read = pulls.filter(({ to }) => present.pull(from, to.thing)).length;
    return (
      <More key={thingName(from)} label={`Pulls from ${thingName(from)}: ${read} of ${pulls.length} read`}>
        <ul class="check-rows">
          {pulls.map((pull) => (
            <CheckRow key={nameOf(pull)} pull={pull} state={{ present }} />
          ))}
        </ul>
      </More>
    );
  });
}

/** `stake 1 to stake 2`. */
export const nameOf = ({ from, to }: Pick<PlannedPull, 'from' | 'to'>): string =>
  `${thingName(from.thing)} to ${thingName(to.thing)}`;

const PURPOSES: Record<PlannedPull['purpose'], string> = {
  fix: 'place',
  across: 'across',
  neighbour: 'neighbour',
  baseline: 'baseline',
};

function CheckRow({
  pull,
  state: { present },
}: {
  readonly pull: PlannedPull;
  readonly state: Pick<StakeState, 'present'>;
}) {
  const { situation } = useJobBook();
  const openPull = useOpenPull();
  const units = situation.plan?.units ?? 'm';
  const done = present.pull(pull.from.thing, pull.to.thing);
  const ready = present.stands(pull.from.thing) && present.stands(pull.to.thing);
  const reading = done ? readWords(situation, done.body) : ready ? 'not read yet' : 'not driven yet';
  return (
    <li>
      <Button disabled={!ready} onPress={() => openPull(pull)}>
        {nameOf(pull)}, {PURPOSES[pull.purpose]}:{' '}
        {formatLength(readingOn(situation.inHand, pull.expected), units)} level, {reading}
      </Button>
    </li>
  );
}
