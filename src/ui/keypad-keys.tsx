import type { ComponentChildren } from 'preact';
import type { Units } from '../units/index.ts';
import {
  denominatorOf,
  fractionText,
  type KeypadEntry,
  pressDigit,
  pressFeetMark,
  pressFraction,
  pressInches,
  pressInchMark,
  typeText,
} from './keypad-entry.ts';

export interface KeypadKeysProps {
  readonly entry: KeypadEntry;
  readonly units: Units;
  readonly onEntry: (entry: KeypadEntry) => void;
}

/** The pad for the piece that is being asked for. Its keys take fast taps: 1 then 1 is 11. */
export function KeypadKeys({ entry, units, onEntry }: KeypadKeysProps) {
  if (entry.how === 'pieces' && entry.stage === 'inches') return <InchKeys entry={entry} onEntry={onEntry} />;
  if (entry.how === 'pieces' && entry.stage === 'fraction')
    return <FractionKeys entry={entry} onEntry={onEntry} />;
  return <DigitKeys entry={entry} units={units} onEntry={onEntry} />;
}

/** Where there is no `.` or no unit beside it, 0 takes their room. */
const ZERO_SIZES: Partial<Record<Units, KeyProps['size']>> = { ft: 'wide', m: 'wide', mm: 'whole' };

function DigitKeys({ entry, units, onEntry }: KeypadKeysProps) {
  const digit = (d: string, size?: KeyProps['size']) => (
    <Key key={d} size={size} onTap={() => onEntry(pressDigit(entry, d))}>
      {d}
    </Key>
  );
  return (
    <fieldset class="keys keys-three">
      <legend class="visually-hidden">Digits</legend>
      {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((d) => digit(d))}
      {denominatorOf(units) !== null && <Key onTap={() => onEntry(pressInchMark(entry))}>″ in</Key>}
      {(units === 'ft' || units === 'm') && (
        <Key label="decimal point" onTap={() => onEntry(typeText(entry, '.'))}>
          .
        </Key>
      )}
      {digit('0', ZERO_SIZES[units])}
      {denominatorOf(units) !== null && (
        <Key strong onTap={() => onEntry(pressFeetMark(entry))}>
          ′ ft
        </Key>
      )}
    </fieldset>
  );
}

type Pieces = Extract<KeypadEntry, { how: 'pieces' }>;
interface PieceKeysProps {
  readonly entry: Pieces;
  readonly onEntry: (entry: KeypadEntry) => void;
}

/** 1 to 9 and 0 stand where the digits stand, 10 and 11 beside 0: one tap for any inch. */
const INCH_ORDER = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 0, 11];

function InchKeys({ entry, onEntry }: PieceKeysProps) {
  return (
    <fieldset class="keys keys-three">
      <legend class="visually-hidden">Whole inches</legend>
      {INCH_ORDER.map((n) => (
        <Key
          key={n}
          label={`${n} ${n === 1 ? 'inch' : 'inches'}`}
          pressed={entry.inches === String(n)}
          onTap={() => onEntry(pressInches(entry, n))}
        >
          {n}
        </Key>
      ))}
    </fieldset>
  );
}

const SIXTEENTHS = Array.from({ length: 16 }, (_, n) => n);

/** Each row is a quarter of an inch, as on the tape. A thirty-second is added to the sixteenth below it. */
function FractionKeys({ entry, onEntry }: PieceKeysProps) {
  const fine = entry.denominator / 16;
  const over = entry.fraction ?? 0;
  const odd = over % fine;
  return (
    <fieldset class="keys keys-four">
      <legend class="visually-hidden">Fraction of an inch</legend>
      {SIXTEENTHS.map((n) => (
        <Key
          key={n}
          label={n === 0 ? '0: no fraction' : fractionText(n, 16)}
          strong={n % 4 === 0}
          pressed={entry.fraction !== null && entry.fraction - odd === n * fine}
          onTap={() => onEntry(pressFraction(entry, n * fine))}
        >
          {n === 0 ? '0' : fractionText(n, 16)}
        </Key>
      ))}
      {fine === 2 && (
        <Key
          size="whole"
          pressed={odd === 1}
          onTap={() => onEntry(pressFraction(entry, odd ? over - 1 : over + 1))}
        >
          and 1/32
        </Key>
      )}
    </fieldset>
  );
}

interface KeyProps {
  readonly onTap: () => void;
  readonly label?: string;
  readonly pressed?: boolean;
  readonly strong?: boolean;
  /** `wide`: to the end of the row; `whole`: the whole row. */
  readonly size?: 'wide' | 'whole' | undefined;
  readonly children: ComponentChildren;
}

function Key({ onTap, label, pressed, strong = false, size, children }: KeyProps) {
  return (
    <button
      type="button"
      class={`key${strong ? ' key-strong' : ''}${size ? ` key-${size}` : ''}`}
      aria-label={label}
      aria-pressed={pressed}
      // A tap leaves the focus where it is, so that Enter on a hardware keyboard still means "read it".
      onMouseDown={(event) => event.preventDefault()}
      onClick={onTap}
    >
      {children}
    </button>
  );
}
