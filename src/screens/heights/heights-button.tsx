import { useState } from 'preact/hooks';
import { Button } from '../../ui/index.ts';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';
import type { HeightsProps, OpenHeightsProps, OpenOfHeights } from './heights-props.ts';

/** Loaded once it is wanted: most of the time nobody asks for heights. */
const OpenHeights = lazily<OpenHeightsProps>(
  part(async () => (await import('./open-heights.tsx')).OpenHeights),
  ({ onOpen }) => <Opening title="Heights and the level" onClose={() => onOpen(null)} />,
);

/** Opens everything about heights: what is known, and every way to read one, before any post stands too. */
export function HeightsButton(props: HeightsProps) {
  const [open, setOpen] = useState<OpenOfHeights | null>(null);
  return (
    <>
      <Button onPress={() => setOpen('list')}>Heights and the level</Button>
      {open && <OpenHeights {...props} open={open} onOpen={setOpen} />}
    </>
  );
}
