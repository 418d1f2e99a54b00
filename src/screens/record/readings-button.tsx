import { useState } from 'preact/hooks';
import { Button } from '../../ui/index.ts';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';

const ReadingsSheet = lazily<{ readonly onClose: () => void }>(
  part(async () => (await import('./readings-sheet.tsx')).ReadingsSheet),
  ({ onClose }) => <Opening title="Every reading" onClose={onClose} />,
);

/** Opens what the adjustment says of every reading; loaded, and put into words, only once it is wanted. */
export function ReadingsButton() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Every reading</Button>
      {open && <ReadingsSheet onClose={() => setOpen(false)} />}
    </>
  );
}
