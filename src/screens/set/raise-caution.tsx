import { useMemo } from 'preact/hooks';
import { ladderWords, liftWords } from '../../judge/cautions.ts';
import { viewOf } from '../../judge/view.ts';
import { Caution } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';

/** Before a post is raised: what is above, what it weighs, and how its top is reached. */
export function RaiseCaution({ hole }: { readonly hole: string }) {
  const { situation } = useJobBook();
  const own = useMemo(() => {
    const view = viewOf(situation);
    return view ? [liftWords(view, hole), ladderWords(view, hole)].filter((each) => each !== '') : [];
  }, [situation, hole]);
  return (
    <Caution title="raising it">
      <ul class="points">
        <li>Look up first: keep well clear of overhead lines.</li>
        {own.map((each) => (
          <li key={each}>{unbroken(each)}</li>
        ))}
      </ul>
    </Caution>
  );
}
