import { quantitiesOf } from '../../judge/supplies.ts';
import type { JobView } from '../../judge/view.ts';
import { usedWords } from './buy-words.ts';

/** Bags used against what was reckoned, while pouring goes on. Nothing before the first pour. */
export function BagsSoFar({ view }: { readonly view: JobView }) {
  const words = usedWords(quantitiesOf(view));
  return words === '' ? null : <p>{words}</p>;
}
