import { useState } from 'preact/hooks';
import { Button } from '../../../ui/index.ts';
import { lazily } from '../../lazily.tsx';
import { Opening } from '../../opening.tsx';
import { part } from '../../part.ts';
import type { OpenSheetProps, OpenStrings, StringsProps } from './strings-props.ts';

const OpenSheet = lazily<OpenSheetProps>(
  part(async () => (await import('./open-strings.tsx')).OpenSheet),
  ({ open, onOpen }) => (
    <Opening
      title={open.at === 'back' ? 'Find a centre again' : 'Strings and ties'}
      onClose={() => onOpen(null)}
    />
  ),
);

/** Opens the strings, the ties of every hole, and the way back to a centre. */
export function StringsButton({ hole }: StringsProps) {
  const [open, setOpen] = useState<OpenStrings | null>(null);
  return (
    <>
      <Button onPress={() => setOpen({ at: 'list' })}>Strings and ties</Button>
      {open && <OpenSheet hole={hole} open={open} onOpen={setOpen} />}
    </>
  );
}

/** Straight to the way back: for a hole that is dug, whose stake is gone. */
export function WayBackButton({ hole }: StringsProps) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Find a centre again</Button>
      {open && (
        <OpenSheet
          hole={hole}
          open={{ at: 'back', hole }}
          onOpen={(next) => setOpen(next !== null && next.at === 'back')}
        />
      )}
    </>
  );
}
