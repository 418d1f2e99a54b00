import { useRef, useState } from 'preact/hooks';
import type { PlumbRead } from '../../job/entry-schema.ts';
import { BoxesContext, Button, ButtonRow, NumberField, Problem, Sheet, useBoxes } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { isMetric, ok, type Result, refuse, type Units } from '../../units/index.ts';

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

const LABELS = {
  degrees: 'Lean off plumb',
  bubble: 'Bubble off the middle',
  perMark: 'One mark is worth',
} as const;

/** What a mark is worth is told in millimetres in a metre, or in inches in a foot. */
const PER = {
  metric: { times: 1000, suffix: 'mm in 1 m' },
  inch: { times: 12, suffix: '″ in 1 ft' },
} as const;
const LEAST_MARK = 0.0001;
const MOST_MARK = 0.2;

/** What stands in the boxes, as far as it is any good. */
interface Typed {
  readonly amount: number | null;
  readonly perMark: number | null;
}

/** A lean as the level itself tells it: degrees, or how far the bubble stands off the middle. */
export function PlumbReadSheet(props: PlumbReadSheetProps) {
  const { title, by, usual, units, check, onRead, onGap, onClose } = props;
  const boxes = useBoxes();
  const [typed, setTyped] = useState<Typed>({
    amount: null,
    perMark: usual?.by === 'bubble' ? usual.perMark : null,
  });
  // Read at the tap: a box may pass on what stands in it no sooner.
  const now = useRef(typed);
  const [told, setTold] = useState<string | null>(null);
  const [doubt, setDoubt] = useState<{ readonly text: string; readonly of: Typed } | null>(null);
  const put = (change: Partial<Typed>) => {
    now.current = { ...now.current, ...change };
    setTyped(now.current);
    setTold(null);
    setDoubt(null);
  };
  const finish = () => {
    if (boxes.commit() !== null) return setDoubt(null);
    const read = readOf(by, now.current);
    if (!read.ok) return setTold(read.problem.text);
    const text = doubt?.of === now.current ? null : check(read.value);
    if (text) setDoubt({ text, of: now.current });
    else void onRead(read.value);
  };
  return (
    <BoxesContext.Provider value={boxes.scope}>
      <Sheet
        title={title}
        onClose={onClose}
        actions={
          <>
            {told !== null && <Problem text={told} />}
            <ButtonRow>
              {doubt ? (
                <Button onPress={finish}>Keep it as read</Button>
              ) : (
                <Button onPress={onGap}>As a gap</Button>
              )}
              <Button kind="main" onPress={doubt ? () => setDoubt(null) : finish}>
                {doubt ? 'Read it again' : 'Log it'}
              </Button>
            </ButtonRow>
          </>
        }
      >
        {doubt && (
          <p class="keypad-question" role="alert">
            {unbroken(doubt.text)}
          </p>
        )}
        <PlumbReadFields by={by} typed={typed} units={units} put={put} />
      </Sheet>
    </BoxesContext.Provider>
  );
}

interface PlumbReadFieldsProps extends Pick<PlumbReadSheetProps, 'by' | 'units'> {
  readonly typed: Typed;
  readonly put: (change: Partial<Typed>) => void;
}

function PlumbReadFields({ by, typed, units, put }: PlumbReadFieldsProps) {
  if (by === 'bubble') return <BubbleFields typed={typed} units={units} put={put} />;
  return (
    <NumberField
      label={LABELS.degrees}
      hint="To a tenth, as the level shows it. A dial in whole degrees is too coarse: read the gap."
      value={typed.amount}
      min={0}
      max={MOST_DEGREES}
      suffix="°"
      onChange={(amount) => put({ amount })}
    />
  );
}

function BubbleFields({ typed, units, put }: Omit<PlumbReadFieldsProps, 'by'>) {
  const { amount, perMark } = typed;
  const { times, suffix } = PER[isMetric(units) ? 'metric' : 'inch'];
  return (
    <>
      <NumberField
        label={LABELS.bubble}
        hint="To a quarter of the way between two marks."
        value={amount}
        min={0}
        max={MOST_MARKS}
        suffix="marks"
        onChange={(marks) => put({ amount: marks })}
      />
      <NumberField
        label={LABELS.perMark}
        hint="As the maker says; on many levels the outer pair stands for 2 %, which is 20 mm in 1 m or 1/4″ in 1 ft."
        value={perMark === null ? null : Math.round(perMark * times * 1000) / 1000}
        min={LEAST_MARK * times}
        max={MOST_MARK * times}
        suffix={suffix}
        onChange={(shown) => put({ perMark: shown / times })}
      />
    </>
  );
}

/** What was read, once it is whole and no more than 45°. */
function readOf(by: PlumbRead['by'], { amount, perMark }: Typed): Result<PlumbRead> {
  const empty = (label: string) => refuse(label, `${label}: it is empty; type what the level shows.`);
  if (amount === null) return empty(LABELS[by]);
  if (by === 'degrees') return ok({ by, degrees: amount });
  if (perMark === null)
    return refuse(LABELS.perMark, `${LABELS.perMark}: it is empty; type what the maker says.`);
  if (amount * perMark <= 1) return ok({ by, marks: amount, perMark });
  return refuse(
    LABELS.bubble,
    `${LABELS.bubble}: so many marks come to a lean of more than ${MOST_DEGREES}°; count them again, or look up what one is worth.`,
  );
}
