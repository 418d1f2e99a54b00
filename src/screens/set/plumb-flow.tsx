import { useState } from 'preact/hooks';
import type { EntryOf, Side } from '../../job/entry-schema.ts';
import { type Length, lengthWords, roundedLength } from '../../job/length.ts';
import { sideName, thingName, turningOf } from '../../job/words.ts';
import type { JobView } from '../../judge/view.ts';
import { Button, Keypad, Sheet } from '../../ui/index.ts';
import { useReading } from './use-reading.tsx';

type Leans = EntryOf<'plumb'>['body']['leans'];

export interface PlumbFlowProps {
  readonly view: JobView;
  readonly hole: string;
  readonly side: Side;
  /** Length of the level used last, or null before the first reading. */
  readonly lastOver: Length | null;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/**
 * Takes one plumb reading on one face: which way the top leans, the gap that brings the bubble to the middle, and over
 * what length of level. Logged as one entry. Back leads to the question before.
 */
export function PlumbFlow({ view, hole, side, lastOver, onClose }: PlumbFlowProps) {
  const { save, notSaved } = useReading(onClose);
  const [over, setOver] = useState<Length | null>(lastOver);
  const [otherLevel, setOtherLevel] = useState(false);
  const [leans, setLeans] = useState<'out' | 'in' | null>(null);
  const [gapDraft, setGapDraft] = useState('');
  const { units } = view.plan;
  const face = `the ${sideName(side, turningOf(view.plan, hole))} face of ${thingName({ kind: 'post', hole }, view.plan)}`;
  const log = (way: Leans, offset: Length, span: Length) =>
    save({ kind: 'plumb', hole, side, offset, over: span, leans: way });
  if (notSaved) return notSaved;
  if (over === null || otherLevel)
    return (
      <Keypad
        title="Length of the level"
        units={units}
        hint="The length along the post over which the gap is read: as a rule the whole level."
        bounds={LEVEL_LENGTHS}
        onDone={(length) => {
          setOver(length);
          setOtherLevel(false);
        }}
        onClose={over === null ? onClose : () => setOtherLevel(false)}
      />
    );
  if (leans === null)
    return (
      <WaySheet
        face={face}
        over={over}
        onOtherLevel={() => setOtherLevel(true)}
        onPlumb={() => void log('none', roundedLength(0, units), over)}
        onLeans={setLeans}
        onClose={onClose}
      />
    );
  return (
    <Keypad
      title={`Gap, ${face}`}
      units={units}
      hint={`Bubble in the middle: the gap between the level’s ${leans === 'out' ? 'lower' : 'upper'} end and the post, over ${lengthWords(over)}.`}
      bounds={{ max: over.m, maxName: 'the length of the level' }}
      draft={gapDraft}
      onDraft={setGapDraft}
      onDone={(gap) => log(leans, gap, over)}
      onClose={() => setLeans(null)}
    />
  );
}

/** Shorter than a torpedo level or longer than a plank level is a slip. */
const LEVEL_LENGTHS = { min: 0.15, max: 4, maxName: 'any level' };

interface WaySheetProps {
  readonly face: string;
  readonly over: Length;
  readonly onPlumb: () => void;
  readonly onLeans: (way: 'out' | 'in') => void;
  readonly onOtherLevel: () => void;
  readonly onClose: () => void;
}

function WaySheet({ face, over, onPlumb, onLeans, onOtherLevel, onClose }: WaySheetProps) {
  return (
    <Sheet title={`Plumb, ${face}`} onClose={onClose}>
      <p>
        Hold the level upright against {face}, over {lengthWords(over)}. Which way does the top of the post
        lean?
      </p>
      <Button kind="main" onPress={onPlumb}>
        Plumb: bubble in the middle
      </Button>
      <Button onPress={() => onLeans('out')}>Top leans out, towards me</Button>
      <Button onPress={() => onLeans('in')}>Top leans in, away from me</Button>
      <Button onPress={onOtherLevel}>Another level, of another length</Button>
    </Sheet>
  );
}
