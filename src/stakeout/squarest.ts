import { cross, length, type Vec } from '../geometry/point.ts';

/** Scores that differ by less are equal, and the order decides: far above rounding, far below a real turn or length. */
const SAME = 1e-9;

/** The first of those that score highest; undefined of none. */
export function bestBy<T>(items: readonly T[], score: (item: T) => number): T | undefined {
  let best: { readonly item: T; readonly score: number } | undefined;
  for (const item of items) {
    const own = score(item);
    if (!best || own > best.score + SAME) best = { item, score: own };
  }
  return best?.item;
}

/** Sine of the angle at which two lines cross, 0 to 1. */
export const sineBetween = (u: Vec, v: Vec): number => Math.abs(cross(u, v)) / (length(u) * length(v));
