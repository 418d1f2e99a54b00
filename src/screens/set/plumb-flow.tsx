import { useState } from 'preact/hooks';
import type { EntryOf, Side } from '../../job/entry-schema.ts';
import type { Length } from '../../job/length.ts';
import { roundedLength } from '../../job/length.ts';
import { sideName, thingName, turningOf } from '../../job/words.ts';
import { Button } from '../../ui/button.tsx';
import { Keypad } from '../../ui/keypad.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { formatLength, type Units } from '../../units/index.ts';
import { useJobBook } from '../job-book.ts';

type Leans = EntryOf<'plumb'>['body']['leans'];

export interface PlumbFlowProps {
  readonly hole: string;
  readonly side: Side;
  /** Length of the level used last, or null before the first reading. */
  readonly lastOver: Length | null;
  readonly onClose: () => void;
}

/**
 * Takes one plumb reading on one face: which way the top leans, the gap that brings the bubble to the middle, and over
 * what length of level. Logged as one entry.
 */
export function PlumbFlow({ hole, side, lastOver, onClose }: PlumbFlowProps) {
  const { situation, append } = useJobBook();
  const { plan } = situation;
  const [leans, setLeans] = useState<Leans | null>(null);
  const [offset, setOffset] = useState<Length | null>(null);
  const [over, setOver] = useState<Length | null>(lastOver);
  if (!plan) return null;
  const post = thingName({ kind: 'post', hole }, plan);
  const face = `the ${sideName(side, turningOf(plan, hole))} face of ${post}`;
  const log = async (way: Leans, gap: Length, span: Length) => {
    if (await append({ kind: 'plumb', hole, side, offset: gap, over: span, leans: way })) onClose();
  };
  if (over === null)
    return (
      <Keypad
        title="Length of the level"
        units={plan.units}
        hint="The length along the post over which the gap is read: as a rule the whole level."
        bounds={LEVEL_LENGTHS}
        onDone={setOver}
        onClose={onClose}
      />
    );
  if (leans === null || leans === 'none')
    return (
      <WaySheet
        face={face}
        over={over}
        units={plan.units}
        onOtherLevel={() => setOver(null)}
        onWay={(way) =>
          way === 'none' ? void log('none', roundedLength(0, plan.units), over) : setLeans(way)
        }
        onClose={onClose}
      />
    );
  return (
    <Keypad
      title={`Gap, ${face}`}
      units={plan.units}
      hint={`Bubble in the middle: the gap between the level’s ${leans === 'out' ? 'lower' : 'upper'} end and the post.`}
      bounds={{ max: over.m, maxName: 'the length of the level' }}
      onDone={(gap) => {
        setOffset(gap);
        void log(leans, gap, over);
      }}
      {...(offset ? { draft: offset.typed } : {})}
      onClose={onClose}
    />
  );
}

/** Shorter than a torpedo level or longer than a plank level is a slip. */
const LEVEL_LENGTHS = { min: 0.15, max: 4 };

interface WaySheetProps {
  readonly face: string;
  readonly over: Length;
  readonly units: Units;
  readonly onWay: (way: Leans) => void;
  readonly onOtherLevel: () => void;
  readonly onClose: () => void;
}

function WaySheet({ face, over, units, onWay, onOtherLevel, onClose }: WaySheetProps) {
  return (
    <Sheet title={`Plumb, ${face}`} onClose={onClose}>
      <p>
        Hold the level upright against {face}, over {formatLength(over.m, units)}. Which way does the top of
        the post lean?
      </p>
      <Button kind="main" onPress={() => onWay('none')}>
        Plumb: bubble in the middle
      </Button>
      <Button onPress={() => onWay('out')}>Top leans out, towards me</Button>
      <Button onPress={() => onWay('in')}>Top leans in, away from me</Button>
      <Button onPress={onOtherLevel}>Another level, of another length</Button>
    </Sheet>
  );
}
