import type { Covariance } from '../measure/types.ts';
import { chanceWithin, chanceWithinDisc, principalAxes } from './chance.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import type { Judgement } from './types.ts';
import { IN_FROM } from './verdict.ts';

/**
 * One sigma, each way, of where a pushed and braced post ends up off where it was to go: metres at its foot and at its top, metres
 * per metre of lean. Guesses at common practice: a post that is held while two tapes and a level are read.
 */
export const HAND = { foot: 0.002, lean: 0.0007, top: 0.002 } as const;

/** A push is asked for where it is as likely as not that the post is then called in. */
const SETTLES_FROM = 0.5;

/** Or where a post is likelier to be in after it than it is now, by so much: it need not be provable to be better. */
const BETTER_BY = 0.05;

/**
 * What is in with a smaller chance than this is in only just, and is better made sure of while it can be pushed: a post has three
 * chances to be out, and a frame stands on all its posts.
 */
const SURE_FROM = 0.995;

/**
 * In, and guarded, and so near the edge that it may well be out all the same, though readings as good as these would be sure of a
 * post on its mark.
 */
export function isOnlyJustIn({
  quantity,
  verdict,
  checked,
  chance,
  uncertainty,
  tolerance,
}: Judgement): boolean {
  if (verdict !== 'in' || !checked || chance === null || uncertainty === null) return false;
  const sigma = uncertainty / HALF_WIDTH_95;
  const onMark = quantity === 'level' ? chanceWithin(0, sigma, tolerance) : inDisc(tolerance, sigma ** 2);
  return chance < SURE_FROM && onMark >= SURE_FROM;
}

/** Rayleigh: the chance that a plane error, alike every way, lies within a radius. */
const inDisc = (radius: number, variance: number): number => -Math.expm1(-(radius ** 2) / (2 * variance));

/** Halvings of the search: a tolerance of a foot to less than a thousandth of a millimetre. */
const HALVINGS = 20;

/**
 * Whether what is unsure is worth a push. A push ends off its aim by the doubt of the readings that told the way, and by the hand;
 * what is then measured is off by the doubt of those readings besides. In is what lies so far inside that the chance is
 * `IN_FROM`.
 *
 * @param chance of being within tolerance, as it stands
 * @param hand one sigma, each way
 */
export function worthAPush(
  chance: number | null,
  covariance: Covariance,
  tolerance: number,
  hand: number,
): boolean {
  const sigma = principalAxes(covariance).major;
  const round = { xx: sigma * sigma, xy: 0, yy: sigma * sigma };
  const within = calledIn((off) => chanceWithinDisc({ x: off, y: 0 }, round, tolerance), tolerance);
  return isWorth(chance, {
    callsIn: inDisc(within, 2 * sigma ** 2 + hand ** 2),
    isIn: inDisc(tolerance, sigma ** 2 + hand ** 2),
  });
}

/** As `worthAPush`, for a height. */
export function worthALift(chance: number | null, sigma: number, tolerance: number): boolean {
  const within = calledIn((off) => chanceWithin(off, sigma, tolerance), tolerance);
  return isWorth(chance, {
    callsIn: chanceWithin(0, Math.sqrt(2 * sigma ** 2 + HAND.top ** 2), within),
    isIn: chanceWithin(0, Math.hypot(sigma, HAND.top), tolerance),
  });
}

/** Chances after a push: that the post is called in, and that it is. */
interface After {
  readonly callsIn: number;
  readonly isIn: number;
}

const isWorth = (chance: number | null, { callsIn, isIn }: After): boolean =>
  callsIn >= SETTLES_FROM || isIn - (chance ?? 0) >= BETTER_BY;

/** How far off something may measure and still be called in; 0 where nothing is. */
function calledIn(chanceAt: (off: number) => number, tolerance: number): number {
  let [least, most] = [0, tolerance];
  if (chanceAt(least) < IN_FROM) return 0;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (least + most) / 2;
    if (chanceAt(middle) >= IN_FROM) least = middle;
    else most = middle;
  }
  return least;
}
