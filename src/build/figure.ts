import type { Vec } from '../geometry/point.ts';
import type { PostSpot, PostsTogether } from '../measure/together.ts';

/** Something that follows from where posts stand: metres or radians. */
export interface Figure {
  readonly is: number;
  /** One sigma. */
  readonly sigma: number;
  /** As the drawing has it. */
  readonly drawn: number;
}

/** A post whose place counts, and where the drawing has it. */
export interface FigurePost extends PostSpot {
  readonly designed: Vec;
}

/** A figure as it follows from places, in the order of the posts. */
export type Follows = (places: readonly Vec[]) => number;

/** How far a place is moved to see what follows, metres: far above rounding, far below any bend of a figure. */
const STEP_M = 1e-4;

/**
 * A figure of posts as they stand, with what their doubts, and what these have in common, come to in it: u² = gᵀ Q g
 * (JCGM 100:2008, 5.2.2), the slopes g taken from small moves (5.1.3, note 2).
 *
 * @returns null while any of the posts has no place
 */
export function figureOf(
  together: PostsTogether,
  posts: readonly FigurePost[],
  follows: Follows,
): Figure | null {
  const places = placesOf(together, posts);
  if (!places) return null;
  const variance = together.variance(posts.map((spot, i) => ({ spot, by: slope(places, i, follows) })));
  return {
    is: follows(places),
    sigma: Math.sqrt(variance),
    drawn: follows(posts.map(({ designed }) => designed)),
  };
}

/** Null while any of the posts has no place. */
export function placesOf(together: PostsTogether, posts: readonly FigurePost[]): Vec[] | null {
  const places = posts.flatMap((post) => together.at(post) ?? []);
  return places.length === posts.length ? places : null;
}

function slope(places: readonly Vec[], i: number, follows: Follows): Vec {
  const moved = (dx: number, dy: number) =>
    follows(places.map((place, j) => (j === i ? { x: place.x + dx, y: place.y + dy } : place)));
  return {
    x: (moved(STEP_M, 0) - moved(-STEP_M, 0)) / (2 * STEP_M),
    y: (moved(0, STEP_M) - moved(0, -STEP_M)) / (2 * STEP_M),
  };
}
