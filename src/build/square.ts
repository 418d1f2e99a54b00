import { distance, subtract, type Vec } from '../geometry/point.ts';
import { fitRigid } from '../geometry/rigid-fit.ts';
import type { PostsTogether } from '../measure/together.ts';
import { type Figure, figureOf, placesOf } from './figure.ts';
import type { FramePost } from './frame.ts';

/** How square four outer corners stand, and how the frame as drawn would lie on them. */
export interface SquareAsBuilt {
  /** Front left to back right, less front right to back left, metres. */
  readonly difference: Figure;
  /** The two posts of the longer diagonal. */
  readonly longer: readonly [string, string];
  /**
   * How far the front stands off along itself against the back, metres, to the right positive: s = (d₂² − d₁²) / 4a, a the
   * mean of front and back. Slid back by so much a figure with equal opposite sides has equal diagonals (derived, not
   * published).
   */
  readonly rack: Figure;
  /** Each outer post less where the drawn rectangle puts it, laid on them as well as can be without bending; site frame. */
  readonly offRectangle: readonly { readonly hole: string; readonly off: Vec }[];
}

/**
 * @param corners front left, front right, back right, back left
 * @returns null while any of the four has no place
 */
export function squareAsBuilt(together: PostsTogether, corners: readonly FramePost[]): SquareAsBuilt | null {
  const places = placesOf(together, corners);
  if (!places || corners.length !== 4) return null;
  const difference = figureOf(together, corners, (at) => {
    const [first, second] = diagonalsOf(at);
    return first - second;
  })!;
  const rack = figureOf(together, corners, (at) => {
    const [first, second] = diagonalsOf(at);
    const side = (distance(at[0]!, at[1]!) + distance(at[3]!, at[2]!)) / 2;
    // The front moved left makes front left to back right the longer.
    return -(first ** 2 - second ** 2) / (4 * side);
  })!;
  const labels = corners.map(({ label }) => label);
  const fit = fitRigid(corners.map(({ designed }, i) => ({ planned: designed, found: places[i]! })));
  return {
    difference,
    longer: difference.is >= 0 ? [labels[0]!, labels[2]!] : [labels[1]!, labels[3]!],
    rack,
    offRectangle: labels.map((hole, i) => ({
      hole,
      off: fit?.residuals[i] ?? subtract(places[i]!, corners[i]!.designed),
    })),
  };
}

function diagonalsOf(at: readonly Vec[]): [number, number] {
  return [distance(at[0]!, at[2]!), distance(at[1]!, at[3]!)];
}
