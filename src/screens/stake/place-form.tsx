import { useState } from 'preact/hooks';
import type { PlanPlace } from '../../job/entry-schema.ts';
import type { Length } from '../../job/length.ts';
import { placeOf } from '../../plan/index.ts';
import { compareStakes, judgeStakes, type StakeChoice } from '../../stakeout/index.ts';
import { Button, ChoiceField, LengthField, Problem, PullRow } from '../../ui/index.ts';
import type { Units } from '../../units/index.ts';
import { HELD } from '../hold-choice.tsx';
import { useJobBook } from '../job-book.ts';
import { MovedWarning } from './moved-warning.tsx';
import { PlacePreview } from './place-preview.tsx';
import { signed, unsigned } from './place-words.ts';
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

/** A signed length in the making: a size, and which way it counts. */
interface Part {
  readonly size: Length | null;
  readonly negative: boolean;
}
type Parts = Record<'aRight' | 'aFront' | 'bRight' | 'bFront', Part>;

/** The user says where A and B are, as lengths from the plan's centre; judged while they are typed. */
export function PlaceForm({ best, onUse, onBack }: PlaceFormProps) {
  const { situation } = useJobBook();
  const { plan, holes, site } = situation;
  const [parts, setParts] = useState<Parts>(() => startParts(site));
  const [problem, setProblem] = useState<string | null>(null);
  if (!plan) return null;
  const places = placesOf(parts);
  const choice =
    places && judgeStakes(placeOf(places.a), placeOf(places.b), holes, plan.instruments, plan.units);
  const use = () => {
    if (!places) return setProblem(missing(parts));
    setProblem(null);
    void onUse(places);
  };
  const put = (name: keyof Parts) => (part: Part) => setParts((was) => ({ ...was, [name]: part }));
  return (
    <StakePage
      actions={
        <>
          {problem && <Problem text={problem} />}
          {onBack && <Button onPress={onBack}>Back</Button>}
          <Button kind="main" onPress={use}>
            Use these places
          </Button>
        </>
      }
    >
      <h2>Where A and B are, measured from the plan’s centre</h2>
      {site && <MovedWarning />}
      <PartFields stake="A" way="sideways" units={plan.units} part={parts.aRight} onPart={put('aRight')} />
      <PartFields stake="A" way="lengthways" units={plan.units} part={parts.aFront} onPart={put('aFront')} />
      <PartFields stake="B" way="sideways" units={plan.units} part={parts.bRight} onPart={put('bRight')} />
      <PartFields stake="B" way="lengthways" units={plan.units} part={parts.bFront} onPart={put('bFront')} />
      {choice && (
        <section aria-label="What this choice gives">
          <PullRow live from="from A" to="to B" held={HELD.level} m={choice.baseline} units={plan.units} />
          <PlacePreview choice={choice} />
          <p>{best && compareStakes(choice, best, plan.units)?.text}</p>
        </section>
      )}
    </StakePage>
  );
}

const WAYS = {
  sideways: { size: 'to the side of the centre', positive: 'right', negative: 'left' },
  lengthways: { size: 'before or behind the centre', positive: 'in front', negative: 'behind' },
} as const;
type Way = keyof typeof WAYS;

interface PartFieldsProps {
  readonly stake: 'A' | 'B';
  readonly way: Way;
  readonly units: Units;
  readonly part: Part;
  readonly onPart: (part: Part) => void;
}

/** A length, and which way it counts as you face the plan's front: nobody has to think of a sign. */
function PartFields({ stake, way, units, part, onPart }: PartFieldsProps) {
  const words = WAYS[way];
  const choices = [
    { value: 'negative', label: words.negative },
    { value: 'positive', label: words.positive },
  ] as const;
  return (
    <div class="field">
      <LengthField
        label={`${stake}: how far ${words.size}`}
        value={part.size}
        units={units}
        bounds={{ min: 0 }}
        onChange={(size) => onPart({ ...part, size })}
      />
      <ChoiceField
        label={`${stake}: which way, as you face the plan’s front`}
        value={part.negative ? 'negative' : 'positive'}
        choices={choices}
        onChange={(value) => onPart({ ...part, negative: value === 'negative' })}
      />
    </div>
  );
}

/** As A and B are placed now; before that A to the left and B to the right, both behind. */
function startParts(site: Places | null): Parts {
  const part = (length: Length | undefined, negative: boolean): Part =>
    length ? unsigned(length) : { size: null, negative };
  return {
    aRight: part(site?.a.right, true),
    aFront: part(site?.a.front, true),
    bRight: part(site?.b.right, false),
    bFront: part(site?.b.front, true),
  };
}

function placesOf({ aRight, aFront, bRight, bFront }: Parts): Places | null {
  const full = ({ size, negative }: Part) => size && signed(size, negative);
  const [ax, ay, bx, by] = [full(aRight), full(aFront), full(bRight), full(bFront)];
  return ax && ay && bx && by ? { a: { right: ax, front: ay }, b: { right: bx, front: by } } : null;
}

const FIELD_NAMES: Record<keyof Parts, string> = {
  aRight: `A: how far ${WAYS.sideways.size}`,
  aFront: `A: how far ${WAYS.lengthways.size}`,
  bRight: `B: how far ${WAYS.sideways.size}`,
  bFront: `B: how far ${WAYS.lengthways.size}`,
};

function missing(parts: Parts): string {
  const names = (Object.keys(FIELD_NAMES) as (keyof Parts)[]).filter((name) => parts[name].size === null);
  return `${names.map((name) => FIELD_NAMES[name])[0]}: it is empty; type a length, 0 if it lies on the line.`;
}
