import { useState } from 'preact/hooks';
import type { Thing } from '../../job/entry-schema.ts';
import { isKind, thingKey } from '../../job/log.ts';
import { Button } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { LoggedEntry } from '../logged-entry.tsx';
import { More } from '../more.tsx';
import { useOpenPull } from '../open-pull.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { useLog } from '../use-log.ts';
import { StringFlow } from './string-flow.tsx';
import type { Stake } from './use-stake.ts';

export interface HoleMoreProps {
  readonly stake: Stake;
  readonly hole: string;
  readonly fromA: PullToRead;
  readonly fromB: PullToRead;
}

/** What else can be done at a hole's stake at any time: read a tape again, say that it was moved, strike a reading. */
export function HoleMore({ stake, hole, fromA, fromB }: HoleMoreProps) {
  const { situation } = useJobBook();
  const openPull = useOpenPull();
  const { log } = useLog();
  const [offString, setOffString] = useState(false);
  const thing: Thing = { kind: 'hole-stake', hole };
  if (!stake.state.present.stands(thing)) return null;
  const key = thingKey(thing);
  const logged = situation.entries.filter((entry) =>
    isKind(entry, 'offset')
      ? thingKey(entry.body.of.thing) === key
      : isKind(entry, 'pull')
        ? [entry.body.from, entry.body.to].some((end) => thingKey(end.thing) === key)
        : isKind(entry, 'stand') && thingKey(entry.body.thing) === key,
  );
  return (
    <More label={`More on stake ${hole}`}>
      <Button onPress={() => openPull(fromA)}>Read from A again</Button>
      <Button onPress={() => openPull(fromB)}>Read from B again</Button>
      <Button onPress={() => setOffString(true)}>Measured off a string</Button>
      <Button onPress={() => void log({ kind: 'stand', thing, event: 'moved' })}>This stake was moved</Button>
      <p>A stake that was moved is read anew: its pulls so far no longer count.</p>
      <ul aria-label={`Log of stake ${hole}`}>
        {logged.map((entry) => (
          <LoggedEntry key={entry.id} entry={entry} />
        ))}
      </ul>
      {offString && <StringFlow thing={thing} onClose={() => setOffString(false)} />}
    </More>
  );
}
