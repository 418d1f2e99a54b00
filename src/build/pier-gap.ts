import { length, subtract, type Vec } from '../geometry/point.ts';
import type { PostsTogether } from '../measure/together.ts';
import { type FigurePost, figureOf, placesOf } from './figure.ts';

/** The gap between a round opening and the round pier inside it, metres. */
export interface PierGap {
  /** Where the pier stands off the middle of the opening. */
  readonly off: Vec;
  readonly smallest: number;
  readonly largest: number;
  /** One sigma of either, along the worst direction: a pier that looks centred may stand off any way. */
  readonly sigma: number;
}

export interface PierGapAsked {
  /** The pier, and the posts that its opening's middle follows from. */
  readonly posts: readonly FigurePost[];
  /** The opening's middle and the pier's, from the places of `posts`. */
  readonly opening: (places: readonly Vec[]) => Vec;
  readonly pier: (places: readonly Vec[]) => Vec;
  /** Radii, metres. */
  readonly openingRadius: number;
  readonly pierRadius: number;
}

/**
 * The smallest and the largest gap all round: R − r ∓ how far the two middles are apart.
 *
 * @returns null while any of the posts has no place
 */
export function pierGap(
  together: PostsTogether,
  { posts, opening, pier, openingRadius, pierRadius }: PierGapAsked,
): PierGap | null {
  const places = placesOf(together, posts);
  if (!places) return null;
  const between = (at: readonly Vec[]) => subtract(pier(at), opening(at));
  const sigmaOf = (follows: (off: Vec) => number) =>
    figureOf(together, posts, (at) => follows(between(at)))!.sigma;
  const off = between(places);
  const [xx, yy] = [sigmaOf(({ x }) => x) ** 2, sigmaOf(({ y }) => y) ** 2];
  // The variance of x + y tells the covariance.
  const xy = (sigmaOf(({ x, y }) => x + y) ** 2 - xx - yy) / 2;
  const room = openingRadius - pierRadius;
  return {
    off,
    smallest: room - length(off),
    largest: room + length(off),
    sigma: Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy)),
  };
}
