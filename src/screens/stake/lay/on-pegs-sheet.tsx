import { useState } from 'preact/hooks';
import type { Length } from '../../../job/length.ts';
import { type LaidOnPegs, layOnPegs } from '../../../plan/index.ts';
import { closureOf } from '../../../stakeout/index.ts';
import { Button, ChoiceField, LengthField, Problem, Sheet, TextField } from '../../../ui/index.ts';
import { unbroken } from '../../../ui/unbroken.ts';
import { ok, type Result, refuse } from '../../../units/index.ts';
import { useJobBook } from '../../job-book.ts';
import { MovedWarning } from '../moved-warning.tsx';
import { GroundPlaceFields } from './ground-place-fields.tsx';
import { LayPreview } from './lay-preview.tsx';
import type { LaySheetProps } from './lay-props.ts';
import { emptyPlace, type PlaceDraft, readFromStakes } from './place-draft.ts';
import { useLay } from './use-lay.ts';

interface Peg {
  readonly hole: string | null;
  readonly at: PlaceDraft;
}

interface Draft {
  readonly baseline: Length | null;
  readonly first: Peg;
  readonly second: Peg;
}

const PEG: Peg = { hole: null, at: emptyPlace('pulls') };
const NAMES = { first: 'First stake', second: 'Second stake' } as const;
type Which = keyof typeof NAMES;

/** Two stakes that stand where two of the holes are to be: A and B then follow from five tapes. */
export function OnPegsSheet({ onClose, onLaid }: LaySheetProps) {
  const { situation } = useJobBook();
  const { plan, holes, site } = situation;
  const { failed, lay } = useLay();
  const [draft, setDraft] = useState<Draft>({ baseline: null, first: PEG, second: PEG });
  const [asked, setAsked] = useState(false);
  if (!plan) return null;
  const put = (change: Partial<Draft>) => {
    setAsked(false);
    setDraft((was) => ({ ...was, ...change }));
  };
  const putPeg = (which: Which, change: (peg: Peg) => Peg) => {
    setAsked(false);
    setDraft((was) => ({ ...was, [which]: change(was[which]) }));
  };
  const read = readDraft(draft);
  const on = read.ok ? layOnPegs(read.value, holes, plan.instruments) : null;
  const closure = read.ok && on?.ok ? closureOf(read.value, on.value, plan.instruments, plan.units) : null;
  const use = async () => {
    setAsked(true);
    if (read.ok && on?.ok && (await lay(read.value, on.value))) onLaid();
  };
  return (
    <Sheet
      title="Two holes are staked"
      onClose={onClose}
      actions={
        <>
          {asked && !read.ok && <Problem text={read.problem.text} />}
          {failed && <Problem text="Places of A and B: not all saved; free some space, then tap again." />}
          <Button kind="main" onPress={() => void use()}>
            {closure?.closes === false ? 'Lay the plan on them as they are' : 'Lay the plan on them'}
          </Button>
        </>
      }
    >
      {site && <MovedWarning />}
      <p>
        Drive A and B where they see all of the plan, or choose two points that are there. Then five tapes,
        held level: A to B, and from both to the nails of the two stakes.
      </p>
      <LengthField
        label="A to B"
        value={draft.baseline}
        units={plan.units}
        bounds={{ min: 0 }}
        onChange={(baseline) => put({ baseline })}
      />
      {(['first', 'second'] as const).map((which) => (
        <PegFields
          key={which}
          name={NAMES[which]}
          peg={draft[which]}
          onHole={(hole) => putPeg(which, (peg) => ({ ...peg, hole }))}
          onPlace={(change) => putPeg(which, (peg) => ({ ...peg, at: { ...peg.at, ...change } }))}
        />
      ))}
      {on && !on.ok && <Problem text={on.problem.text} />}
      {closure && (closure.closes ? <p>{unbroken(closure.text)}</p> : <Problem text={closure.text} />)}
      {on?.ok && <LayPreview on={on.value} />}
    </Sheet>
  );
}

interface PegFieldsProps {
  readonly name: string;
  readonly peg: Peg;
  readonly onHole: (hole: string) => void;
  readonly onPlace: (change: Partial<PlaceDraft>) => void;
}

function PegFields({ name, peg, onHole, onPlace }: PegFieldsProps) {
  const { situation } = useJobBook();
  const { plan, holes } = situation;
  if (!plan) return null;
  return (
    <>
      <HoleField
        label={holeLabel(name)}
        hole={peg.hole}
        labels={holes.map(({ label }) => label)}
        onHole={onHole}
      />
      <GroundPlaceFields
        name={name}
        units={plan.units}
        tellings={['pulls']}
        draft={peg.at}
        onChange={onPlace}
      />
    </>
  );
}

/** So many holes are shown to choose from; of more, the label is typed. */
const MOST_SHOWN = 12;

interface HoleFieldProps {
  readonly label: string;
  readonly hole: string | null;
  readonly labels: readonly string[];
  readonly onHole: (hole: string) => void;
}

function HoleField({ label, hole, labels, onHole }: HoleFieldProps) {
  if (labels.length > MOST_SHOWN)
    return <TextField label={label} value={hole ?? ''} maxLength={12} onChange={onHole} />;
  return (
    <ChoiceField
      label={label}
      value={hole}
      choices={labels.map((each) => ({ value: each, label: each }))}
      onChange={onHole}
    />
  );
}

const holeLabel = (name: string) => `${name}: which hole it is of`;

function readDraft({ baseline, ...pegs }: Draft): Result<LaidOnPegs> {
  if (!baseline) return refuse('A to B', 'A to B: it is empty; pull a tape between the two, and type it.');
  const first = readPeg('first', pegs.first);
  if (!first.ok) return first;
  const second = readPeg('second', pegs.second);
  return second.ok ? ok({ on: 'pegs', baseline, pegs: [first.value, second.value] }) : second;
}

function readPeg(which: Which, { hole, at }: Peg): Result<LaidOnPegs['pegs'][number]> {
  const name = NAMES[which];
  if (hole === null) return refuse(holeLabel(name), `${holeLabel(name)}: nothing is chosen; choose a hole.`);
  const place = readFromStakes(name, at);
  if (!place.ok) return place;
  if (place.value.by !== 'pulls') return refuse(name, `${name}: tell it by two tapes.`);
  return ok({ hole, ...place.value });
}
