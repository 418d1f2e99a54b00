import { Sheet } from '../ui/sheet.tsx';

/** Stands in the place of a sheet whose file is still on its way out of the cache. */
export function Opening({ title, onClose }: { readonly title: string; readonly onClose: () => void }) {
  return (
    <Sheet title={title} onClose={onClose}>
      <p>One moment…</p>
    </Sheet>
  );
}
