import { useMemo, useState } from 'preact/hooks';
import { asBuilt } from '../../judge/as-built.ts';
import { viewOf } from '../../judge/view.ts';
import { Button, Sheet } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { FrameSheet } from './frame-sheet.tsx';

/** Opens what the frame is cut to. It is worked out only once it is wanted. */
export function FrameButton() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Frame and cuts</Button>
      {open && <OpenFrame onClose={() => setOpen(false)} />}
    </>
  );
}

function OpenFrame({ onClose }: { readonly onClose: () => void }) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  const built = useMemo(() => view && asBuilt(view), [view]);
  if (view && built) return <FrameSheet view={view} built={built} onClose={onClose} />;
  return (
    <Sheet title="Frame and cuts" onClose={onClose}>
      <p>First the plan, and where A and B stand: until then no post has a place to cut to.</p>
    </Sheet>
  );
}
