import { useState } from 'preact/hooks';
import { OBSTRUCTIONS } from '../../job/entry-schema.ts';
import { type Length, lengthWords } from '../../job/length.ts';
import { Button, ChoiceField, Keypad, Problem, Sheet, TextField } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatLength, type Units } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { useLog } from '../use-log.ts';
import { depthDoubt, OBSTRUCTION_NAMES, type Obstruction, widthDoubt } from './dig-words.ts';

export interface DugFlowProps {
  readonly hole: string;
  /** What was asked for, metres. */
  readonly requiredDepth: number | null;
  readonly holeDiameter: number;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** Deeper or wider than this no hole for a post is dug by hand or auger: a slip, metres. */
const MOST_DUG_M = 5;
const BOUNDS = { max: MOST_DUG_M, maxName: 'any hole for a post' };
/** As the log's schema allows. */
const MOST_NOTE = 500;

/** Takes an as-dug depth, a width, and what was met, and logs them as one entry. */
export function DugFlow({ hole, requiredDepth, holeDiameter, onClose }: DugFlowProps) {
  const { situation } = useJobBook();
  const [depth, setDepth] = useState<Length | null>(null);
  const [width, setWidth] = useState<Length | null>(null);
  const [drafts, setDrafts] = useState({ depth: '', width: '' });
  const { plan } = situation;
  if (!plan) return null;
  const { units } = plan;
  if (!depth)
    return (
      <Keypad
        key="depth"
        title={`Depth of hole ${hole}`}
        units={units}
        hint={`From the downhill lip, the lowest ground at its edge, to the clean bottom.${asked(requiredDepth, units)}`}
        bounds={BOUNDS}
        check={(m) => depthDoubt(m, requiredDepth, units)}
        draft={drafts.depth}
        onDraft={(text) => setDrafts({ ...drafts, depth: text })}
        onDone={setDepth}
        onClose={onClose}
      />
    );
  if (!width)
    return (
      <Keypad
        key="width"
        title={`Width of hole ${hole}`}
        units={units}
        hint="The least width at its foot."
        bounds={BOUNDS}
        check={(m) => widthDoubt(m, holeDiameter, units)}
        draft={drafts.width}
        onDraft={(text) => setDrafts({ ...drafts, width: text })}
        onDone={setWidth}
        onClose={() => setDepth(null)}
      />
    );
  return <MetSheet hole={hole} depth={depth} width={width} onBack={() => setWidth(null)} onClose={onClose} />;
}

const asked = (required: number | null, units: Units): string =>
  required === null ? '' : ` Asked for: ${formatLength(required, units)}.`;

interface MetSheetProps {
  readonly hole: string;
  readonly depth: Length;
  readonly width: Length;
  readonly onBack: () => void;
  readonly onClose: () => void;
}

const CHOICES = OBSTRUCTIONS.map((value) => ({ value, label: OBSTRUCTION_NAMES[value] }));

/** What was met in the hole: it has to be said, nothing too. */
function MetSheet({ hole, depth, width, onBack, onClose }: MetSheetProps) {
  const { save } = useJobBook();
  const { failed, log } = useLog();
  const [met, setMet] = useState<Obstruction | null>(null);
  const [note, setNote] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const logDug = async () => {
    if (met === null) return setProblem('Met in the hole: nothing is chosen; choose Nothing if it is clear.');
    setProblem(null);
    const words = note === '' ? {} : { note };
    if (await log({ kind: 'dug', hole, depth, width, obstruction: met, ...words })) onClose();
  };
  const trouble = problem ?? (failed && save.at === 'failed' ? save.text : null);
  return (
    <Sheet
      title={`Hole ${hole}: what was met`}
      onClose={onBack}
      actions={
        <Button kind="main" onPress={() => void logDug()}>
          Log it
        </Button>
      }
    >
      {trouble && <Problem text={trouble} />}
      <p>{unbroken(`${lengthWords(depth)} deep, ${lengthWords(width)} wide.`)}</p>
      <ChoiceField label="Met in the hole" value={met} choices={CHOICES} onChange={setMet} />
      <TextField label="Note" value={note} onChange={setNote} maxLength={MOST_NOTE} lines={2} />
    </Sheet>
  );
}
