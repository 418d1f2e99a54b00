import type { Thing } from '../../../job/entry-schema.ts';
import { thingName } from '../../../job/words.ts';
import { readingOn } from '../../../measure/index.ts';
import { tapeSigma } from '../../../plan/index.ts';
import { doubtWords } from '../../belief.ts';
import { useJobBook } from '../../job-book.ts';
import { useReading } from '../../set/use-reading.tsx';
import { tapeLogged } from '../../tape-logged.ts';
import { TapedKeypad } from '../../taped-keypad.tsx';
import { stationDoubt } from '../string-belief.ts';

export interface OnStringFlowProps {
  readonly from: Thing;
  readonly to: Thing;
  readonly hole: string;
  /** Along the string from its first end to the centre, as planned, metres. */
  readonly expected: number;
  readonly onClose: () => void;
}

/** A stake driven by hand lies within this of its mark, one sigma: half an inch. */
const DRIVEN_OFF = 0.012;

/** Reads where a hole's stake lies along a string that runs over its nail, and logs it: one tie. */
export function OnStringFlow({ from, to, hole, expected, onClose }: OnStringFlowProps) {
  const { situation } = useJobBook();
  const { save, notSaved } = useReading(onClose);
  const { plan } = situation;
  if (!plan) return null;
  if (notSaved) return notSaved;
  const thing: Thing = { kind: 'hole-stake', hole };
  const off = { from, to, of: { thing, touch: { at: 'nail' } } } as const;
  const [begin, end] = [from, to].map((one) => thingName(one, plan));
  const check = (m: number) =>
    stationDoubt(situation, off, m) ??
    doubtWords({
      reading: m,
      expected: readingOn(situation.inHand, expected),
      sigma: Math.hypot(DRIVEN_OFF, tapeSigma(m, plan.instruments)),
      units: plan.units,
    });
  return (
    <TapedKeypad
      title={`Along the string, ${begin} to stake ${hole}`}
      units={plan.units}
      hint={`The string runs from ${begin} to ${end} over the nail in stake ${hole}. Tape along it from ${begin} to the nail.`}
      expected={expected}
      bounds={{ max: plan.instruments.tapeLength.m, maxName: 'the tape’s length' }}
      check={check}
      onDone={(station) =>
        void save({ kind: 'offset', ...off, station, side: 'on', ...tapeLogged(situation.inHand) })
      }
      onClose={onClose}
    />
  );
}
