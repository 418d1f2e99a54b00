import { useState } from 'preact/hooks';
import { Button } from '../../ui/index.ts';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';

const OpenBuy = lazily<{ readonly onClose: () => void }>(
  part(async () => (await import('./open-buy.tsx')).OpenBuy),
  ({ onClose }) => <Opening title="To buy" onClose={onClose} />,
);

/** Opens what is to be bought. It is loaded, and worked out, only once it is wanted. */
export function BuyButton() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>To buy</Button>
      {open && <OpenBuy onClose={() => setOpen(false)} />}
    </>
  );
}
