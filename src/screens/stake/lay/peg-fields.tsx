import { ChoiceField, TextField } from '../../../ui/index.ts';
import { useJobBook } from '../../job-book.ts';
import { GroundPlaceFields } from './ground-place-fields.tsx';
import { holeLabel, type Peg } from './on-pegs-draft.ts';
import type { PlaceDraft } from './place-draft.ts';

export interface PegFieldsProps {
  readonly name: string;
  readonly peg: Peg;
  readonly onHole: (hole: string) => void;
  readonly onPlace: (change: Partial<PlaceDraft>) => void;
}

/** Which hole a stake is of, and the two tapes to it. */
export function PegFields({ name, peg, onHole, onPlace }: PegFieldsProps) {
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
