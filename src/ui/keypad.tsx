import type { ComponentChildren } from 'preact';
import { formatLength, type Units } from '../units/index.ts';
import { Button, ButtonRow } from './button.tsx';
import { isEmpty, type KeypadEntry } from './keypad-entry.ts';
import { KeypadKeys } from './keypad-keys.tsx';
import { KeypadReadout } from './keypad-readout.tsx';
import { differenceInWords, lengthInWords } from './length-words.ts';
import { Problem } from './problem.tsx';
import { Sheet } from './sheet.tsx';
import { type KeypadState, type KeypadTask, useKeypad } from './use-keypad.ts';

export interface KeypadProps extends KeypadTask {
  /** What is being read; also how a refusal names it: `Tape from A to stake 4`. */
  readonly title: string;
  /** What each end of the tape touches, and how it is held. */
  readonly hint: string;
  /** What the tape ought to read, metres: shown beside the entry, with the difference as soon as there is one. */
  readonly expected?: number;
  /** The main button's first words, before the reading itself. */
  readonly action?: string;
  /** What else can be said of the reading, under the hint. */
  readonly children?: ComponentChildren;
  readonly onClose: () => void;
}

/**
 * Takes one length, by taps or by a hardware keyboard, and hands it over only once it is a length. Another title is another
 * reading and begins anew.
 */
export function Keypad(props: KeypadProps) {
  return <OneReading key={props.title} {...props} />;
}

function OneReading(props: KeypadProps) {
  const { title, units, hint, expected, action = 'Read it' } = props;
  const pad = useKeypad(props);
  return (
    <Sheet
      title={title}
      onClose={props.onClose}
      actions={
        <Decide pad={pad} action={pad.m === null ? action : `${action}: ${formatLength(pad.m, units)}`} />
      }
    >
      <p class="keypad-hint">{hint}</p>
      {props.children}
      <div class="keypad-value">
        <KeypadReadout entry={pad.entry} units={units} onEntry={pad.put} />
        <BackKey pad={pad} />
      </div>
      <div class="keypad-says">
        {pad.problem ? (
          <Problem text={pad.problem} />
        ) : (
          <Says pad={pad} units={units} expected={expected} from={props.from} />
        )}
      </div>
      {pad.question ? (
        <p class="keypad-question" role="alert">
          {pad.question}
        </p>
      ) : (
        <KeypadKeys entry={pad.entry} units={units} onEntry={pad.put} />
      )}
    </Sheet>
  );
}

/** The main button; or, when the reading is hard to believe, the choice between two. */
function Decide({ pad, action }: { readonly pad: KeypadState; readonly action: string }) {
  if (pad.question === null)
    return (
      <Button key="read" kind="main" onPress={() => pad.finish(false)}>
        {action}
      </Button>
    );
  return (
    <ButtonRow key="choose">
      <Button onPress={() => pad.finish(true)}>Keep it as read</Button>
      <Button kind="main" onPress={pad.restart}>
        Read it again
      </Button>
    </ButtonRow>
  );
}

function BackKey({ pad }: { readonly pad: KeypadState }) {
  return (
    <button
      type="button"
      class="key key-back"
      aria-label="take back the last step"
      disabled={isEmpty(pad.entry) && (pad.entry.how === 'typed' || pad.entry.stage === 'feet')}
      onMouseDown={(event) => event.preventDefault()}
      onClick={pad.back}
    >
      ⌫
    </button>
  );
}

interface SaysProps {
  readonly pad: KeypadState;
  readonly units: Units;
  readonly expected: number | undefined;
  readonly from: KeypadTask['from'];
}

/** The reading in words, and beside what was expected. */
function Says({ pad: { entry, m }, units, expected, from }: SaysProps) {
  return (
    <>
      <p class="keypad-words" role="status">
        {m === null ? promptFor(entry, units, from) : `${lengthInWords(m, units)}${stillToCome(entry)}`}
      </p>
      {expected !== undefined && (
        <p>
          Expected {formatLength(expected, units)}
          {m !== null && (
            <>
              : <strong>{differenceInWords(m - expected, units)}</strong>
            </>
          )}
        </p>
      )}
    </>
  );
}

/** Feet alone are a reading, but seldom the whole of it. */
const stillToCome = (entry: KeypadEntry): string =>
  entry.how === 'pieces' && entry.stage === 'inches' && entry.inches === '' ? '. Now the whole inches' : '';

/** What to tap next, in the place where the reading will stand in words. */
function promptFor(entry: KeypadEntry, units: Units, from: KeypadTask['from']): string {
  if (entry.how === 'typed') return units.startsWith('ft-in') ? 'Feet, inches, fraction' : 'Tap the reading';
  if (entry.stage === 'inches') return from === 'inches' ? 'First the whole inches' : 'Now the whole inches';
  if (entry.stage === 'fraction') return 'Now the fraction, if there is one';
  return entry.feet === '' ? 'First the feet' : 'Then ′ for feet, or ″ for inches';
}
