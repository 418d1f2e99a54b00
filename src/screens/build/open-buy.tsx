import { useMemo } from 'preact/hooks';
import { viewOf } from '../../judge/view.ts';
import { useJobBook } from '../job-book.ts';
import { BuySheet } from './buy-sheet.tsx';

/** What is to be bought. */
export function OpenBuy({ onClose }: { readonly onClose: () => void }) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  return view && <BuySheet view={view} stands={view.plan} onClose={onClose} />;
}
