import type { EntryOf } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import { Keypad } from '../../ui/keypad.tsx';
import { useJobBook } from '../job-book.ts';

export type RodPoint = EntryOf<'rod'>['body']['on'];

export interface RodFlowProps {
  readonly on: RodPoint;
  /** The level's set-up. */
  readonly setup: string;
  /** What the rod ought to read, metres, where it is known. */
  readonly expected?: number;
  readonly onClose: () => void;
}

/** Longest levelling staff in common use, five sections: common practice. */
const LONGEST_ROD_M = 7.6;

/** Takes one rod reading and logs it. */
export function RodFlow({ on, setup, expected, onClose }: RodFlowProps) {
  const { situation, append } = useJobBook();
  const { plan } = situation;
  if (!plan) return null;
  const where =
    on.point === 'top' ? `the top of ${thingName({ kind: 'post', hole: on.hole }, plan)}` : 'the benchmark';
  return (
    <Keypad
      title={`Rod on ${where}`}
      units={plan.units}
      hint="Rod upright, zero at the foot. A larger reading is a lower point."
      bounds={{ max: LONGEST_ROD_M, maxName: 'the longest rod' }}
      {...(expected === undefined ? {} : { expected })}
      onDone={async (reading) => {
        if (await append({ kind: 'rod', setup, on, reading })) onClose();
      }}
      onClose={onClose}
    />
  );
}
