import { useState } from 'preact/hooks';
import { Button } from '../../../ui/index.ts';
import { lazily } from '../../lazily.tsx';
import { More } from '../../more.tsx';
import { Opening } from '../../opening.tsx';
import { part } from '../../part.ts';
import type { OpenLay as Open, OpenLayProps } from './lay-props.ts';

const TITLES: Record<Open, string> = {
  lines: 'Lines on the ground',
  stakes: 'Two points are there',
  pegs: 'Two holes are staked',
};

const OpenLay = lazily<OpenLayProps>(
  part(async () => (await import('./open-lay.tsx')).OpenLay),
  ({ open, onClose }) => <Opening title={TITLES[open]} onClose={onClose} />,
);

/** Opens the lines on the ground: a boundary, a house, where no stake can stand. */
export function LinesButton() {
  const [open, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Boundary, house, no-go ground</Button>
      {open && <OpenLay open="lines" onClose={close} onLaid={close} />}
    </>
  );
}

/** What the ground brings: lines to keep off, and points or stakes that are there already. */
export function LayButtons({ onLaid }: { readonly onLaid: () => void }) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <LinesButton />
      <More label="Something stands already">
        <Button onPress={() => setOpen('stakes')}>Two points are there, such as house corners</Button>
        <Button onPress={() => setOpen('pegs')}>Two of the holes are staked</Button>
      </More>
      {open && (
        <OpenLay
          open={open}
          onClose={close}
          onLaid={() => {
            close();
            onLaid();
          }}
        />
      )}
    </>
  );
}
