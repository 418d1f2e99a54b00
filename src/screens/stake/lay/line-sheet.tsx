import { useState } from 'preact/hooks';
import type { GroundLine } from '../../../job/place-schema.ts';
import type { LaidLine, StandingStakes } from '../../../plan/index.ts';
import {
  BoxesContext,
  Button,
  type Choice,
  ChoiceField,
  LengthField,
  PlanDrawing,
  Problem,
  Sheet,
  TextField,
} from '../../../ui/index.ts';
import { drawnLine } from '../../drawn-site.ts';
import { useJobBook } from '../../job-book.ts';
import { TapeButton, useHasTapes } from '../../tape-choice.tsx';
import { TapeSheet } from '../../tape-sheet.tsx';
import { drawnStakes } from './drawn-stakes.ts';
import { GroundPlaceFields } from './ground-place-fields.tsx';
import {
  KEEP_LABEL,
  KIND_LABEL,
  type LineDraft,
  laidDraft,
  NAME_LABEL,
  POINTS,
  readLine,
  sidesOf,
  startLine,
  withKind,
} from './line-draft.ts';
import { lineThere } from './read-on-tape.ts';
import { type Held, useLayDraft } from './use-lay-draft.ts';

export interface LineSheetProps {
  /** Null to add one. */
  readonly line: GroundLine | null;
  /** Names of the others. */
  readonly taken: readonly string[];
  readonly stakes: StandingStakes | null;
  /** What was typed of it, held above this sheet. */
  readonly held: Held<LineDraft>;
  /** Resolves to true once it is on disk; null removes the line. */
  readonly onSave: (line: GroundLine | null) => Promise<boolean>;
  readonly onClose: () => void;
}

const KINDS: readonly Choice<GroundLine['kind']>[] = [
  { value: 'boundary', label: 'Boundary', hint: 'Runs on beyond its two points.' },
  { value: 'house', label: 'Wall of a house', hint: 'Ends at its two points; no tape goes through.' },
  { value: 'other', label: 'Another line', hint: 'Such as the edge of a slope.' },
];

/** One line on the ground: what it is, where it runs, what must be kept from it, where no stake can stand. */
export function LineSheet({ line, taken, stakes, held: kept, onSave, onClose }: LineSheetProps) {
  const { situation } = useJobBook();
  const { holes, inHand } = situation;
  const held = useLayDraft(kept, () => startLine(line));
  const [choosing, setChoosing] = useState(false);
  const hasTapes = useHasTapes();
  const { boxes, draft } = held;
  const finish = async (of: GroundLine | null) => {
    if (await onSave(of)) onClose();
    else held.tell('The line: not saved; free some space, then tap again.');
  };
  const save = () => {
    const typed = held.take();
    if (!typed) return;
    const there = lineThere(inHand, typed, line);
    const read = readLine(there, taken);
    if (!read.ok) return held.tell(read.problem.text);
    const laid = laidDraft(there, holes, stakes);
    if (laid && !laid.ok) return held.tell(laid.problem.text);
    void finish(read.value);
  };
  /** What stands in the boxes is kept, as far as it is any good. */
  const leave = (go: () => void) => () => {
    boxes.commit();
    go();
  };
  if (choosing) return <TapeSheet onClose={() => setChoosing(false)} />;
  const taped = draft.from.by !== 'plan' || draft.to.by !== 'plan';
  return (
    <BoxesContext.Provider value={boxes.scope}>
      <Sheet
        title={line ? line.name : 'Add a line'}
        onClose={leave(onClose)}
        actions={
          <LineActions line={line} told={held.told} onSave={save} onRemove={() => void finish(null)} />
        }
      >
        {hasTapes && taped && <TapeButton onPress={leave(() => setChoosing(true))} />}
        <LineFields
          draft={draft}
          laid={laidDraft(lineThere(inHand, draft, line), holes, stakes)}
          edit={held.edit}
          taken={taken}
          stakes={stakes}
        />
      </Sheet>
    </BoxesContext.Provider>
  );
}

interface LineActionsProps {
  readonly line: GroundLine | null;
  readonly told: string | null;
  readonly onSave: () => void;
  readonly onRemove: () => void;
}

function LineActions({ line, told, onSave, onRemove }: LineActionsProps) {
  return (
    <>
      {told !== null && <Problem text={told} />}
      {line && (
        <Button kind="danger" onPress={onRemove}>
          Remove {line.name}
        </Button>
      )}
      <Button kind="main" onPress={onSave}>
        {line ? 'Change it' : 'Add it'}
      </Button>
    </>
  );
}

interface LineFieldsProps extends Pick<LineSheetProps, 'taken' | 'stakes'> {
  readonly draft: LineDraft;
  readonly laid: ReturnType<typeof laidDraft>;
  /** From the draft as it is by then: two fields may be left in one frame. */
  readonly edit: (change: (was: LineDraft) => LineDraft) => void;
}

function LineFields({ draft, laid, edit, taken, stakes }: LineFieldsProps) {
  const { plan } = useJobBook().situation;
  if (!plan) return null;
  const put = (change: Partial<LineDraft>) => edit((was) => ({ ...was, ...change }));
  const tellings = stakes ? (['plan', 'pulls', 'offset'] as const) : (['plan'] as const);
  return (
    <>
      <ChoiceField
        label={KIND_LABEL}
        value={draft.kind}
        choices={KINDS}
        onChange={(kind) => edit((was) => withKind(was, kind, taken))}
      />
      <TextField label={NAME_LABEL} value={draft.name} maxLength={24} onChange={(name) => put({ name })} />
      {(['from', 'to'] as const).map((end) => (
        <GroundPlaceFields
          key={end}
          name={POINTS[end]}
          units={plan.units}
          tellings={tellings}
          draft={draft[end]}
          onChange={(change) => edit((was) => ({ ...was, [end]: { ...was[end], ...change } }))}
        />
      ))}
      {laid && !laid.ok && <Problem text={laid.problem.text} />}
      {laid?.ok && <Sides draft={draft} laid={laid.value} put={put} />}
      <KeepFields draft={draft} put={put} />
    </>
  );
}

interface PutProps {
  readonly draft: LineDraft;
  readonly put: (change: Partial<LineDraft>) => void;
}

function KeepFields({ draft, put }: PutProps) {
  const { situation } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  return (
    <>
      <ChoiceField
        label="Posts and the deck’s edge"
        value={draft.asksKeep ? 'keep' : 'free'}
        choices={[
          { value: 'free', label: 'no distance to keep' },
          { value: 'keep', label: 'must keep a distance' },
        ]}
        onChange={(value) => put({ asksKeep: value === 'keep' })}
      />
      {draft.asksKeep && (
        <LengthField
          label={KEEP_LABEL}
          value={draft.keep}
          units={plan.units}
          bounds={{ min: 0 }}
          onChange={(keep) => put({ keep })}
        />
      )}
    </>
  );
}

interface SidesProps extends PutProps {
  readonly laid: LaidLine;
}

/** Which side is barred, with the line drawn among the holes: strokes lean off it on that side. */
function Sides({ draft, laid, put }: SidesProps) {
  const { situation } = useJobBook();
  const { plan, holes } = situation;
  if (!plan || draft.kind === null) return null;
  const sides = sidesOf(laid);
  const house = draft.kind === 'house';
  return (
    <>
      <PlanDrawing
        title={`${plan.name}, ${laid.name}`}
        units={plan.units}
        holes={holes.map((hole) => ({ ...hole, state: 'planned' as const }))}
        front={Math.PI / 2}
        lines={[drawnLine(laid)]}
        {...drawnStakes(situation)}
      />
      <ChoiceField
        label={
          house
            ? 'Where the house is, as you face the plan’s front'
            : 'Where no stake can stand, as you face the plan’s front'
        }
        value={draft.noStakes === 'unsaid' ? null : draft.noStakes}
        choices={[
          { value: 'left', label: sides.left },
          { value: 'right', label: sides.right },
          ...(house ? [] : [{ value: 'none' as const, label: 'stakes can stand on both sides' }]),
        ]}
        onChange={(noStakes: LineDraft['noStakes']) => put({ noStakes })}
      />
    </>
  );
}
