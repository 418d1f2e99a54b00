import { useState } from 'preact/hooks';
import type { PlumbRead } from '../../job/entry-schema.ts';
import { isMetric } from '../../plan/sections.ts';
import { Button, ButtonRow, NumberField, Sheet } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { Units } from '../../units/index.ts';

export interface PlumbReadSheetProps {
  readonly title: string;
  readonly by: PlumbRead['by'];
  /** How the level was read last: a vial's marks stay what they are worth. */
  readonly usual: PlumbRead | null;
  readonly units: Units;
  /** Asks back where the reading is hard to believe. */
  readonly check: (read: PlumbRead) => string | null;
  readonly onRead: (read: PlumbRead) => unknown;
  readonly onGap: () => void;
  readonly onClose: () => void;
}

/** A lean beyond this is no post, but another angle that was read. */
const MOST_DEGREES = 45;
const MOST_MARKS = 20;

/** What a mark is worth is told in millimetres in a metre, or in inches in a foot. */
const PER = {
  metric: { times: 1000, suffix: 'mm in 1 m' },
  inch: { times: 12, suffix: '″ in 1 ft' },
} as const;
const LEAST_MARK = 0.0001;
const MOST_MARK = 0.2;

/** A lean as the level itself tells it: degrees, or how far the bubble stands off the middle. */
export function PlumbReadSheet(props: PlumbReadSheetProps) {
  const { title, by, usual, units, check, onRead, onGap, onClose } = props;
  const [amount, setAmount] = useState<number | null>(null);
  const [perMark, setPerMark] = useState(usual?.by === 'bubble' ? usual.perMark : null);
  const [doubt, setDoubt] = useState<string | null>(null);
  const read = readOf(by, amount, perMark);
  const finish = () => {
    if (!read) return;
    const asked = doubt === null ? check(read) : null;
    if (asked) setDoubt(asked);
    else void onRead(read);
  };
  return (
    <Sheet
      title={title}
      onClose={onClose}
      actions={
        <ButtonRow>
          {doubt ? (
            <Button onPress={finish}>Keep it as read</Button>
          ) : (
            <Button onPress={onGap}>As a gap</Button>
          )}
          <Button kind="main" disabled={read === null} onPress={doubt ? () => setDoubt(null) : finish}>
            {doubt ? 'Read it again' : 'Log it'}
          </Button>
        </ButtonRow>
      }
    >
      {doubt && (
        <p class="keypad-question" role="alert">
          {unbroken(doubt)}
        </p>
      )}
      {by === 'degrees' ? (
        <NumberField
          label="Lean off plumb"
          hint="To a tenth, as the level shows it. A dial in whole degrees is too coarse: read the gap."
          value={amount}
          min={0}
          max={MOST_DEGREES}
          suffix="°"
          onChange={setAmount}
        />
      ) : (
        <BubbleFields {...{ amount, perMark, units }} onAmount={setAmount} onPerMark={setPerMark} />
      )}
    </Sheet>
  );
}

interface BubbleFieldsProps {
  readonly amount: number | null;
  readonly perMark: number | null;
  readonly units: Units;
  readonly onAmount: (marks: number) => void;
  readonly onPerMark: (ratio: number) => void;
}

function BubbleFields({ amount, perMark, units, onAmount, onPerMark }: BubbleFieldsProps) {
  const { times, suffix } = PER[isMetric(units) ? 'metric' : 'inch'];
  return (
    <>
      <NumberField
        label="Bubble off the middle"
        hint="To a quarter of the way between two marks."
        value={amount}
        min={0}
        max={MOST_MARKS}
        suffix="marks"
        onChange={onAmount}
      />
      <NumberField
        label="One mark is worth"
        hint="As the maker says; on many levels the outer pair stands for 2 %, which is 20 mm in 1 m or 1/4″ in 1 ft."
        value={perMark === null ? null : Math.round(perMark * times * 1000) / 1000}
        min={LEAST_MARK * times}
        max={MOST_MARK * times}
        suffix={suffix}
        onChange={(shown) => onPerMark(shown / times)}
      />
    </>
  );
}

/** Null while it is not whole, or comes to more than 45°. */
function readOf(by: PlumbRead['by'], amount: number | null, perMark: number | null): PlumbRead | null {
  if (amount === null) return null;
  if (by === 'degrees') return { by, degrees: amount };
  return perMark === null || amount * perMark > 1 ? null : { by, marks: amount, perMark };
}
