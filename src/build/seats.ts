import { type TopsCovariance, variancesAgainstMean } from '../measure/height-tops.ts';
import type { MeasuredTop } from './cuts.ts';
import type { Figure } from './figure.ts';

/** Where a beam lies on one post, metres. */
export interface Seat {
  readonly hole: string;
  /** Above the benchmark, as the top stands now. */
  readonly height: number;
  readonly sigma: number;
  /** What is packed under the beam so that all lie as the plan has them to each other, and none needs a cut. */
  readonly pack: Pick<Figure, 'is' | 'sigma'>;
}

/** How a beam lies from one post to the next. */
export interface BeamFall {
  readonly from: string;
  readonly to: string;
  /** From the first down to the second, metres; negative where it rises. */
  readonly fall: Figure;
}

export interface Seats {
  readonly seats: readonly Seat[];
  readonly falls: readonly BeamFall[];
  /** The post that stands furthest above its height in the plan: nothing is packed on it. Null without a measured top. */
  readonly highest: string | null;
}

/**
 * Seats of joists or beams on tops that are not cut, or not cut yet. How seats lie to each other is known better than how they
 * lie to the benchmark: what their readings share falls out.
 *
 * @param seat from a post's top down to its seat, metres
 * @param sides pairs of posts that a beam joins; those without a measured top are left out
 */
export function seatsFor(
  tops: readonly MeasuredTop[],
  together: TopsCovariance,
  seat: number,
  sides: readonly (readonly [string, string])[],
): Seats {
  const byHole = new Map(tops.map((top) => [top.hole, top]));
  const highest = tops.reduce<MeasuredTop | null>(
    (best, top) => (best === null || above(top) > above(best) ? top : best),
    null,
  );
  const apart = (one: MeasuredTop, other: MeasuredTop) =>
    Math.sqrt(variancesAgainstMean(together, [one.key]).get(other.key) ?? one.sigma ** 2 + other.sigma ** 2);
  return {
    seats: tops.map((top) => ({
      hole: top.hole,
      height: top.height - seat,
      sigma: top.sigma,
      pack: { is: above(highest!) - above(top), sigma: apart(highest!, top) },
    })),
    falls: sides.flatMap(([from, to]) => {
      const [p, q] = [byHole.get(from), byHole.get(to)];
      if (!p || !q) return [];
      return { from, to, fall: { is: p.height - q.height, sigma: apart(p, q), drawn: p.target - q.target } };
    }),
    highest: highest?.hole ?? null,
  };
}

const above = ({ height, target }: MeasuredTop): number => height - target;
