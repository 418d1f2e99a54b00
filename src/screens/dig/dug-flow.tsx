import { useRef, useState } from 'preact/hooks';
import { type DepthMark, OBSTRUCTIONS } from '../../job/entry-schema.ts';
import { type Length, lengthWords } from '../../job/length.ts';
import { isOther } from '../../judge/room.ts';
import { type JobView, middleOf, viewOf } from '../../judge/view.ts';
import { Button, ChoiceField, Keypad, Problem, Sheet, TextField } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatLength, type Units } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';
import { useLog } from '../use-log.ts';
import { depthDoubt, OBSTRUCTION_NAMES, type Obstruction, widthDoubt } from './dig-words.ts';
import { DUG_BOUNDS } from './dug-bounds.ts';
import { type MarkAsked, NO_MARK } from './mark-asked.ts';
import type { MarkFlowProps } from './mark-flow.tsx';

export interface DugFlowProps {
  readonly hole: string;
  /** Depth to dig to, as the card says it, metres; null while that is not known. */
  readonly aim: number | null;
  readonly holeDiameter: number;
  /** It was shaved: what was measured of its middle before is of another hole. */
  readonly shaved: boolean;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** Loaded once it is wanted: nearly all depths are read from the lip. */
const MarkFlow = lazily<MarkFlowProps>(
  part(async () => (await import('./mark-flow.tsx')).MarkFlow),
  ({ onClose }) => <Opening title="Depth from a mark" onClose={onClose} />,
);

const hasMiddle = (view: JobView, hole: string): boolean => view.book.middles(hole).length > 0;

/** As the log's schema allows. */
const MOST_NOTE = 500;

/** A depth from the downhill lip, and what it was read from where that was not the lip itself. */
export interface ReadDepth {
  readonly depth: Length;
  readonly mark?: DepthMark;
}

/** Takes an as-dug depth, a width, and what was met, and logs them as one entry. */
export function DugFlow({ hole, aim, holeDiameter, shaved, onClose }: DugFlowProps) {
  const { situation } = useJobBook();
  const [depth, setDepth] = useState<ReadDepth | null>(null);
  const [byMark, setByMark] = useState(false);
  const [width, setWidth] = useState<Length | null>(null);
  const [drafts, setDrafts] = useState({ depth: '', width: '' });
  const [mark, setMark] = useState<MarkAsked>(NO_MARK);
  const { plan } = situation;
  if (!plan) return null;
  const { units } = plan;
  const askedBack = (m: number) => depthDoubt(m, aim, units);
  if (!depth && byMark)
    return (
      <MarkFlow
        hole={hole}
        check={askedBack}
        asked={mark}
        onAsked={(part) => setMark((before) => ({ ...before, ...part }))}
        onDone={setDepth}
        onClose={() => setByMark(false)}
      />
    );
  if (!depth)
    return (
      <Keypad
        key="depth"
        title={`Depth of hole ${hole}`}
        units={units}
        hint={`From the downhill lip, the lowest ground at its edge, to the clean bottom.${asked(aim, units)}`}
        bounds={DUG_BOUNDS}
        check={askedBack}
        draft={drafts.depth}
        onDraft={(text) => setDrafts({ ...drafts, depth: text })}
        onDone={(read) => setDepth({ depth: read })}
        onClose={onClose}
      >
        <Button onPress={() => setByMark(true)}>From another mark than the lip</Button>
      </Keypad>
    );
  if (!width)
    return (
      <Keypad
        key="width"
        title={`Width of hole ${hole}`}
        units={units}
        hint="The least width at its foot."
        bounds={DUG_BOUNDS}
        check={(m) => widthDoubt(m, holeDiameter, units)}
        draft={drafts.width}
        onDraft={(text) => setDrafts({ ...drafts, width: text })}
        onDone={setWidth}
        onClose={() => setDepth(null)}
      />
    );
  return <MetSheet {...{ hole, depth, width, shaved, onClose }} onBack={() => setWidth(null)} />;
}

const asked = (aim: number | null, units: Units): string =>
  aim === null ? '' : ` Dig to ${formatLength(aim, units)}.`;

interface MetSheetProps {
  readonly hole: string;
  readonly depth: ReadDepth;
  readonly width: Length;
  readonly shaved: boolean;
  readonly onBack: () => void;
  readonly onClose: () => void;
}

const CHOICES = OBSTRUCTIONS.map((value) => ({ value, label: OBSTRUCTION_NAMES[value] }));

/** What was met in the hole: it has to be said, nothing too. */
function MetSheet({ hole, depth, width, shaved, onBack, onClose }: MetSheetProps) {
  const { save, situation } = useJobBook();
  const { failed, log } = useLog();
  const [met, setMet] = useState<Obstruction | null>(null);
  const [note, setNote] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const movedOnDisk = useRef(false);
  const logDug = async () => {
    if (met === null) return setProblem('Met in the hole: nothing is chosen; choose Nothing if it is clear.');
    setProblem(null);
    const words = note === '' ? {} : { note };
    const view = viewOf(situation);
    const another = view !== null && (shaved || isOther(view, hole, width.m)) && hasMiddle(view, hole);
    // What was pulled to its middle before counts no more. First, so that with a full disk it is unmeasured and never taken for in.
    if (another && !movedOnDisk.current)
      movedOnDisk.current = await log({ kind: 'stand', thing: middleOf(hole), event: 'moved' });
    if (another && !movedOnDisk.current) return;
    if (await log({ kind: 'dug', hole, ...depth, width, obstruction: met, ...words })) onClose();
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
      <p>{unbroken(`${lengthWords(depth.depth)} deep, ${lengthWords(width)} wide.`)}</p>
      <ChoiceField label="Met in the hole" value={met} choices={CHOICES} onChange={setMet} />
      <TextField label="Note" value={note} onChange={setNote} maxLength={MOST_NOTE} lines={2} />
    </Sheet>
  );
}
