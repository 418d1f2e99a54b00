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

/** A signed length in the making: a size, and which way it counts; null until the user has said so. */
interface Part {
  readonly size: Length | null;
  readonly negative: boolean | null;
}
type Parts = Record<'aRight' | 'aFront' | 'bRight' | 'bFront', Part>;

/** The user says where A and B are, as lengths from the plan's centre; judged while they are typed. */
export function PlaceForm({ best, onUse, onBack }: PlaceFormProps) {
  const { situation } = useJobBook();
  const { plan, holes, site } = situation;
  const [parts, setParts] = useState<Parts>(() => startParts(site));
  // Once asked for, what is missing is told as it stands: it goes away when it is filled in.
  const [asked, setAsked] = useState(false);
  if (!plan) return null;
  const places = placesOf(parts);
  const choice =
    places && judgeStakes(placeOf(places.a), placeOf(places.b), holes, plan.instruments, plan.units);
  const use = () => {
    setAsked(places === null);
    if (places) void onUse(places);
  };
  const put = (name: keyof Parts) => (change: Partial<Part>) => {
    setAsked(false);
    setParts((was) => ({ ...was, [name]: { ...was[name], ...change } }));
  };
  return (
    <StakePage
      actions={
        <>
          {asked && <Problem text={missing(parts)} />}
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
  sideways: {
    size: 'to the side of the centre',
    way: 'left or right',
    positive: 'right',
    negative: 'left',
  },
  lengthways: {
    size: 'before or behind the centre',
    way: 'in front or behind',
    positive: 'in front',
    negative: 'behind',
  },
} as const;
type Way = keyof typeof WAYS;

interface PartFieldsProps {
  readonly stake: 'A' | 'B';
  readonly way: Way;
  readonly units: Units;
  readonly part: Part;
  readonly onPart: (change: Partial<Part>) => void;
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
        label={sizeLabel(stake, way)}
        value={part.size}
        units={units}
        bounds={{ min: 0 }}
        onChange={(size) => onPart({ size })}
      />
      <ChoiceField
        label={wayLabel(stake, way)}
        value={part.negative === null ? null : part.negative ? 'negative' : 'positive'}
        choices={choices}
        onChange={(value) => onPart({ negative: value === 'negative' })}
      />
    </div>
  );
}

const sizeLabel = (stake: 'A' | 'B', way: Way): string => `${stake}: how far ${WAYS[way].size}`;
const wayLabel = (stake: 'A' | 'B', way: Way): string =>
  `${stake}: which way, ${WAYS[way].way}, as you face the plan’s front`;

/** As A and B are placed now; before that nothing: a side that nobody chose would turn the plan unseen. */
function startParts(site: Places | null): Parts {
  const part = (length: Length | undefined): Part =>
    length ? unsigned(length) : { size: null, negative: null };
  return {
    aRight: part(site?.a.right),
    aFront: part(site?.a.front),
    bRight: part(site?.b.right),
    bFront: part(site?.b.front),
  };
}

function placesOf({ aRight, aFront, bRight, bFront }: Parts): Places | null {
  const full = (part: Part) => (part.size && hasWay(part) ? signed(part.size, part.negative ?? false) : null);
  const [ax, ay, bx, by] = [full(aRight), full(aFront), full(bRight), full(bFront)];
  return ax && ay && bx && by ? { a: { right: ax, front: ay }, b: { right: bx, front: by } } : null;
}

/** Nothing lies neither way. */
const hasWay = ({ size, negative }: Part): boolean => negative !== null || size?.m === 0;

const FIELD_NAMES: Record<keyof Parts, readonly ['A' | 'B', Way]> = {
  aRight: ['A', 'sideways'],
  aFront: ['A', 'lengthways'],
  bRight: ['B', 'sideways'],
  bFront: ['B', 'lengthways'],
};

/** The first thing that is not filled in. */
function missing(parts: Parts): string {
  for (const name of Object.keys(FIELD_NAMES) as (keyof Parts)[]) {
    const [part, field] = [parts[name], FIELD_NAMES[name]];
    if (part.size === null)
      return `${sizeLabel(...field)}: it is empty; type a length, 0 if it lies on the line.`;
    if (!hasWay(part)) return `${wayLabel(...field)}: nothing is chosen; choose one.`;
  }
  return '';
}
