import { useState } from 'preact/hooks';
import { describeEntry } from '../../job/words.ts';
import { Button, StrikeForm } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import type { LoggedPull } from './present.ts';

/** The main action where a reading is shown wrong: strike it, with a reason. */
export function StrikeButton({ entry, words }: { readonly entry: LoggedPull; readonly words: string }) {
  const { situation, strike } = useJobBook();
  const [striking, setStriking] = useState(false);
  return (
    <>
      <Button kind="main" onPress={() => setStriking(true)}>
        {words}
      </Button>
      {striking && (
        <StrikeForm
          what={describeEntry(entry, situation.plan)}
          onStrike={async (reason) => {
            if (await strike(entry.id, reason)) setStriking(false);
          }}
          onClose={() => setStriking(false)}
        />
      )}
    </>
  );
}
