import { useState } from 'preact/hooks';
import type { FRONT_WAYS } from '../../../job/entry-schema.ts';
import type { Length } from '../../../job/length.ts';
import { type LaidOnStakes, layOnStakes } from '../../../plan/index.ts';
import { Button, type Choice, ChoiceField, LengthField, Problem, Sheet } from '../../../ui/index.ts';
import { ok, type Result, refuse } from '../../../units/index.ts';
import { useJobBook } from '../../job-book.ts';
import { MovedWarning } from '../moved-warning.tsx';
import { GroundPlaceFields } from './ground-place-fields.tsx';
import { LayPreview } from './lay-preview.tsx';
import type { LaySheetProps } from './lay-props.ts';
import { emptyPlace, type PlaceDraft, readFromStakes } from './place-draft.ts';
import { useLay } from './use-lay.ts';

type FrontWay = (typeof FRONT_WAYS)[number];

interface Draft {
  readonly baseline: Length | null;
  readonly centre: PlaceDraft;
  readonly front: FrontWay | 'place' | null;
  readonly before: PlaceDraft;
}

const START: Draft = {
  baseline: null,
  centre: emptyPlace('pulls'),
  front: null,
  before: emptyPlace('pulls'),
};

const FRONT_LABEL = 'The plan’s front looks, as you walk from A to B';
const FRONT_CHOICES: readonly Choice<FrontWay | 'place'>[] = [
  { value: 'left', label: 'to the left' },
  { value: 'right', label: 'to the right' },
  { value: 'A to B', label: 'on, from A to B' },
  { value: 'B to A', label: 'back, from B to A' },
  { value: 'place', label: 'toward a peg or mark before it' },
];

/** Two points that are there, such as the corners of a house, and where the centre and the front go. */
export function OnStakesSheet({ onClose, onLaid }: LaySheetProps) {
  const { situation } = useJobBook();
  const { plan, site } = situation;
  const { failed, lay } = useLay();
  const [draft, setDraft] = useState(START);
  const [asked, setAsked] = useState(false);
  if (!plan) return null;
  const edit = (change: (was: Draft) => Draft) => {
    setAsked(false);
    setDraft(change);
  };
  const read = readDraft(draft);
  const on = read.ok ? layOnStakes(read.value, plan.instruments) : null;
  const use = async () => {
    setAsked(true);
    if (read.ok && on?.ok && (await lay(read.value, on.value))) onLaid();
  };
  return (
    <Sheet
      title="Two points are there"
      onClose={onClose}
      actions={
        <>
          {asked && !read.ok && <Problem text={read.problem.text} />}
          {failed && <Problem text="Places of A and B: not all saved; free some space, then tap again." />}
          <Button kind="main" onPress={() => void use()}>
            Lay the plan on them
          </Button>
        </>
      }
    >
      {site && <MovedWarning />}
      <p>
        Call one of them A and the other B: two corners of a house, two stakes, two nails in something firm.
        All lengths level, to the same point each time.
      </p>
      <OnStakesFields draft={draft} edit={edit} />
      {on && !on.ok && <Problem text={on.problem.text} />}
      {on?.ok && <LayPreview on={on.value} />}
    </Sheet>
  );
}

interface OnStakesFieldsProps {
  readonly draft: Draft;
  readonly edit: (change: (was: Draft) => Draft) => void;
}

function OnStakesFields({ draft, edit }: OnStakesFieldsProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const put = (change: Partial<Draft>) => edit((was) => ({ ...was, ...change }));
  const putPlace = (which: 'centre' | 'before') => (change: Partial<PlaceDraft>) =>
    edit((was) => ({ ...was, [which]: { ...was[which], ...change } }));
  return (
    <>
      <LengthField
        label="A to B"
        value={draft.baseline}
        units={plan.units}
        bounds={{ min: 0 }}
        onChange={(baseline) => put({ baseline })}
      />
      <GroundPlaceFields
        name="Centre"
        units={plan.units}
        tellings={['pulls', 'offset']}
        draft={draft.centre}
        onChange={putPlace('centre')}
      />
      <ChoiceField
        label={FRONT_LABEL}
        value={draft.front}
        choices={FRONT_CHOICES}
        onChange={(front) => put({ front })}
      />
      {draft.front === 'place' && (
        <GroundPlaceFields
          name="Front"
          units={plan.units}
          tellings={['pulls', 'offset']}
          draft={draft.before}
          onChange={putPlace('before')}
        />
      )}
    </>
  );
}

function readDraft({ baseline, centre, front, before }: Draft): Result<LaidOnStakes> {
  if (!baseline) return refuse('A to B', 'A to B: it is empty; pull a tape between the two, and type it.');
  const at = readFromStakes('Centre', centre);
  if (!at.ok) return at;
  if (front === null) return refuse(FRONT_LABEL, `${FRONT_LABEL}: nothing is chosen; choose one.`);
  if (front !== 'place')
    return ok({ on: 'stakes', baseline, centre: at.value, front: { by: 'way', way: front } });
  const place = readFromStakes('Front', before);
  return place.ok ? ok({ on: 'stakes', baseline, centre: at.value, front: place.value }) : place;
}
