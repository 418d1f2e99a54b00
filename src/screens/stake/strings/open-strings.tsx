import { useMemo } from 'preact/hooks';
import { viewOf } from '../../../judge/view.ts';
import { useJobBook } from '../../job-book.ts';
import { StringSheet } from './string-sheet.tsx';
import { stringsOf } from './strings-of.ts';
import type { OpenSheetProps } from './strings-props.ts';
import { StringsSheet } from './strings-sheet.tsx';
import { TiesSheet } from './ties-sheet.tsx';
import { WayBackSheet } from './way-back-sheet.tsx';

/** The strings are worked out only once they are wanted. */
export function OpenSheet({ hole, open, onOpen }: OpenSheetProps) {
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
