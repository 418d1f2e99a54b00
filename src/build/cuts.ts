import type { TopsCovariance } from '../measure/height-tops.ts';
import { variancesAgainstMean } from '../measure/height-tops.ts';

/** A measured top, metres above the benchmark. */
export interface MeasuredTop {
  readonly hole: string;
  /** What its height is called among the covariances: `top:3`. */
  readonly key: string;
  readonly height: number;
  readonly sigma: number;
  readonly target: number;
}

/** `plan`: every top to its own height. `shortest`: all moved alike, so that the shortest post needs no cut. */
export type CutTo = 'plan' | 'shortest';

export interface Cut {
  readonly hole: string;
  /** From the top as it stands down to the cut, metres; negative for a post that is too short by so much. */
  readonly off: number;
  /** One sigma of `off`. */
  readonly sigma: number;
  /** Height of the cut, above the benchmark. */
  readonly height: number;
}

export interface Cuts {
  readonly cuts: readonly Cut[];
  /** The post that stands least above its target, which governs a common line; null without a measured top. */
  readonly governs: string | null;
  /** What is added to every target, metres: 0 for the plan's own heights. */
  readonly shift: number;
}

/**
 * Where every post is cut, from one level line. To the plan's heights each cut is as sure as its top against the
 * benchmark; to the shortest post it is as sure as the two tops are against each other, which is surer.
 */
export function cutsFor(tops: readonly MeasuredTop[], together: TopsCovariance, to: CutTo): Cuts {
  const above = ({ height, target }: MeasuredTop) => height - target;
  const [first] = tops;
  if (!first) return { cuts: [], governs: null, shift: 0 };
  const governs = tops.reduce((least, top) => (above(top) < above(least) ? top : least), first);
  const shift = to === 'plan' ? 0 : above(governs);
  const among = variancesAgainstMean(together, [governs.key]);
  const sigmaOf = ({ key, sigma }: MeasuredTop) =>
    to === 'plan' ? sigma : Math.sqrt(among.get(key) ?? sigma ** 2 + governs.sigma ** 2);
  return {
    cuts: tops.map((top) => ({
      hole: top.hole,
      off: above(top) - shift,
      sigma: sigmaOf(top),
      height: top.target + shift,
    })),
    governs: governs.hole,
    shift,
  };
}
