import { useMemo, useState } from 'preact/hooks';
import { viewOf } from '../../../judge/view.ts';
import { Button } from '../../../ui/index.ts';
import { useJobBook } from '../../job-book.ts';
import { StringSheet } from './string-sheet.tsx';
import { stringsOf } from './strings-of.ts';
import { StringsSheet } from './strings-sheet.tsx';
import { TiesSheet } from './ties-sheet.tsx';
import { WayBackSheet } from './way-back-sheet.tsx';

/** What is open of the strings and the ways back. */
export type OpenStrings =
  | { readonly at: 'list' }
  | { readonly at: 'string'; readonly label: string }
  | { readonly at: 'ties'; readonly hole: string }
  | { readonly at: 'back'; readonly hole: string | null };

export interface StringsProps {
  /** The hole at hand. */
  readonly hole: string | null;
}

/** Opens the strings, the ties of every hole, and the way back to a centre. */
export function StringsButton({ hole }: StringsProps) {
  const [open, setOpen] = useState<OpenStrings | null>(null);
  return (
    <>
      <Button onPress={() => setOpen({ at: 'list' })}>Strings and ties</Button>
      {open && <OpenSheet hole={hole} open={open} onOpen={setOpen} />}
    </>
  );
}

/** Straight to the way back: for a hole that is dug, whose stake is gone. */
export function WayBackButton({ hole }: StringsProps) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onPress={() => setOpen(true)}>Find a centre again</Button>
      {open && (
        <OpenSheet
          hole={hole}
          open={{ at: 'back', hole }}
          onOpen={(next) => setOpen(next !== null && next.at === 'back')}
        />
      )}
    </>
  );
}

interface OpenSheetProps extends StringsProps {
  readonly open: OpenStrings;
  readonly onOpen: (open: OpenStrings | null) => void;
}

/** The strings are worked out only once they are wanted. */
function OpenSheet({ hole, open, onOpen }: OpenSheetProps) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  const strings = useMemo(() => stringsOf(situation), [situation]);
  if (!view || !strings) return null;
  const list = () => onOpen({ at: 'list' });
  switch (open.at) {
    case 'list':
      return <StringsSheet {...{ view, strings, hole, onOpen }} onClose={() => onOpen(null)} />;
    case 'string': {
      const string = strings.plan.strings.find(({ label }) => label === open.label);
      return string ? <StringSheet {...{ view, strings, string }} onClose={list} /> : null;
    }
    case 'ties':
      return <TiesSheet {...{ view, strings }} hole={open.hole} onOpen={onOpen} onClose={list} />;
    case 'back':
      return <WayBackSheet view={view} hole={open.hole} onClose={list} />;
  }
}
