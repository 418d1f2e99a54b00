import { thingName } from '../../job/words.ts';
import type { PlannedPull } from '../../stakeout/types.ts';
import { Button } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatLength } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { lazily } from '../lazily.tsx';
import { More } from '../more.tsx';
import { useOpenPull } from '../open-pull.ts';
import { part } from '../part.ts';
import { heldWords, levelTape, otherHeldWords, readWords } from '../rise-words.ts';
import { guardProgress, readOf } from './check-words.ts';
import type { StakeState } from './stake-step.ts';

/** Seldom looked at, and never in the first frame. */
const Square = lazily<object>(
  part(async () => (await import('./square.tsx')).Square),
  () => null,
);

/** Every check pull between stakes with what it should read, and what it read; a tap reads it. */
export function CheckList({ state }: { readonly state: StakeState }) {
  const read = state.present.checked.length;
  // What the pulls are is worked out only when they are looked at.
  return (
    <More label={`Check pulls: ${read === 0 ? 'none' : read} read`}>
      <CheckPulls state={state} />
    </More>
  );
}

function CheckPulls({ state: { checks, present, situation } }: { readonly state: StakeState }) {
  const { guarding, further, ...rest } = checks();
  const units = situation.plan?.units ?? 'm';
  if (guarding.length + further.length === 0)
    return <p>Nothing to pull between: one stake, or none in reach.</p>;
  return (
    <>
      <p>{unbroken(guardProgress({ guarding, further, ...rest }, present, units))}</p>
      <CheckRows pulls={guarding} present={present} />
      {guarding.length > 0 && further.length > 0 && <p>Beyond those, for whoever wants more of them:</p>}
      <CheckRows pulls={further} present={present} />
      <Square />
    </>
  );
}

function CheckRows({
  pulls,
  present,
}: {
  readonly pulls: readonly PlannedPull[];
  readonly present: StakeState['present'];
}) {
  return (
    <ul class="check-rows">
      {pulls.map((pull) => (
        <CheckRow key={nameOf(pull)} pull={pull} present={present} />
      ))}
    </ul>
  );
}

/** The third tapes: from every further stake to the stake of every hole; a tap reads one. */
export function FurtherPulls({ state: { fromFurther, present } }: { readonly state: StakeState }) {
  const froms = [...new Set(fromFurther.map(({ from }) => from.thing))];
  return froms.map((from) => {
    const pulls = fromFurther.filter((pull) => pull.from.thing === from);
    const read = readOf(pulls, present);
    return (
      <More key={thingName(from)} label={`Pulls from ${thingName(from)}: ${read} of ${pulls.length} read`}>
        <CheckRows pulls={pulls} present={present} />
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
  neighbour: 'side',
  diagonal: 'diagonal',
  chord: 'skip one',
  baseline: 'baseline',
};

function CheckRow({
  pull,
  present,
}: {
  readonly pull: PlannedPull;
  readonly present: StakeState['present'];
}) {
  const { situation } = useJobBook();
  const openPull = useOpenPull();
  const units = situation.plan?.units ?? 'm';
  const done = present.pull(pull.from.thing, pull.to.thing);
  const ready = present.stands(pull.from.thing) && present.stands(pull.to.thing);
  const reading = done ? readWords(situation, done.body) : ready ? 'not read yet' : 'not driven yet';
  const { m } = levelTape(situation, pull.expected);
  const level = `${formatLength(m, units)} ${situation.inHand ? `on ${heldWords(situation, 'level')}` : 'level'}`;
  const slope = otherHeldWords(situation, pull, 'level');
  return (
    <li>
      <Button disabled={!ready} onPress={() => openPull(pull)}>
        {[`${nameOf(pull)}, ${PURPOSES[pull.purpose]}: ${level}`, ...(slope ? [slope] : []), reading].join(
          ', ',
        )}
      </Button>
    </li>
  );
}
