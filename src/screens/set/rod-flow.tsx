import { useState } from 'preact/hooks';
import type { EntryOf } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import type { JobView } from '../../judge/view.ts';
import { DRIVEN_WITHIN_M } from '../../measure/index.ts';
import { Keypad } from '../../ui/index.ts';
import { doubtWords } from '../belief.ts';
import { useReading } from './use-reading.tsx';

export type RodPoint = EntryOf<'rod'>['body']['on'];

export interface RodFlowProps {
  readonly view: JobView;
  readonly on: RodPoint;
  /** The level's set-up. */
  readonly setup: string;
  /** What the rod ought to read, metres, where it is known. */
  readonly expected: number | null;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** Longest levelling staff in common use, five sections: common practice. */
const LONGEST_ROD_M = 7.6;

/** Takes one rod reading and logs it. */
export function RodFlow({ view, on, setup, expected, onClose }: RodFlowProps) {
  const { save, notSaved } = useReading(onClose);
  const [draft, setDraft] = useState('');
  if (notSaved) return notSaved;
  const { plan } = view;
  const where =
    on.point === 'top' ? `the top of ${thingName({ kind: 'post', hole: on.hole }, plan)}` : 'the benchmark';
  return (
    <Keypad
      title={`Rod on ${where}`}
      units={plan.units}
      hint={`Set-up ${setup}. Rod upright, zero at the foot. A larger reading is a lower point.`}
      bounds={{ max: LONGEST_ROD_M, maxName: 'the longest rod' }}
      {...(expected === null ? {} : { expected })}
      check={(m) => rodDoubt(view, on, setup, expected, m)}
      draft={draft}
      onDraft={setDraft}
      onDone={(reading) => save({ kind: 'rod', setup, on, reading })}
      onClose={onClose}
    />
  );
}

/**
 * Asks back where a rod reading is beyond belief: beside earlier ones of the same point from the same set-up, or before
 * there are any, beside what the plan asks for, which a post seldom misses by more than a stake does.
 *
 * @param m the reading, metres
 */
function rodDoubt(
  view: JobView,
  on: RodPoint,
  setup: string,
  expected: number | null,
  m: number,
): string | null {
  const { units, instruments } = view.plan;
  const earlier = earlierReadings(view, on, setup);
  const ask = (about: number, sigma: number) => doubtWords({ reading: m, expected: about, sigma, units });
  if (earlier.length > 0) {
    const mean = earlier.reduce((sum, each) => sum + each, 0) / earlier.length;
    return ask(mean, instruments.rodError.m * Math.sqrt(1 + 1 / earlier.length));
  }
  return expected === null ? null : ask(expected, DRIVEN_WITHIN_M);
}

function earlierReadings(view: JobView, on: RodPoint, setup: string): number[] {
  if (on.point === 'benchmark') return view.book.benchmarks(setup).map(({ body }) => body.reading.m);
  if (on.point !== 'top') return [];
  return view.book
    .tops(on.hole)
    .filter(({ body }) => body.setup === setup)
    .map(({ body }) => body.reading.m);
}
