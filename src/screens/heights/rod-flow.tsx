import { useState } from 'preact/hooks';
import type { HeightPoint } from '../../job/entry-schema.ts';
import type { Length } from '../../job/length.ts';
import { heightPointName } from '../../job/words.ts';
import type { JobView } from '../../judge/view.ts';
import { Button, ButtonRow, Keypad, Sheet } from '../../ui/index.ts';
import { useReading } from '../set/use-reading.tsx';
import { looksBelow, type RodSight, rodDoubt } from './rod-belief.ts';

export interface RodFlowProps {
  readonly view: JobView;
  readonly on: HeightPoint;
  /** The level's set-up. */
  readonly setup: string;
  /** What the rod ought to read, metres, where it is known. */
  readonly expected: number | null;
  /** Held upside down against a point above the level. */
  readonly inverted?: boolean;
  /** Ask how far off the rod is; it is asked anyway of a level that is known to look up or down. */
  readonly asksSight?: boolean;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** Longest levelling staff in common use, five sections: common practice. */
const LONGEST_ROD_M = 7.6;
/** Further off no rod is read to a millimetre with a builder's level: common practice. */
const LONGEST_SIGHT_M = 100;

/** Takes one rod reading, where wanted with how far off the rod is, and logs it. */
export function RodFlow({ view, on, setup, expected, inverted = false, ...rest }: RodFlowProps) {
  const { save, notSaved } = useReading(rest.onClose);
  const [draft, setDraft] = useState('');
  const [reading, setReading] = useState<Length | null>(null);
  if (notSaved) return notSaved;
  const { units, instruments } = view.plan;
  const title = `Rod on ${heightPointName(on, view.plan)}`;
  const log = (read: Length, far: Length | null) =>
    save({
      kind: 'rod',
      setup,
      on,
      reading: read,
      ...(far ? { sight: far } : {}),
      ...(inverted ? { inverted } : {}),
    });
  const sight = { on, setup, inverted };
  const asksSight = rest.asksSight === true || looksOff(view);
  if (reading)
    return (
      <SightFlow
        title={title}
        view={view}
        onDone={(far) => void log(reading, far)}
        onClose={() => setReading(null)}
      />
    );
  return (
    <Keypad
      title={title}
      units={units}
      hint={`Set-up ${setup}. ${hintFor(view, sight)}`}
      bounds={
        instruments.rodLength
          ? { max: instruments.rodLength.m, maxName: 'the rod’s length' }
          : { max: LONGEST_ROD_M, maxName: 'the longest rod' }
      }
      {...(expected === null ? {} : { expected })}
      check={(m) => rodDoubt(view, sight, m)}
      draft={draft}
      onDraft={setDraft}
      onDone={(read) => (asksSight ? setReading(read) : log(read, null))}
      onClose={rest.onClose}
    />
  );
}

const UPRIGHT = 'Rod upright, zero at the foot. A larger reading is a lower point.';
const TOO_LOW =
  'The level looks below where this top is to be: raise it, or hold the rod upside down (under Heights and the level).';
const UPSIDE_DOWN = 'Rod upside down, its foot against the point. A larger reading is a higher point.';

function hintFor(view: JobView, sight: RodSight): string {
  if (sight.inverted) return UPSIDE_DOWN;
  return looksBelow(view, sight) ? TOO_LOW : UPRIGHT;
}

const looksOff = (view: JobView): boolean => view.measured.levelling.collimations.at(-1)?.says === 'off';

interface SightFlowProps {
  readonly title: string;
  readonly view: JobView;
  readonly onDone: (sight: Length | null) => void;
  readonly onClose: () => void;
}

/** How far off the rod is: by it a level that looks up or down is put right. */
function SightFlow({ title, view, onDone, onClose }: SightFlowProps) {
  const [known, setKnown] = useState(false);
  if (known)
    return (
      <Keypad
        title={`Level to the rod, ${title.replace('Rod on ', '')}`}
        units={view.plan.units}
        hint="From the level to the rod. To a foot is near enough."
        bounds={{ max: LONGEST_SIGHT_M, maxName: 'the longest sight' }}
        onDone={onDone}
        onClose={() => setKnown(false)}
      />
    );
  return (
    <Sheet
      title={`How far off is the rod?`}
      onClose={onClose}
      actions={
        <ButtonRow>
          <Button onPress={() => onDone(null)}>Not known</Button>
          <Button kind="main" onPress={() => setKnown(true)}>
            Enter the distance
          </Button>
        </ButtonRow>
      }
    >
      <p>By this distance and the two-peg test a level that looks up or down is put right.</p>
      <p>Without it such a reading counts for less.</p>
    </Sheet>
  );
}
