import { useState } from 'preact/hooks';
import type { Thing, Touch } from '../../job/entry-schema.ts';
import type { Length } from '../../job/length.ts';
import { endName, thingName } from '../../job/words.ts';
import { capital } from '../../judge/words.ts';
import { Button, ChoiceField, Sheet } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { useReading } from '../set/use-reading.tsx';
import { tapeLogged } from '../tape-logged.ts';
import { TapedKeypad } from '../taped-keypad.tsx';
import {
  type OffString,
  offsetDoubt,
  type StringSide,
  stationDoubt,
  stringPrediction,
} from './string-belief.ts';
import { StringEndsSheet } from './string-ends-sheet.tsx';
import { type StringEnds, touchChoices } from './string-things.ts';

export interface StringFlowProps {
  readonly thing: Thing;
  /** Called once it is on disk, or when the user turns back. */
  readonly onClose: () => void;
}

type Measured = 'both' | 'station' | 'offset';

interface What {
  readonly touch: Touch;
  readonly side: StringSide;
  readonly measured: Measured;
}

/** Takes what was measured off a string: which string, of what, along it and square off it; logs it as one entry. */
export function StringFlow({ thing, onClose }: StringFlowProps) {
  const { situation } = useJobBook();
  const { save, notSaved } = useReading(onClose);
  const [ends, setEnds] = useState<StringEnds | null>(null);
  const [what, setWhat] = useState<What | null>(null);
  const [station, setStation] = useState<Length | null>(null);
  const { plan } = situation;
  if (!plan) return null;
  if (notSaved) return notSaved;
  if (!ends) return <StringEndsSheet of={thing} onPick={setEnds} onClose={onClose} />;
  if (!what) return <WhatSheet thing={thing} ends={ends} onDone={setWhat} onClose={() => setEnds(null)} />;
  const off: OffString = { ...ends, of: { thing, touch: what.touch } };
  const { side, measured } = what;
  const expected = stringPrediction(situation, off);
  const [begin, end] = [ends.from, ends.to].map((one) => thingName(one, plan));
  const name = endName(off.of, plan);
  const log = (more: { readonly station?: Length; readonly offset?: Length }) =>
    void save({ kind: 'offset', ...off, ...more, side, ...tapeLogged(situation.inHand) });
  const bounds = { max: plan.instruments.tapeLength.m, maxName: 'the tape’s length' } as const;
  if (measured !== 'offset' && !station)
    return (
      <TapedKeypad
        title={`Along the string, ${begin} to ${name}`}
        units={plan.units}
        hint={`From ${begin} along the string towards ${end}, as far as the mark that a square puts across from it.`}
        {...(expected ? { expected: expected.station.reading } : {})}
        bounds={bounds}
        check={(m) =>
          stationDoubt(situation, off, m) ?? (side === 'on' ? offsetDoubt(situation, off, side, 0) : null)
        }
        onDone={(length) => {
          if (measured === 'station' || side === 'on') log({ station: length });
          else setStation(length);
        }}
        onClose={() => setWhat(null)}
      />
    );
  return (
    <TapedKeypad
      title={`Square off the string, ${name}`}
      units={plan.units}
      hint={`Square off the string, to its ${side} as you walk from ${begin} to ${end}.`}
      {...(expected ? { expected: Math.abs(expected.offset.reading) } : {})}
      bounds={bounds}
      check={(m) => offsetDoubt(situation, off, side, m)}
      onDone={(offset) => log({ ...(station ? { station } : {}), offset })}
      onClose={() => (station ? setStation(null) : setWhat(null))}
    />
  );
}

const MEASURED = [
  { value: 'both', label: 'Along it and square off it' },
  { value: 'station', label: 'Only along it' },
  { value: 'offset', label: 'Only square off it' },
] as const;

interface WhatSheetProps {
  readonly thing: Thing;
  readonly ends: StringEnds;
  readonly onDone: (what: What) => void;
  readonly onClose: () => void;
}

/** On which side of the string it is, where it was touched, and what was measured. */
function WhatSheet({ thing, ends, onDone, onClose }: WhatSheetProps) {
  const { situation } = useJobBook();
  const touches = touchChoices(situation, thing);
  const [touched, setTouched] = useState(touches[0]?.words ?? '');
  const [measured, setMeasured] = useState<Measured>('both');
  const touch = touches.find(({ words }) => words === touched)?.touch;
  const [begin, end] = [ends.from, ends.to].map((one) => thingName(one, situation.plan));
  const round = touch?.at === 'near-side';
  const pick = (side: StringSide) => touch && onDone({ touch, side, measured });
  return (
    <Sheet title={`${capital(thingName(thing, situation.plan))} off the string`} onClose={onClose}>
      {touches.length > 1 && (
        <ChoiceField
          label="Measured to"
          value={touched}
          choices={touches.map(({ words }) => ({ value: words, label: words }))}
          onChange={setTouched}
        />
      )}
      <ChoiceField label="Measured" value={measured} choices={MEASURED} onChange={setMeasured} />
      <p>
        Walking along the string from {begin} to {end}, it is
      </p>
      <Button onPress={() => pick('left')}>On my left</Button>
      <Button onPress={() => pick('right')}>On my right</Button>
      {!round && measured !== 'offset' && <Button onPress={() => pick('on')}>On the string</Button>}
    </Sheet>
  );
}
