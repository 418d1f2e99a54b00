import { type ComponentChildren, createContext } from 'preact';
import { useContext, useRef, useState } from 'preact/hooks';
import { Button } from '../../../ui/index.ts';
import { lazily } from '../../lazily.tsx';
import { More } from '../../more.tsx';
import { Opening } from '../../opening.tsx';
import { part } from '../../part.ts';
import { noDrafts, type OpenLay as Open, type OpenLayProps } from './lay-props.ts';

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
  const { current: drafts } = useRef(noDrafts());
  const close = () => setOpen(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Boundary, house, other lines</Button>
      {open && <OpenLay open="lines" drafts={drafts} onClose={close} onLaid={close} />}
    </>
  );
}

type Standing = Exclude<Open, 'lines'>;
const OpenLayContext = createContext<((open: Standing) => void) | null>(null);

interface LayScopeProps {
  /** The plan lies on what is there. */
  readonly onLaid: () => void;
  readonly children: ComponentChildren;
}

/**
 * A sheet that lays the plan, and what was typed into it, outlive the card that it was opened from: with the first entry that is
 * logged another card is next, and the disk may be full before the last.
 */
export function LayScope({ onLaid, children }: LayScopeProps) {
  const [open, setOpen] = useState<Standing | null>(null);
  const drafts = useRef(noDrafts());
  const laid = () => {
    drafts.current = noDrafts();
    setOpen(null);
    onLaid();
  };
  return (
    <OpenLayContext.Provider value={setOpen}>
      {children}
      {open && <OpenLay open={open} drafts={drafts.current} onClose={() => setOpen(null)} onLaid={laid} />}
    </OpenLayContext.Provider>
  );
}

/** What the ground brings: lines to keep off, and points or stakes that are there already. */
export function LayButtons() {
  const open = useContext(OpenLayContext);
  if (!open) throw new Error('LayButtons: no LayScope above this component');
  return (
    <>
      <LinesButton />
      <More label="Something stands already">
        <Button onPress={() => open('stakes')}>Two points are there, such as house corners</Button>
        <Button onPress={() => open('pegs')}>Two of the holes are staked</Button>
      </More>
    </>
  );
}
