import { useState } from 'preact/hooks';
import type { Thing } from '../../job/entry-schema.ts';
import { thingKey } from '../../job/log.ts';
import { thingName } from '../../job/words.ts';
import { capital } from '../../judge/words.ts';
import { Button, Sheet } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { type StringEnds, stringKey, stringThings, usualStrings } from './string-things.ts';

export interface StringEndsSheetProps {
  /** What is measured off it. */
  readonly of: Thing;
  readonly onPick: (ends: StringEnds) => void;
  readonly onClose: () => void;
}

/** Which string: one tap for the last one and for the line A–B; else its two ends, one after the other. */
export function StringEndsSheet({ of, onPick, onClose }: StringEndsSheetProps) {
  const { situation } = useJobBook();
  const [choosing, setChoosing] = useState(false);
  const [from, setFrom] = useState<Thing | null>(null);
  const name = (thing: Thing) => thingName(thing, situation.plan);
  const things = stringThings(situation, of);
  const usual = usualStrings(situation, of);
  if (choosing || usual.length === 0)
    return (
      <Sheet
        title={from ? `The string from ${name(from)} to` : 'The string begins at'}
        onClose={() => (from ? setFrom(null) : choosing ? setChoosing(false) : onClose())}
      >
        {things.length < 2 && <p>A string needs two things that are measured already. Pull to them first.</p>}
        {things
          .filter((thing) => !from || thingKey(thing) !== thingKey(from))
          .map((thing) => (
            <Button
              key={thingKey(thing)}
              onPress={() => (from ? onPick({ from, to: thing }) : setFrom(thing))}
            >
              {capital(name(thing))}
            </Button>
          ))}
      </Sheet>
    );
  return (
    <Sheet title="Measured off which string?" onClose={onClose}>
      {usual.map((ends) => (
        <Button key={stringKey(ends)} onPress={() => onPick(ends)}>
          From {name(ends.from)} to {name(ends.to)}
        </Button>
      ))}
      <Button onPress={() => setChoosing(true)}>Another string</Button>
    </Sheet>
  );
}
