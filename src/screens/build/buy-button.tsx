import { useMemo, useState } from 'preact/hooks';
import { viewOf } from '../../judge/view.ts';
import { Button } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { BuySheet } from './buy-sheet.tsx';

/** Opens what is to be bought. It is worked out only once it is wanted. */
export function BuyButton() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>To buy</Button>
      {open && <OpenBuy onClose={() => setOpen(false)} />}
    </>
  );
}

function OpenBuy({ onClose }: { readonly onClose: () => void }) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  return view && <BuySheet view={view} stands={view.plan} onClose={onClose} />;
}
