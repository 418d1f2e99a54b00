import { useState } from 'preact/hooks';
import type { EntryOf, HeightPoint } from '../../job/entry-schema.ts';
import { roundedLength } from '../../job/length.ts';
import { heightPointName } from '../../job/words.ts';
import type { JobView } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { heightKey } from '../../measure/index.ts';
import { Button, ChoiceField, Keypad, Sheet } from '../../ui/index.ts';
import { useReading } from '../set/use-reading.tsx';
import { differenceDoubt } from './difference-belief.ts';
import { heightPoints } from './height-points.ts';
import { PointSheet } from './point-sheet.tsx';

type Difference = EntryOf<'difference'>['body'];

export interface DifferenceFlowProps {
  readonly view: JobView;
  /** The hole at hand. */
  readonly hole: string | null;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** No hose and no laser on a small site spans more of a height: common practice. */
const MOST_RISE_M = 10;

/** Takes a difference of height by water level or laser: between which points, which is higher, by how much. */
export function DifferenceFlow({ view, hole, onClose }: DifferenceFlowProps) {
  const { save, notSaved } = useReading(onClose);
  const [by, setBy] = useState<Difference['by']>('water-level');
  const [from, setFrom] = useState<HeightPoint | null>(null);
  const [to, setTo] = useState<HeightPoint | null>(null);
  const [higher, setHigher] = useState<'from' | 'to' | null>(null);
  const { units } = view.plan;
  if (notSaved) return notSaved;
  const points = heightPoints(view, hole, true);
  if (!from)
    return (
      <PointSheet
        view={view}
        title="Compare heights: from"
        points={points}
        onPick={setFrom}
        onClose={onClose}
      >
        <ChoiceField label="Compared by" value={by} choices={BY} onChange={setBy} />
      </PointSheet>
    );
  if (!to)
    return (
      <PointSheet
        view={view}
        title={`From ${heightPointName(from, view.plan)} to`}
        points={points.filter((on) => heightKey(on) !== heightKey(from))}
        onPick={setTo}
        onClose={() => setFrom(null)}
      />
    );
  const [one, other] = [from, to].map((on) => heightPointName(on, view.plan)) as [string, string];
  if (!higher)
    return (
      <Sheet title="Which is higher?" onClose={() => setTo(null)}>
        <Button onPress={() => setHigher('from')}>{capital(one)} is higher</Button>
        <Button onPress={() => setHigher('to')}>{capital(other)} is higher</Button>
        <Button
          onPress={() =>
            void save({ kind: 'difference', by, from, to, height: roundedLength(0, units), higher: 'none' })
          }
        >
          They are level
        </Button>
      </Sheet>
    );
  const [up, low] = higher === 'from' ? [one, other] : [other, one];
  return (
    <Keypad
      title={`Height of ${up} above ${low}`}
      units={units}
      hint={by === 'laser' ? LASER : HOSE}
      bounds={{ max: MOST_RISE_M, maxName: 'any hose or laser on a site' }}
      check={(m) => differenceDoubt(view, from, to, higher === 'to' ? m : -m)}
      onDone={(height) => save({ kind: 'difference', by, from, to, height, higher })}
      onClose={() => setHigher(null)}
    />
  );
}

const BY = [
  { value: 'water-level', label: 'Water level' },
  { value: 'laser', label: 'Laser' },
] as const;

const HOSE = 'Both ends of the hose open, no air in it. Wait until the water stands still.';
const LASER = 'From the laser’s line: the longer of the two measures less the shorter.';
