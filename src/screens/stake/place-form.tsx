import { useState } from 'preact/hooks';
import type { PlanPlace } from '../../job/place-schema.ts';
import { groundLinesOf } from '../../judge/situation.ts';
import { layPlan, placeOf } from '../../plan/index.ts';
import { compareStakes, judgeStakes, type StakeChoice } from '../../stakeout/index.ts';
import { Button, Problem, PullRow } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { Units } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { levelTape } from '../rise-words.ts';
import { MovedWarning } from './moved-warning.tsx';
import { priceToAsk } from './own-price.ts';
import { PlaceFields, type PlaceParts, placeIn, placeMissing, startPlace } from './place-fields.tsx';
import { PlacePreview } from './place-preview.tsx';
import { isBegun } from './present.ts';
import { StakePage } from './stake-page.tsx';

interface Places {
  readonly a: PlanPlace;
  readonly b: PlanPlace;
}

export interface PlaceFormProps {
  /** The tool's choice, to be held against the user's own. */
  readonly best: StakeChoice | null;
  readonly onUse: (places: Places) => Promise<void>;
  readonly onBack: (() => void) | undefined;
}

type Parts = Record<'a' | 'b', PlaceParts>;

/** The user says where A and B are, as lengths from the plan's centre; judged while they are typed. */
export function PlaceForm({ best, onUse, onBack }: PlaceFormProps) {
  const { situation } = useJobBook();
  const { plan, holes, site } = situation;
  const [parts, setParts] = useState<Parts>(() => ({ a: startPlace(site?.a), b: startPlace(site?.b) }));
  // What the last tap was answered with; it goes away with the next change.
  const [told, setTold] = useState<string | null>(null);
  if (!plan) return null;
  const [a, b] = [placeIn(parts.a), placeIn(parts.b)];
  const places = a && b ? { a, b } : null;
  const choice =
    places &&
    judgeStakes(
      placeOf(places.a),
      placeOf(places.b),
      holes,
      plan.instruments,
      plan.units,
      groundLinesOf(situation).lines,
    );
  const price = choice && priceToAsk(choice, best, plan.units);
  const use = () => {
    if (!places) return setTold(missing(parts));
    const laid = layPlan(places, []);
    if (!laid.ok) return setTold(laid.problem.text);
    if (price !== null && told !== price) return setTold(price);
    setTold(null);
    void onUse(places);
  };
  const put = (stake: keyof Parts) => (place: PlaceParts) => {
    setTold(null);
    setParts((was) => ({ ...was, [stake]: place }));
  };
  return (
    <StakePage
      actions={
        <>
          {told !== null && <Problem text={told} />}
          {onBack && <Button onPress={onBack}>Back</Button>}
          <Button kind="main" onPress={use}>
            Use these places
          </Button>
        </>
      }
    >
      <h2>Where A and B are, measured from the plan’s centre</h2>
      {isBegun(situation.entries) && <MovedWarning />}
      <PlaceFields name="A" units={plan.units} parts={parts.a} onParts={put('a')} />
      <PlaceFields name="B" units={plan.units} parts={parts.b} onParts={put('b')} />
      {choice && (
        <section aria-label="What this choice gives">
          <PullRow
            live
            from="from A"
            to="to B"
            {...levelTape(situation, choice.baseline)}
            units={plan.units}
          />
          {best && <OwnCost own={choice} best={best} units={plan.units} />}
          <PlacePreview choice={choice} />
        </section>
      )}
    </StakePage>
  );
}

/** What the user's own choice costs against the best, first of all that is said of it. */
function OwnCost({ own, best, units }: { own: StakeChoice; best: StakeChoice; units: Units }) {
  const cost = compareStakes(own, best, units);
  return cost && <p>{unbroken(`What your own choice costs: ${cost.text}`)}</p>;
}

/** The first thing that is not filled in. */
const missing = ({ a, b }: Parts): string => placeMissing('A', a) || placeMissing('B', b);
