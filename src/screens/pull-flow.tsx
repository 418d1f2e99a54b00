import { useState } from 'preact/hooks';
import type { Hold, PullEnd } from '../job/entry-schema.ts';
import { type Length, lengthWords } from '../job/length.ts';
import { endName } from '../job/words.ts';
import { readingOn } from '../measure/index.ts';
import { Button, ButtonRow, Keypad, Sheet } from '../ui/index.ts';
import { formatLength, type Units } from '../units/index.ts';
import { doubtOf } from './belief.ts';
import { useJobBook } from './job-book.ts';
import { NotSaved } from './not-saved.tsx';
import { type PullEnds, retouched } from './retouched.ts';
import { alongSlope, riseBetween } from './rise.ts';
import { TapeButton, useHasTapes } from './tape-choice.tsx';
import { tapeLogged } from './tape-logged.ts';
import { TapeSheet } from './tape-sheet.tsx';
import { OpenTouch, TouchButton } from './touch-button.tsx';
import { useLog } from './use-log.ts';

export interface PullToRead {
  readonly from: PullEnd;
  readonly to: PullEnd;
  /** Level tape reading that the plan asks for, metres. */
  readonly expected?: number;
}

export interface PullFlowProps {
  readonly pull: PullToRead;
  readonly how: Hold['how'];
  /** Called once the pull is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

interface Read {
  readonly reading: Length;
  readonly hold: Hold;
}

/**
 * Takes one tape reading, and where the tape lay along the slope the rise between its ends, and logs them as one pull.
 * Until the pull is on disk what was typed stays on the screen, with the reason and the way to try again.
 */
export function PullFlow({ pull: proposed, how, onClose }: PullFlowProps) {
  const { situation } = useJobBook();
  const { failed, log } = useLog();
  const [draft, setDraft] = useState('');
  const [reading, setReading] = useState<Length | null>(null);
  const [unsaved, setUnsaved] = useState<Read | null>(null);
  const [choosing, setChoosing] = useState<'tape' | 'touch' | null>(null);
  const [touched, setTouched] = useState<PullEnds | null>(null);
  const hasTapes = useHasTapes();
  const { plan, inHand } = situation;
  if (!plan) return null;
  const pull = touched ? retouched(proposed, touched, situation) : proposed;

  const save = async (read: Read) => {
    setUnsaved(read);
    if (await log({ kind: 'pull', from: pull.from, to: pull.to, ...read, ...tapeLogged(inHand) })) onClose();
  };
  const line = `${endName(pull.from, plan)} to ${endName(pull.to, plan)}`;
  const back = () => {
    setUnsaved(null);
    setReading(null);
  };
  if (failed && unsaved)
    return (
      <NotSaved
        what={`${line}: ${lengthWords(unsaved.reading)}`}
        onAgain={() => void save(unsaved)}
        onBack={back}
      />
    );
  if (reading)
    return (
      <RiseFlow
        ends={line}
        units={plan.units}
        most={reading.m}
        onDone={(rise) => void save({ reading, hold: rise ? { how: 'slope', rise } : { how: 'slope' } })}
        onClose={back}
      />
    );
  const onChosen = () => setChoosing(null);
  if (choosing === 'tape') return <TapeSheet onClose={onChosen} />;
  if (choosing === 'touch')
    return (
      <OpenTouch
        ends={pull}
        onDone={(ends) => {
          setTouched(ends);
          onChosen();
        }}
        onClose={onChosen}
      />
    );
  const rise = riseBetween(situation, pull.from, pull.to);
  const take = (length: Length) => {
    if (how === 'level') return void save({ reading: length, hold: { how: 'level' } });
    // Heights of both ends are known: the adjustment takes the rise from them, and nothing needs to be asked.
    if (rise !== null) return void save({ reading: length, hold: { how: 'slope' } });
    setReading(length);
  };
  const length = expectedLength(pull, how, rise);
  return (
    <Keypad
      title={`Tape, ${line}`}
      units={plan.units}
      hint={hintFor(how, rise, plan.units)}
      {...(length === null ? {} : { expected: readingOn(inHand, length) })}
      bounds={{ max: plan.instruments.tapeLength.m, maxName: 'the tape’s length' }}
      check={(m) => doubtOf(pull, m, how, situation)}
      draft={draft}
      onDraft={setDraft}
      onDone={take}
      onClose={onClose}
    >
      {hasTapes && <TapeButton onPress={() => setChoosing('tape')} />}
      <TouchButton from={pull.from} to={pull.to} onPress={() => setChoosing('touch')} />
    </Keypad>
  );
}

/** What is there between the ends, along the tape as it is held; null where that is not known. */
function expectedLength({ expected }: PullToRead, how: Hold['how'], rise: number | null): number | null {
  if (expected === undefined) return null;
  if (how === 'level') return expected;
  return rise === null ? null : alongSlope(expected, rise);
}

function hintFor(how: Hold['how'], rise: number | null, units: Units): string {
  if (how === 'level') return 'Hold the tape level and pull it tight.';
  const known = rise === null ? '' : ` The level gives a rise of ${formatLength(rise, units)}.`;
  return `Tape along the slope, pulled tight.${known}`;
}

interface RiseFlowProps {
  readonly ends: string;
  readonly units: Units;
  /** The reading itself, metres: no end is higher above the other than the tape is long. */
  readonly most: number;
  readonly onDone: (rise: Length | null) => void;
  readonly onClose: () => void;
}

/** How much higher one end is than the other, if that is known: without it the pull carries the doubt. */
function RiseFlow({ ends, units, most, onDone, onClose }: RiseFlowProps) {
  const [known, setKnown] = useState(false);
  const title = `Rise, ${ends}`;
  if (known) {
    const hint = 'How much higher one end of the tape was than the other. Which one does not matter.';
    return (
      <Keypad
        title={title}
        units={units}
        hint={hint}
        bounds={{ min: 0, max: most, maxName: 'the tape’s reading' }}
        onDone={onDone}
        onClose={() => setKnown(false)}
      />
    );
  }
  return (
    <Sheet
      title={title}
      onClose={onClose}
      actions={
        <ButtonRow>
          <Button onPress={() => onDone(null)}>Not known</Button>
          <Button kind="main" onPress={() => setKnown(true)}>
            Enter the rise
          </Button>
        </ButtonRow>
      }
    >
      <p>
        A tape along the slope reads long. With the rise between its ends known, Swingtape takes that out.
      </p>
      <p>Without it the reading counts for less, and the place that hangs on it stays in doubt.</p>
    </Sheet>
  );
}
