import { useState } from 'preact/hooks';
import type { Entry } from '../job/entry-schema.ts';
import { describeEntry } from '../job/words.ts';
import { Button, ButtonRow, StrikeForm } from '../ui/index.ts';
import { useJobBook } from './job-book.ts';
import { useOpenPull } from './open-pull.ts';

/** One entry of the log in words, with the way to strike it; a pull can be made again. */
export function LoggedEntry({ entry }: { readonly entry: Entry }) {
  const { situation, strike } = useJobBook();
  const openPull = useOpenPull();
  const [striking, setStriking] = useState(false);
  const what = describeEntry(entry, situation.plan);
  const { body } = entry;
  return (
    <li class="logged">
      <p>{what}</p>
      <ButtonRow>
        <Button label={`Strike: ${what}`} onPress={() => setStriking(true)}>
          Strike
        </Button>
        {body.kind === 'pull' && (
          <Button label={`Pull again: ${what}`} onPress={() => openPull({ from: body.from, to: body.to })}>
            Pull again
          </Button>
        )}
      </ButtonRow>
      {striking && (
        <StrikeForm
          what={what}
          onStrike={async (reason) => {
            if (await strike(entry.id, reason)) setStriking(false);
          }}
          onClose={() => setStriking(false)}
        />
      )}
    </li>
  );
}
