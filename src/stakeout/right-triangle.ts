import { isMetric, METRES_PER_FOOT, type Units } from '../units/index.ts';

/** A right angle by three tapes: along one side, along the other, and across. Metres. */
export interface RightTriangle {
  readonly legs: readonly [number, number];
  readonly across: number;
}

/** Whole numbers whose squares add up (Euclid X, lemma to proposition 28), the slim ones for long narrow figures. */
const TRIPLES = [
  [3, 4, 5],
  [5, 12, 13],
  [8, 15, 17],
] as const;

/** Tapes are marked in whole feet, and in tenths of a metre. */
const STEP_METRIC = 0.1;

/** Two lengths that are alike are one, whatever their last bits say. */
const SLACK = 1e-9;

/**
 * The largest right triangle of whole numbers that fits along two sides which meet at a corner: the larger it is, the less a
 * misread mark turns the corner (common practice). Its lengths are in whole feet or tenths of a metre.
 *
 * @param sides metres, as drawn
 * @param reach longest tape, metres
 * @returns the first leg lies along the first side; null where the sides are too short for any
 */
export function rightTriangle(
  [first, second]: readonly [number, number],
  reach: number,
  units: Units,
): RightTriangle | null {
  const step = isMetric(units) ? STEP_METRIC : METRES_PER_FOOT;
  const found = TRIPLES.flatMap(([a, b, c]) =>
    [
      [a, b],
      [b, a],
    ].map(([p, q]) => {
      const times = Math.floor(Math.min(first / p!, second / q!, reach / c) / step + SLACK);
      return { legs: [times * p! * step, times * q! * step] as const, across: times * c * step };
    }),
  );
  const best = found.reduce((p, q) => (q.across > p.across + SLACK ? q : p));
  return best.across > 0 ? best : null;
}
