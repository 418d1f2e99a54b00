import { useMemo, useState } from 'preact/hooks';
import type { PlanPlace } from '../../job/place-schema.ts';
import type { Plan } from '../../job/plan-schema.ts';
import { groundLinesOf } from '../../judge/situation.ts';
import { listWords } from '../../judge/words.ts';
import type { StakeChoice } from '../../stakeout/index.ts';
import { Button, ButtonRow, Problem, PullRow } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';
import { More } from '../more.tsx';
import { levelTape } from '../rise-words.ts';
import { useLog } from '../use-log.ts';
import { LayButtons } from './lay/lay-buttons.tsx';
import { MovedWarning } from './moved-warning.tsx';
import { proposal } from './own-price.ts';
import { PlaceForm } from './place-form.tsx';
import { PerHole, PlacePreview } from './place-preview.tsx';
import { placeWords, typedPlace } from './place-words.ts';
import { isBegun } from './present.ts';
import { StakePage } from './stake-page.tsx';

export interface PlaceCardProps {
  /** Back to where the user came from, when A and B have their places already. */
  readonly onClose?: () => void;
}

/** Where A and B go: as the tool would have it, or as the user says. */
export function PlaceCard({ onClose }: PlaceCardProps) {
  const { situation } = useJobBook();
  const { plan, holes, site } = situation;
  const lines = useMemo(() => groundLinesOf(situation).lines, [situation]);
  const best = useMemo(() => (plan ? proposal(plan, holes, lines) : null), [plan, holes, lines]);
  const [own, setOwn] = useState(false);
  const { failed, log } = useLog();
  if (!plan) return null;
  const use = async (places: { a: PlanPlace; b: PlanPlace }, chosenBy: 'tool' | 'user') => {
    if (await log({ kind: 'site', ...places, chosenBy })) onClose?.();
  };
  if (own || !best)
    return (
      <PlaceForm
        best={best}
        onUse={(places) => use(places, 'user')}
        onBack={best ? () => setOwn(false) : onClose}
      />
    );
  const places = { a: typedPlace(best.a, plan.units), b: typedPlace(best.b, plan.units) };
  return (
    <StakePage
      actions={
        <>
          <ButtonRow>
            <Button onPress={() => setOwn(true)}>I say where A and B are</Button>
            {onClose && <Button onPress={onClose}>Leave them</Button>}
          </ButtonRow>
          <Button kind="main" onPress={() => void use(places, 'tool')}>
            Use these stakes
          </Button>
        </>
      }
    >
      <h2>Choose where A and B go</h2>
      {!situation.laid && site && situation.problems.map(({ text }) => <Problem key={text} text={text} />)}
      {failed && (
        <Problem text="Places of A and B: not saved; free some space, then tap Use these stakes again." />
      )}
      {isBegun(situation.entries) && <MovedWarning />}
      {site && <GoesAlong plan={plan} />}
      <p>The two reference stakes, this far apart. Nothing is driven yet: buried utilities come first.</p>
      <PullRow live from="from A" to="to B" {...levelTape(situation, best.baseline)} units={plan.units} />
      <PlacePreview choice={best} />
      <More label="How good each hole will be">
        <p>{unbroken(`A stands ${placeWords(planar(best.a), plan.units)}.`)}</p>
        <p>{unbroken(`B stands ${placeWords(planar(best.b), plan.units)}.`)}</p>
        <PerHole choice={best} units={plan.units} />
      </More>
      <LayButtons />
    </StakePage>
  );
}

/** Lines that are told from A and B lie wherever these stand. */
function GoesAlong({ plan }: { readonly plan: Plan }) {
  const names = (plan.lines ?? [])
    .filter(({ from, to }) => from.by !== 'plan' || to.by !== 'plan')
    .map(({ name }) => name);
  if (names.length === 0) return null;
  return <p>{listWords(names)}: told from A and B, so measure anew from where they will stand.</p>;
}

const planar = ({ x, y }: StakeChoice['a']) => ({ right: x, front: y });
