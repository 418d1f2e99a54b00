import { useMemo } from 'preact/hooks';
import { type JobView, readingsOfTheBook, viewOf } from '../../judge/view.ts';
import { useJobBook } from '../job-book.ts';

/** What the Set phase works from. */
export interface SetBook {
  readonly view: JobView;
  /** The same without the readings that stand out as misread. */
  readonly best: JobView;
}

export const setBookOf = (view: JobView): SetBook => ({ view, best: readingsOfTheBook(view)[0] });

/** Worked out once for each change of the log; null before there is a plan. */
export function useSetBook(): SetBook | null {
  const { situation } = useJobBook();
  return useMemo(() => {
    const view = viewOf(situation);
    return view && setBookOf(view);
  }, [situation]);
}
