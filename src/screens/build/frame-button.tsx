import { useState } from 'preact/hooks';
import { Button } from '../../ui/index.ts';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';

const OpenFrame = lazily<{ readonly onClose: () => void }>(
  part(async () => (await import('./open-frame.tsx')).OpenFrame),
  ({ onClose }) => <Opening title="Frame and cuts" onClose={onClose} />,
);

/** Opens what the frame is cut to. It is loaded, and worked out, only once it is wanted. */
export function FrameButton() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Frame and cuts</Button>
      {open && <OpenFrame onClose={() => setOpen(false)} />}
    </>
  );
}
