import { nextReferenceLabel } from '../../stakeout/index.ts';
import { Button } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { More } from '../more.tsx';
import { useOpenPull } from '../open-pull.ts';
import { useLog } from '../use-log.ts';
import { LinesButton } from './lay/lay-buttons.tsx';
import { useMovePlaces } from './move-places.ts';
import { baselinePull } from './stake-pulls.ts';

/** What is seldom wanted and must always be in reach: the line A–B and its two stakes. */
export function LineMore() {
  const { situation } = useJobBook();
  const openPull = useOpenPull();
  const movePlaces = useMovePlaces();
  const { log } = useLog();
  const { laid } = situation;
  if (!laid) return null;
  const taken = laid.references.map(({ thing }) => thing.label);
  const drivenAnew = (label: 'A' | 'B') =>
    void log({ kind: 'stand', thing: { kind: 'stake', label }, event: 'moved' });
  return (
    <More label="The line A–B">
      <p>Pull A–B again at the start of each day, and whenever a stake may have been knocked.</p>
      <Button onPress={() => openPull(baselinePull(laid.baseline))}>Pull A–B again</Button>
      <Button onPress={() => drivenAnew('A')}>A was driven anew</Button>
      <Button onPress={() => drivenAnew('B')}>B was driven anew</Button>
      <p>A stake that is driven anew is a new stake: pulls made to it before no longer count.</p>
      <Button onPress={() => movePlaces('A and B')}>Move A and B</Button>
      <p>
        A further stake guards every hole, and tells which stake was knocked when A–B does not fit any more.
      </p>
      <Button onPress={() => movePlaces('further')}>Add stake {nextReferenceLabel('stake', taken)}</Button>
      <LinesButton />
    </More>
  );
}
