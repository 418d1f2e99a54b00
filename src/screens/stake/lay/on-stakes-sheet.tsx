import { layOnStakes } from '../../../plan/index.ts';
import { type Choice, ChoiceField, LengthField, Problem } from '../../../ui/index.ts';
import { useJobBook } from '../../job-book.ts';
import { GroundPlaceFields } from './ground-place-fields.tsx';
import { LayPreview } from './lay-preview.tsx';
import { priceOf } from './lay-price.ts';
import type { LaySheetProps } from './lay-props.ts';
import { LaySheet } from './lay-sheet.tsx';
import { FRONT_LABEL, type FrontWay, readStakes, type StakesDraft, startStakes } from './on-stakes-draft.ts';
import type { PlaceDraft } from './place-draft.ts';
import { stakesThere } from './read-on-tape.ts';
import { checkLaid, useLay } from './use-lay.ts';
import { useLayDraft } from './use-lay-draft.ts';

const FRONT_CHOICES: readonly Choice<FrontWay | 'place'>[] = [
  { value: 'left', label: 'to the left' },
  { value: 'right', label: 'to the right' },
  { value: 'A to B', label: 'on, from A to B' },
  { value: 'B to A', label: 'back, from B to A' },
  { value: 'place', label: 'toward a stake or mark before it' },
];

/** Two points that are there, such as the corners of a house, and where the centre and the front go. */
export function OnStakesSheet({ drafts, onClose, onLaid }: LaySheetProps) {
  const { situation } = useJobBook();
  const { plan, inHand } = situation;
  const { failed, lay } = useLay();
  const held = useLayDraft(drafts.stakes, startStakes);
  if (!plan) return null;
  const layOn = (draft: StakesDraft) => {
    const read = readStakes(draft);
    return read.ok
      ? { read: read.value, on: checkLaid(layOnStakes(stakesThere(inHand, read.value), plan.instruments)) }
      : read;
  };
  const use = async () => {
    const draft = held.take();
    if (!draft) return;
    const laid = layOn(draft);
    if (!('on' in laid)) return held.tell(laid.problem.text);
    if (!laid.on.ok) return held.tell(laid.on.problem.text);
    const price = priceOf(situation, laid.on.value);
    if (price !== null && held.told !== price) return held.tell(price);
    if (await lay(laid.read, laid.on.value)) onLaid();
  };
  const shown = layOn(held.draft);
  const on = 'on' in shown ? shown.on : null;
  return (
    <LaySheet
      title="Two points are there"
      held={held}
      failed={failed}
      use="Lay the plan on them"
      onUse={() => void use()}
      onClose={onClose}
    >
      <p>
        Call one of them A and the other B: two corners of a house, two stakes, two nails in something firm.
        All lengths level, to the same point each time.
      </p>
      <OnStakesFields draft={held.draft} edit={held.edit} />
      {on && !on.ok && <Problem text={on.problem.text} />}
      {on?.ok && <LayPreview on={on.value} />}
    </LaySheet>
  );
}

interface OnStakesFieldsProps {
  readonly draft: StakesDraft;
  readonly edit: (change: (was: StakesDraft) => StakesDraft) => void;
}

function OnStakesFields({ draft, edit }: OnStakesFieldsProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const put = (change: Partial<StakesDraft>) => edit((was) => ({ ...was, ...change }));
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
