import { bearingOf, type Vec } from '../geometry/point.ts';
import type { SitedHole } from '../plan/index.ts';

/** Why a string cannot stand for the faces of what it passes. */
export type NoFace = 'turned' | 'sizes-differ';

/** A face turned from the string by less is along it: a thousandth of a radian, 0.1 mm over a post. */
const ALONG = 1e-3;
/** Sizes that differ by less are one size: a tenth of a millimetre. */
const SAME_SIZE = 1e-4;

/**
 * How far the faces along a string lie from the centres: half the actual section square to it. All of what it passes must
 * have such a face, at the same distance, or the string would touch one and miss the next.
 *
 * @param along the string's direction, site frame
 * @returns metres, or why there is none
 */
export function faceHalf(holes: readonly SitedHole[], along: Vec): number | NoFace {
  const halves = holes.map((hole) => halfAcross(hole, bearingOf(along)));
  const [first] = halves;
  if (first === undefined || first === null || halves.includes(null)) return 'turned';
  return halves.every((half) => Math.abs(half! - first) < SAME_SIZE) ? first : 'sizes-differ';
}

/** Half of what a hole holds, square to a direction; null when no face lies along it. */
function halfAcross({ section, facing }: SitedHole, bearing: number): number | null {
  if (section.kind === 'pier') return section.diameter / 2;
  // The front face looks along `facing`: the depth lies along it, the width across.
  if (Math.abs(Math.sin(bearing - facing)) < ALONG) return section.width / 2;
  return Math.abs(Math.cos(bearing - facing)) < ALONG ? section.depth / 2 : null;
}
