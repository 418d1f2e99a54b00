import { layOnPegs } from '../../../plan/index.ts';
import { closureOf } from '../../../stakeout/index.ts';
import { LengthField, Problem } from '../../../ui/index.ts';
import { unbroken } from '../../../ui/unbroken.ts';
import type { JobBook } from '../../job-book.ts';
import { useJobBook } from '../../job-book.ts';
import { LayPreview } from './lay-preview.tsx';
import { priceOf } from './lay-price.ts';
import type { LaySheetProps } from './lay-props.ts';
import { LaySheet } from './lay-sheet.tsx';
import { NAMES, type Peg, type PegsDraft, readPegs, startPegs, type Which } from './on-pegs-draft.ts';
import { PegFields } from './peg-fields.tsx';
import { pegsThere } from './read-on-tape.ts';
import { checkLaid, useLay } from './use-lay.ts';
import { useLayDraft } from './use-lay-draft.ts';

/** Two stakes that stand where two of the holes are to be: A and B then follow from five tapes. */
export function OnPegsSheet({ drafts, onClose, onLaid }: LaySheetProps) {
  const { situation } = useJobBook();
  const { failed, lay } = useLay();
  const held = useLayDraft(drafts.pegs, startPegs);
  const shown = layOn(situation, held.draft);
  const use = async () => {
    const draft = held.take();
    if (!draft) return;
    const laid = layOn(situation, draft);
    if (laid.told !== null) return held.tell(laid.told);
    // The button said nothing of it: a tape was typed since it was drawn.
    if (!laid.closure.closes && shown.closure?.closes !== false) return held.tell(laid.closure.text);
    const price = priceOf(situation, laid.on);
    if (price !== null && held.told !== price) return held.tell(price);
    if (await lay(laid.read, laid.on)) onLaid();
  };
  return (
    <LaySheet
      title="Two holes are staked"
      held={held}
      failed={failed}
      use={shown.closure?.closes === false ? 'Lay the plan on them as they are' : 'Lay the plan on them'}
      onUse={() => void use()}
      onClose={onClose}
    >
      <p>
        Drive A and B where they see all of the plan, or choose two points that are there. Then five tapes,
        held level: A to B, and from both to the nails of the two stakes.
      </p>
      <OnPegsFields draft={held.draft} edit={held.edit} />
      {shown.whole && shown.told !== null && <Problem text={shown.told} />}
      {shown.closure &&
        (shown.closure.closes ? (
          <p>{unbroken(shown.closure.text)}</p>
        ) : (
          <Problem text={shown.closure.text} />
        ))}
      {shown.on && <LayPreview on={shown.on} />}
    </LaySheet>
  );
}

/** The plan on these stakes, by what is there where the tape in hand read it, and how the five tapes close. */
function layOn({ plan, holes, inHand }: JobBook['situation'], draft: PegsDraft) {
  const read = readPegs(draft);
  const not = { on: null, closure: null };
  if (!read.ok) return { ...not, whole: false, told: read.problem.text };
  if (!plan) return { ...not, whole: false, told: 'There is no plan.' };
  const there = pegsThere(inHand, read.value);
  const on = checkLaid(layOnPegs(there, holes, plan.instruments));
  if (!on.ok) return { ...not, whole: true, told: on.problem.text };
  const closure = closureOf(there, on.value, plan.instruments, plan.units);
  return { whole: true, told: null, read: read.value, on: on.value, closure };
}

interface OnPegsFieldsProps {
  readonly draft: PegsDraft;
  readonly edit: (change: (was: PegsDraft) => PegsDraft) => void;
}

function OnPegsFields({ draft, edit }: OnPegsFieldsProps) {
  const { plan } = useJobBook().situation;
  if (!plan) return null;
  const putPeg = (which: Which, change: (peg: Peg) => Peg) =>
    edit((was) => ({ ...was, [which]: change(was[which]) }));
  return (
    <>
      <LengthField
        label="A to B"
        value={draft.baseline}
        units={plan.units}
        bounds={{ min: 0 }}
        onChange={(baseline) => edit((was) => ({ ...was, baseline }))}
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
    </>
  );
}
