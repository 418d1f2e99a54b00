import { useState } from 'preact/hooks';
import type { DeckCentre, Overhang, RoundDeck } from '../../build/round-deck.ts';
import { length } from '../../geometry/point.ts';
import type { Deck } from '../../job/plan-schema.ts';
import { type AsBuilt, asBuiltRound } from '../../judge/as-built.ts';
import { chanceAtLeast } from '../../judge/chance.ts';
import { lengthTold } from '../../judge/frame-words.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { JobView } from '../../judge/view.ts';
import { listWords, moveWords, small } from '../../judge/words.ts';
import { FIELDS } from '../../plan/index.ts';
import { Button, type Choice, ChoiceField, LengthField, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { smallStep } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { More } from '../more.tsx';
import { usePlanEdits } from '../plan/use-plan-edits.ts';

const CENTRES: readonly Choice<DeckCentre>[] = [
  { value: 'nearest', label: 'Best circle', hint: 'nearest to all posts' },
  { value: 'widest', label: 'Largest least overhang' },
  { value: 'pier', label: 'The pier' },
];

interface RoundSectionProps {
  readonly view: JobView;
  readonly built: AsBuilt;
}

/** Where the middle of a round deck goes, and how its edge then lies over the posts. Nothing of another shape. */
export function RoundSection({ view, built }: RoundSectionProps) {
  const { plan, change, saveAgain } = usePlanEdits(view.plan);
  const [about, setAbout] = useState<DeckCentre>('nearest');
  const { assessment } = useJobBook();
  if (plan.shape.kind !== 'ring') return null;
  const say = (deck: Deck) => change((before) => ({ ...before, deck: { ...before.deck, ...deck } }));
  const hasPier = plan.shape.pier;
  const round = asBuiltRound(view, built, about);
  // What one misread tape could move unseen is no tick.
  const checked = assessment.holes.every(({ set }) => set.position.checked);
  return (
    <>
      <h3>Round deck</h3>
      {saveAgain && <Button onPress={saveAgain}>Save the plan again</Button>}
      <div class="no-print">
        <ChoiceField
          label="Its middle"
          value={about}
          choices={CENTRES.filter(({ value }) => value !== 'pier' || hasPier)}
          onChange={setAbout}
        />
      </div>
      {round ? <RoundWords view={view} round={round} checked={checked} /> : <p>{tooFew(about)}</p>}
      <div class="no-print">
        <More label={hasPier ? 'Edge, opening, gap' : 'Edge'}>
          <LengthField
            label={FIELDS.edge}
            value={plan.deck?.edge ?? null}
            units={plan.units}
            onChange={(edge) => say({ edge })}
          />
          {hasPier && (
            <>
              <LengthField
                label={FIELDS.opening}
                value={plan.deck?.opening ?? null}
                units={plan.units}
                onChange={(opening) => say({ opening })}
              />
              <LengthField
                label={FIELDS.gap}
                value={plan.deck?.gap ?? null}
                units={plan.units}
                bounds={{ min: 0 }}
                onChange={(gap) => say({ gap })}
              />
            </>
          )}
        </More>
      </div>
    </>
  );
}

const tooFew = (about: DeckCentre): string =>
  about === 'pier'
    ? 'It takes three measured posts and the measured pier to say how the edge lies.'
    : 'It takes three measured posts to say where the middle is.';

interface RoundProps {
  readonly view: JobView;
  readonly round: RoundDeck;
  /** Every post and the pier are measured and guarded. */
  readonly checked: boolean;
}

function RoundWords({ view, round, checked }: RoundProps) {
  const { units } = view.plan;
  const { off, reach, unmeasured, smallest, largest } = round;
  const away = length(off);
  const whole = unmeasured.length === 0 ? 'every post' : 'every measured post';
  return (
    <>
      <p>
        {unbroken(
          away < smallStep(units) / 2
            ? 'The middle is the drawing’s.'
            : `The middle is not the drawing’s, but ${moveWords(view.ground.centre, off, { ...view.ground, around: null })}.`,
        )}{' '}
        {unbroken(`A radius of ${lengthTold(reach, units)} just covers ${whole}, corners and all.`)}
      </p>
      {smallest && largest && <Covers {...{ view, round, checked, smallest, largest }} />}
      <Gap {...{ view, round, checked }} />
    </>
  );
}

interface CoversProps extends RoundProps {
  readonly smallest: Overhang;
  readonly largest: Overhang;
}

function Covers({ view, round: { unmeasured }, checked, smallest, largest }: CoversProps) {
  const { units } = view.plan;
  const { is, sigma } = smallest.past;
  const covered = verdictOf(chanceAtLeast(is, sigma, 0));
  const told = (overhang: Overhang) => `${lengthTold(overhang.past, units)} past post ${overhang.hole}`;
  const words = {
    in: 'The edge covers every measured post and its corners',
    out: `The edge does not cover post ${smallest.hole}: it falls ${small(is, units)} short of its corner`,
    unsure: `Too close to tell whether the edge covers post ${smallest.hole}`,
  }[covered];
  return (
    <>
      <p>
        <VerdictMark verdict={covered} checked={checked}>
          {unbroken(words)}
          {checked ? '.' : ', unchecked.'}
          {unmeasured.length > 0 && ` Not measured: ${listWords(unmeasured)}.`}
        </VerdictMark>
      </p>
      <p>
        {unbroken(
          `Overhang beyond the outermost corner: smallest ${told(smallest)}, largest ${told(largest)}.`,
        )}
      </p>
    </>
  );
}

function Gap({ view, round: { gap }, checked }: RoundProps) {
  const { units, deck } = view.plan;
  if (!gap) return null;
  const { sigma, smallest, largest } = gap;
  const words = `Gap round the pier: smallest ${lengthTold({ is: smallest, sigma }, units)}, largest ${lengthTold({ is: largest, sigma }, units)}.`;
  if (!deck?.gap) return <p>{unbroken(words)}</p>;
  const least = deck.gap.m;
  const verdict = verdictOf(chanceAtLeast(smallest, sigma, least));
  const says = { in: 'clear', out: 'too close', unsure: 'too close to tell' }[verdict];
  return (
    <p>
      <VerdictMark verdict={verdict} checked={checked}>
        {unbroken(
          `${words} At least ${small(least, units)} is asked for: ${says}${checked ? '' : ', unchecked'}.`,
        )}
      </VerdictMark>
    </p>
  );
}
