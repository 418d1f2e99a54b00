import { useState } from 'preact/hooks';
import { Button } from '../../../ui/index.ts';
import { lazily } from '../../lazily.tsx';
import { Opening } from '../../opening.tsx';
import { part } from '../../part.ts';
import type { OpenList, OpenListProps } from './list-props.ts';

const OpenSheets = lazily<OpenListProps>(
  part(async () => (await import('./open-list.tsx')).OpenListSheet),
  ({ onOpen }) => <Opening title="Pull list" onClose={() => onOpen(null)} />,
);

/** Opens every hole's tapes at once, and from there the sheet for paper. */
export function ListButton() {
  const [open, setOpen] = useState<OpenList | null>(null);
  return (
    <>
      <Button onPress={() => setOpen('list')}>Pull list, and sheet for paper</Button>
      {open && <OpenSheets open={open} onOpen={setOpen} />}
    </>
  );
}
