import { useMemo } from 'preact/hooks';
import { asBuilt } from '../../judge/as-built.ts';
import { viewOf } from '../../judge/view.ts';
import { Sheet } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { FrameSheet } from './frame-sheet.tsx';

/** What the frame is cut to. */
export function OpenFrame({ onClose }: { readonly onClose: () => void }) {
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
