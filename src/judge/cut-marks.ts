import { type Cuts, type CutTo, cutsFor, type MeasuredTop } from '../build/cuts.ts';
import { frameOutline } from '../build/frame-outline.ts';
import { type Seats, seatsFor } from '../build/seats.ts';
import { topKey } from './level.ts';
import { type JobView, readingsOfTheBook } from './view.ts';

/** Where every measured top is cut. Readings that are believed wrong are left out; piers are not cut. */
export function cutMarks(view: JobView, to: CutTo): Cuts {
  const [best] = readingsOfTheBook(view);
  return cutsFor(topsIn(best), best.measured.levelling.tops, to);
}

/** Where joists or beams lie on the tops as they stand now, by the same readings. */
export function seatsAsBuilt(view: JobView): Seats {
  const [best] = readingsOfTheBook(view);
  const { sides } = frameOutline(view.plan.shape, view.holes);
  return seatsFor(topsIn(best), best.measured.levelling.tops, view.plan.deck?.seat?.m ?? 0, sides);
}

const topsIn = ({ holes, heights }: JobView): MeasuredTop[] =>
  holes
    .filter(({ section }) => section.kind === 'post')
    .flatMap(({ label, top }) => {
      const key = topKey(label);
      const found = heights.get(key);
      return found ? [{ hole: label, key, height: found.height, sigma: found.sigma, target: top }] : [];
    });
