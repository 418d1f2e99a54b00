import type { Decision } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import { shiftToDecide } from '../../judge/after-pour.ts';
import { nudgeFor } from '../../judge/nudge.ts';
import { plumbNudgeFor } from '../../judge/plumb-nudge.ts';
import { minutesWords } from '../../judge/pour-clock.ts';
import { pouredAt } from '../../judge/poured.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { capital, listWords } from '../../judge/words.ts';
import { Button, GateList, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { whenWords } from '../record/when.ts';
import { dated } from './dated.ts';
import { clockWords, outInConcrete, type Poured, pouredState } from './poured-words.ts';

export interface PouredCardProps {
  readonly view: JobView;
  readonly hole: HoleAssessment;
  /** What time it is, milliseconds since 1970. */
  readonly now: number;
  readonly onDecide: (on: Decision) => void;
}

/** One hole after its concrete: how long it can still be pushed, what is to be read again, and what was found since. */
export function PouredCard({ view, hole, now, onDecide }: PouredCardProps) {
  const post = thingName({ kind: 'post', hole: hole.hole }, view.plan);
  const pour = view.book.pours(hole.hole).at(-1)?.entry;
  const state = pouredState(view, hole.hole, now);
  if (!pour || !state) return null;
  const { bags, batch, note } = pour.body;
  const wrong = hole.set.verdict === 'out' || state.shifted !== '';
  return (
    <>
      <h2>Hole {hole.hole} is poured</h2>
      <p>
        {bags} {bags === 1 ? 'bag' : 'bags'}
        {batch ? `, batch ${batch}` : ''}, {whenWords(pouredAt(pour))}
        {note ? `. ${capital(note)}` : ''}.
      </p>
      {state.clock.stage === 'workable' && state.clock.left !== null && (
        <p class="pour-left" role="timer" aria-label="Working time left">
          {minutesWords(state.clock.left)}
        </p>
      )}
      <p>{clockWords(state.clock)}</p>
      {wrong && <WrongInConcrete {...{ view, hole, state, post, onDecide }} />}
      <p>{againWords(post, state)}</p>
      <GateList
        label={`The gate of hole ${hole.hole} as it is now`}
        items={hole.pourGate.items.map((item) => dated(view, hole.hole, item))}
      />
    </>
  );
}

/** What is to be read again, and when. */
function againWords(post: string, { wants, dueNextDay, clock }: Poured): string {
  if (dueNextDay) return `The next day has come: measure ${post} again, by tape and by level.`;
  if (wants.length === 0)
    return `${capital(post)} was measured since the pour. Measure it again the next day.`;
  const still = clock.stage === 'set' || clock.stage === 'stiff' ? '' : ' while it can still be pushed';
  return `Measure ${post} again${still}, and again the next day. Not read yet since the pour: ${listWords(wants)}.`;
}

interface WrongProps extends Omit<PouredCardProps, 'now'> {
  readonly state: Poured;
  readonly post: string;
}

/** A post that is out, or moved in its concrete; and while it can be pushed, how. */
function WrongInConcrete({ view, hole, state, post, onDecide }: WrongProps) {
  const { verdict, headline, position, plumb } = hole.set;
  const sited = view.sited.get(hole.hole);
  const pushes =
    sited && state.clock.stage === 'workable'
      ? [nudgeFor(view, sited, position, false), plumbNudgeFor(view, sited, plumb, false)].flatMap((push) =>
          push ? [push.words] : [],
        )
      : [];
  return (
    <>
      <p>
        <VerdictMark verdict="out">
          {verdict === 'out' ? `${capital(post)} is in concrete and measures out.` : state.shifted}
        </VerdictMark>
      </p>
      {verdict === 'out' && state.shifted !== '' && <p>{unbroken(state.shifted)}</p>}
      {verdict === 'out' && <p>{unbroken(headline)}</p>}
      {pushes.map((words) => (
        <p key={words}>
          <strong>{unbroken(words)}</strong>
        </p>
      ))}
      <p>{outInConcrete(state.clock)}</p>
      {state.shifted !== '' &&
        (shiftToDecide(view, hole.hole) ? (
          <Button onPress={() => onDecide('moved')}>Enter the decision</Button>
        ) : (
          <p>Decided by {unbroken(view.book.decision('moved', hole.hole)?.entry.body.note ?? '')}.</p>
        ))}
    </>
  );
}
