import { lengthsOf } from '../../judge/supplies.ts';
import type { JobView } from '../../judge/view.ts';
import { Caution } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { shortWords } from './buy-tables.ts';

/** Before concrete: posts that were bought too short. Nothing where none is, or no bought length is known. */
export function ShortPosts({ view }: { readonly view: JobView }) {
  if (!view.plan.supplies?.bought && !view.plan.supplies?.boughtFor) return null;
  const notPoured = lengthsOf(view).filter(({ hole }) => view.book.pours(hole).length === 0);
  const words = shortWords(view, notPoured);
  if (words === '') return null;
  return (
    <Caution title="too short">
      <p>{unbroken(words)}</p>
    </Caution>
  );
}
