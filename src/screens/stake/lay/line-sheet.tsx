import { useState } from 'preact/hooks';
import type { GroundLine } from '../../../job/place-schema.ts';
import type { LaidLine, StandingStakes } from '../../../plan/index.ts';
import {
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

export interface LineSheetProps {
  /** Null to add one. */
  readonly line: GroundLine | null;
  /** Names of the others. */
  readonly taken: readonly string[];
  readonly stakes: StandingStakes | null;
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
export function LineSheet({ line, taken, stakes, onSave, onClose }: LineSheetProps) {
  const { situation } = useJobBook();
  const { plan, holes } = situation;
  const [draft, setDraft] = useState<LineDraft>(() => startLine(line));
  const [told, setTold] = useState<string | null>(null);
  if (!plan) return null;
  const edit = (change: (was: LineDraft) => LineDraft) => {
    setTold(null);
    setDraft(change);
  };
  const laid = laidDraft(draft, holes, stakes);
  const finish = async (of: GroundLine | null) => {
    if (await onSave(of)) onClose();
    else setTold('The line: not saved; free some space, then tap again.');
  };
  const save = () => {
    const read = readLine(draft, taken);
    if (!read.ok) return setTold(read.problem.text);
    if (laid && !laid.ok) return setTold(laid.problem.text);
    void finish(read.value);
  };
  return (
    <Sheet
      title={line ? line.name : 'Add a line'}
      onClose={onClose}
      actions={
        <>
          {told && <Problem text={told} />}
          {line && (
            <Button kind="danger" onPress={() => void finish(null)}>
              Remove {line.name}
            </Button>
          )}
          <Button kind="main" onPress={save}>
            {line ? 'Change it' : 'Add it'}
          </Button>
        </>
      }
    >
      <LineFields draft={draft} edit={edit} taken={taken} stakes={stakes} />
    </Sheet>
  );
}

interface LineFieldsProps extends Pick<LineSheetProps, 'taken' | 'stakes'> {
  readonly draft: LineDraft;
  /** From the draft as it is by then: two fields may be left in one frame. */
  readonly edit: (change: (was: LineDraft) => LineDraft) => void;
}

function LineFields({ draft, edit, taken, stakes }: LineFieldsProps) {
  const { situation } = useJobBook();
  const { plan, holes } = situation;
  if (!plan) return null;
  const put = (change: Partial<LineDraft>) => edit((was) => ({ ...was, ...change }));
  const laid = laidDraft(draft, holes, stakes);
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
