import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../../../ui/index.ts';
import { lazily } from '../../lazily.tsx';
import { Opening } from '../../opening.tsx';
import { part } from '../../part.ts';
import { OpenListContext, type OpenListProps, useOpenList } from './list-props.ts';

/** Loaded and worked out only once it is wanted. */
const OpenListSheet = lazily<OpenListProps>(
  part(async () => (await import('./open-list.tsx')).ListSheet),
  ({ onOpen }) => <Opening title="Pull list" onClose={() => onOpen(null)} />,
);

/** The list outlives the card that it was opened from: another order of the holes brings another card. */
export function ListScope({ children }: { readonly children: ComponentChildren }) {
  const [open, setOpen] = useState<OpenListProps['open'] | null>(null);
  return (
    <OpenListContext.Provider value={setOpen}>
      {children}
      {open && <OpenListSheet open={open} onOpen={setOpen} />}
    </OpenListContext.Provider>
  );
}

/** Opens every hole's tapes at once, and from there the sheet for paper. */
export function ListButton() {
  const openList = useOpenList();
  return <Button onPress={() => openList('list')}>Pull list, and sheet for paper</Button>;
}
