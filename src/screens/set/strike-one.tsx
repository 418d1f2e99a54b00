import { useState } from 'preact/hooks';
import type { EntryOf } from '../../job/entry-schema.ts';
import { ofKind, thingKey } from '../../job/log.ts';
import { describeEntry } from '../../job/words.ts';
import type { JobView } from '../../judge/view.ts';
import { Button, Sheet, StrikeForm } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';

export interface StrikeOneProps {
  readonly view: JobView;
  /** One of the pulls that do not agree. */
  readonly doubted: EntryOf<'pull'>;
  readonly onClose: () => void;
}

/** Two readings of one line that do not agree: shows both, and strikes the one that is chosen. */
export function StrikeOne({ view, doubted, onClose }: StrikeOneProps) {
  const { strike } = useJobBook();
  const [chosen, setChosen] = useState<EntryOf<'pull'> | null>(null);
  const line = lineOf(doubted);
  const same = ofKind(view.entries, 'pull').filter((entry) => lineOf(entry) === line);
  if (chosen)
    return (
      <StrikeForm
        what={describeEntry(chosen, view.plan)}
        onClose={() => setChosen(null)}
        onStrike={async (reason) => {
          if (await strike(chosen.id, reason)) onClose();
        }}
      />
    );
  return (
    <Sheet title="Which one is wrong?" onClose={onClose}>
      <p>The one that is struck stays in the log and no longer counts.</p>
      {same.map((entry) => (
        <Button key={entry.id} kind="danger" onPress={() => setChosen(entry)}>
          {describeEntry(entry, view.plan)}
        </Button>
      ))}
    </Sheet>
  );
}

/** The same for both ways round. */
const lineOf = ({ body }: EntryOf<'pull'>): string =>
  [thingKey(body.from.thing), thingKey(body.to.thing)].sort().join(' ');
