import { useState } from 'preact/hooks';
import { pullingWords } from '../job/pulling-words.ts';
import type { TapeInHand } from '../measure/index.ts';
import { Button } from '../ui/index.ts';
import type { Units } from '../units/index.ts';
import { useJobBook } from './job-book.ts';
import { TapeSheet } from './tape-sheet.tsx';

/** Which tape is in hand, and how it is pulled; a tap changes it. Nothing in a job that lists no tapes. */
export function TapeChoice() {
  const [open, setOpen] = useState(false);
  if (!useHasTapes()) return null;
  return (
    <>
      <TapeButton onPress={() => setOpen(true)} />
      {open && <TapeSheet onClose={() => setOpen(false)} />}
    </>
  );
}

export const useHasTapes = (): boolean => (useJobBook().situation.plan?.instruments.tapes ?? []).length > 0;

/** `Tape Red, 72 °F: change it`. */
export function TapeButton({ onPress }: { readonly onPress: () => void }) {
  const { situation } = useJobBook();
  const { plan, inHand } = situation;
  return plan && <Button onPress={onPress}>{handWords(inHand, plan.units)}. Another?</Button>;
}

function handWords(inHand: TapeInHand | null, units: Units): string {
  if (!inHand) return 'A tape that needs no correction';
  return [`Tape ${inHand.tape.label}`, ...pullingWords(inHand.pulling, units)].join(', ');
}
