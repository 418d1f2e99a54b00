import { useMemo } from 'preact/hooks';
import { guardWords, tallWords } from '../../judge/cautions.ts';
import { viewOf } from '../../judge/view.ts';
import { Caution } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { useJobBook } from '../job-book.ts';

/** What the heights of this plan bring with them, and who decides. */
export function PlanCautions() {
  const { situation } = useJobBook();
  const words = useMemo(() => {
    const view = viewOf(situation);
    return view ? [guardWords(view), tallWords(view)].filter((each) => each !== '') : [];
  }, [situation]);
  if (words.length === 0) return null;
  return (
    <Caution title="height above the ground">
      {words.map((each) => (
        <p key={each}>{unbroken(each)}</p>
      ))}
    </Caution>
  );
}
