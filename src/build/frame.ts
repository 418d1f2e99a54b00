import { bearingOf, cross, distance, dot, subtract, type Vec } from '../geometry/point.ts';
import type { Shape } from '../job/plan-schema.ts';
import type { PostsTogether } from '../measure/together.ts';
import { type Figure, type FigurePost, type Follows, figureOf } from './figure.ts';
import { frameOutline, type Joined } from './frame-outline.ts';
import { reachAlong, type Standing } from './section-reach.ts';

/** A post as the frame sees it: where it was drawn, what it is, and how far up the frame meets it. */
export interface FramePost extends FigurePost, Standing, Joined {}

export interface FrameSide {
  readonly from: string;
  readonly to: string;
  /** Centre to centre; null while either post is not measured. */
  readonly centres: Figure | null;
  /** Between the faces, along the line of centres. */
  readonly clear: Figure | null;
}

/** Where two sides meet. Radians. */
export interface FrameCorner {
  readonly hole: string;
  readonly between: readonly [string, string];
  /** Inside the outline, between the lines of centres. */
  readonly angle: Figure | null;
  /**
   * What the saw is set to, off a square cut, for two pieces that meet in a mitre: half of what the two lines deviate from
   * one straight line. For a regular figure of n sides that is 180°/n. Negative where the corner bends inwards.
   */
  readonly mitre: Figure | null;
}

export interface FrameDiagonal {
  readonly from: string;
  readonly to: string;
  readonly centres: Figure | null;
}

export interface FrameAsBuilt {
  readonly sides: readonly FrameSide[];
  readonly corners: readonly FrameCorner[];
  readonly diagonals: readonly FrameDiagonal[];
  /** Posts of the frame that have no place: nothing is said of what they carry. */
  readonly unmeasured: readonly string[];
}

/** What the beams are to be cut to: the posts as they stand, each figure with its doubt and as it was drawn. */
export function frameAsBuilt(
  shape: Shape,
  posts: readonly FramePost[],
  together: PostsTogether,
): FrameAsBuilt {
  const find = finder(posts);
  const figure = (labels: readonly string[], follows: Follows) =>
    figureOf(together, labels.map(find), follows);
  const { sides, corners, diagonals } = frameOutline(shape, posts);
  const framed = new Set(sides.flat());
  return {
    sides: sides.map(([from, to]) => ({
      from,
      to,
      centres: figure([from, to], apart),
      clear: figure([from, to], clearBetween(find(from), find(to))),
    })),
    corners: corners.map((corner) => cornerOf(corner, find, figure)),
    diagonals: diagonals.map(([from, to]) => ({ from, to, centres: figure([from, to], apart) })),
    unmeasured: posts
      .filter((post) => framed.has(post.label) && together.at(post) === null)
      .map(({ label }) => label),
  };
}

/** @throws RangeError for a label that no post has */
export function finder(posts: readonly FramePost[]): (label: string) => FramePost {
  const byLabel = new Map(posts.map((post) => [post.label, post]));
  return (label) => {
    const post = byLabel.get(label);
    if (!post) throw new RangeError(`There is no post ${label}`);
    return post;
  };
}

const apart: Follows = ([p, q]) => distance(p!, q!);

function clearBetween(from: Standing, to: Standing): Follows {
  return ([p, q]) => {
    const bearing = bearingOf(subtract(q!, p!));
    return distance(p!, q!) - reachAlong(from, bearing) - reachAlong(to, bearing + Math.PI);
  };
}

function cornerOf(
  [before, hole, after]: readonly [string, string, string],
  find: (label: string) => FramePost,
  figure: (labels: readonly string[], follows: Follows) => Figure | null,
): FrameCorner {
  const labels = [before, hole, after];
  const drawn = labels.map((label) => find(label).designed);
  // Inside is where the drawing has less than half a turn. A corner drawn straight may then come out at a little more.
  const inside = turnAt(drawn) <= Math.PI ? turnAt : (places: readonly Vec[]) => 2 * Math.PI - turnAt(places);
  return {
    hole,
    between: [before, after],
    angle: figure(labels, inside),
    mitre: figure(labels, (places) => (Math.PI - inside(places)) / 2),
  };
}

/** From the direction of the first place to that of the last, anticlockwise about the middle one; 0 to 2π. */
function turnAt([p, q, r]: readonly Vec[]): number {
  const a = subtract(p!, q!);
  const b = subtract(r!, q!);
  const turn = Math.atan2(cross(a, b), dot(a, b));
  return turn < 0 ? turn + 2 * Math.PI : turn;
}
