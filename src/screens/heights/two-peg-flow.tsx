import { useState } from 'preact/hooks';
import type { EntryOf } from '../../job/entry-schema.ts';
import { type Length, lengthWords } from '../../job/length.ts';
import type { JobView } from '../../judge/view.ts';
import { collimationOf } from '../../measure/index.ts';
import { Button, Keypad, Problem, Sheet } from '../../ui/index.ts';
import { useReading } from '../set/use-reading.tsx';
import { testWords } from './height-lines.ts';
import './heights.css';

type TwoPeg = EntryOf<'two-peg'>['body'];

export interface TwoPegFlowProps {
  readonly view: JobView;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

/** Longest levelling staff in common use, five sections, and the longest sight over which it is read: common practice. */
const ROD = { max: 7.6, maxName: 'the longest rod' };
const SIGHT = { max: 100, maxName: 'the longest sight' };

/** The six lengths, in the order in which they are read. */
const STEPS = [
  { title: 'Rod on peg a, level midway', hint: 'The level midway between the pegs.', bounds: ROD },
  { title: 'Rod on peg b, level midway', hint: 'From the same set-up.', bounds: ROD },
  { title: 'Rod on peg a, level near it', hint: 'The level moved close to peg a.', bounds: ROD },
  { title: 'Rod on peg b, level near peg a', hint: 'From the same set-up.', bounds: ROD },
  { title: 'Level to peg a', hint: 'How far off peg a is, from the second set-up.', bounds: SIGHT },
  { title: 'Level to peg b', hint: 'How far off peg b is, from the second set-up.', bounds: SIGHT },
] as const;

/** Takes the two-peg test of the level, says what it comes to, and logs it once the user keeps it. Back undoes one step. */
export function TwoPegFlow({ view, onClose }: TwoPegFlowProps) {
  const { save, notSaved } = useReading(onClose);
  const [begun, setBegun] = useState(false);
  const [read, setRead] = useState<readonly Length[]>([]);
  if (notSaved) return notSaved;
  if (!begun) return <Beginning onBegin={() => setBegun(true)} onClose={onClose} />;
  const back = () => (read.length === 0 ? setBegun(false) : setRead(read.slice(0, -1)));
  const step = STEPS[read.length];
  const test = testOf(read);
  if (!step && test) return <Outcome view={view} test={test} onKeep={() => void save(test)} onClose={back} />;
  return step ? (
    <Keypad
      {...step}
      units={view.plan.units}
      onDone={(length) => setRead([...read, length])}
      onClose={back}
    />
  ) : null;
}

function testOf([ma, mb, na, nb, sa, sb]: readonly Length[]): TwoPeg | null {
  if (!ma || !mb || !na || !nb || !sa || !sb) return null;
  return { kind: 'two-peg', middle: { a: ma, b: mb }, near: { a: na, b: nb }, sights: { a: sa, b: sb } };
}

function Beginning({ onBegin, onClose }: { readonly onBegin: () => void; readonly onClose: () => void }) {
  return (
    <Sheet
      title="Test the level"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={onBegin}>
          Begin
        </Button>
      }
    >
      <p>A level that looks up or down reads wrong, and the more so the further off the rod is.</p>
      <ol>
        <li>Drive two pegs, a and b, about 30 m (100 ft) apart.</li>
        <li>Stand the level midway and read the rod on both.</li>
        <li>Stand it close to peg a, as near as it focuses, and read both again.</li>
        <li>Measure from there to each peg.</li>
      </ol>
    </Sheet>
  );
}

interface OutcomeProps {
  readonly view: JobView;
  readonly test: TwoPeg;
  readonly onKeep: () => void;
  readonly onClose: () => void;
}

function Outcome({ view, test, onKeep, onClose }: OutcomeProps) {
  const { units, instruments } = view.plan;
  const says = collimationOf({ id: '', body: test }, instruments);
  const rows = [test.middle, test.near, test.sights];
  return (
    <Sheet
      title="What the test says"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={onKeep}>
          Keep the test
        </Button>
      }
    >
      {says && says.says !== 'unbelievable' ? (
        <p>
          <strong>{testWords(says, units)}</strong>
        </p>
      ) : (
        <Problem text={says ? `${testWords(says, units)} Go back and read again.` : NOTHING} />
      )}
      <ul class="height-lines">
        {rows.map(({ a, b }, i) => (
          <li key={ROWS[i]}>
            {ROWS[i]}: peg a {lengthWords(a)}, peg b {lengthWords(b)}
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

const ROWS = ['From midway', 'From near peg a', 'How far off'] as const;
const NOTHING =
  'This tells nothing: at its second set-up the level stood as far from one peg as from the other. Go back and take it from near peg a.';
