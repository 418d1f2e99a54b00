import { type Cuts, type CutTo, cutsFor } from '../build/cuts.ts';
import { topKey } from './level.ts';
import { type JobView, readingsOfTheBook } from './view.ts';

/** Where every measured top is cut. Readings that are believed wrong are left out; piers are not cut. */
export function cutMarks(view: JobView, to: CutTo): Cuts {
  const [best] = readingsOfTheBook(view);
  const tops = best.holes
    .filter(({ section }) => section.kind === 'post')
    .flatMap(({ label, top }) => {
      const key = topKey(label);
      const found = best.heights.get(key);
      return found ? [{ hole: label, key, height: found.height, sigma: found.sigma, target: top }] : [];
    });
  return cutsFor(tops, best.measured.levelling.tops, to);
}
