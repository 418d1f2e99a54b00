import { fitCircle } from '../geometry/circle-fit.ts';
import { enclosingCircle } from '../geometry/enclosing-circle.ts';
import { distance, subtract, type Vec } from '../geometry/point.ts';
import type { PostsTogether } from '../measure/together.ts';
import { type Figure, figureOf, placesOf } from './figure.ts';
import type { FramePost } from './frame.ts';
import { type PierGap, pierGap } from './pier-gap.ts';
import { outermost } from './section-reach.ts';

/**
 * Where the middle of a round deck's edge is put: in the middle of the circle nearest to all post centres (least squares),
 * where the smallest overhang is as large as it can be, or in the middle of the pier.
 */
export const DECK_CENTRES = ['nearest', 'widest', 'pier'] as const;
export type DeckCentre = (typeof DECK_CENTRES)[number];

export interface Overhang {
  readonly hole: string;
  /** From the corner that lies furthest out to the edge, metres; negative where the corner stands out. */
  readonly past: Figure;
}

export interface RoundDeck {
  /** Site frame. */
  readonly centre: Vec;
  /** From the middle that the drawing has, metres: how far, and which way. */
  readonly off: Vec;
  /** Radius that just covers every post and its corners. */
  readonly reach: Figure;
  /** Only with an edge. */
  readonly smallest: Overhang | null;
  readonly largest: Overhang | null;
  /** All round the pier; null without a pier that has a place, and while nobody has said how wide the opening is. */
  readonly gap: PierGap | null;
  /** Posts of the ring that have no place: of them nothing is said. */
  readonly unmeasured: readonly string[];
}

export interface RoundDeckAsked {
  /** Of the ring only. */
  readonly ring: readonly FramePost[];
  readonly pier: FramePost | null;
  readonly middle: Vec;
  /** Radius of the deck's edge, metres; null while nobody has said. */
  readonly edge: number | null;
  /** Radius of the opening for the pier, about the same middle; null while nobody has said. */
  readonly opening: number | null;
  readonly about: DeckCentre;
}

/** A circle wants three points. */
const LEAST_POSTS = 3;

/**
 * How a round edge lies over the posts as they stand.
 *
 * @returns null while fewer than three posts are measured, while they stand in one line, or while the pier has no place
 *   and is to be the middle
 */
export function roundDeck(
  together: PostsTogether,
  { ring, pier: planned, middle, edge, opening, about }: RoundDeckAsked,
): RoundDeck | null {
  const posts = ring.filter((post) => together.at(post) !== null);
  const pier = planned && together.at(planned) ? planned : null;
  // The pier, where there is one, comes last.
  const all: readonly FramePost[] = pier ? [...posts, pier] : posts;
  const places = placesOf(together, all);
  if (posts.length < LEAST_POSTS || !places || (about === 'pier' && !pier)) return null;
  const find = centreFinder(about, posts);
  const centre = find(places);
  if (!centre) return null;
  const figure = (follows: (places: readonly Vec[], at: Vec) => number) =>
    // Where places moved by a hair left no circle, the one that was found would do as well.
    figureOf(together, all, (moved) => follows(moved, find(moved) ?? centre))!;
  const outside = (moved: readonly Vec[], at: Vec, i: number) => furthest(posts[i]!, moved[i]!, at);
  const overhang = (i: number): Overhang => ({
    hole: posts[i]!.label,
    past: figure((moved, at) => (edge ?? 0) - outside(moved, at, i)),
  });
  const byReach = posts
    .map((_, i) => ({ i, out: outside(places, centre, i) }))
    .sort((p, q) => q.out - p.out)
    .map(({ i }) => i);
  return {
    centre,
    off: subtract(centre, middle),
    reach: figure((moved, at) => Math.max(...posts.map((_, i) => outside(moved, at, i)))),
    smallest: edge === null ? null : overhang(byReach[0]!),
    largest: edge === null ? null : overhang(byReach.at(-1)!),
    gap:
      pier?.section.kind === 'pier' && opening !== null
        ? pierGap(together, {
            posts: all,
            opening: (moved) => find(moved) ?? centre,
            pier: (moved) => moved.at(-1)!,
            openingRadius: opening,
            pierRadius: pier.section.diameter / 2,
          })
        : null,
    unmeasured: ring.filter((post) => together.at(post) === null).map(({ label }) => label),
  };
}

type CentreOf = (places: readonly Vec[]) => Vec | null;

function centreFinder(about: DeckCentre, posts: readonly FramePost[]): CentreOf {
  switch (about) {
    case 'nearest':
      return (places) => fitCircle(places.slice(0, posts.length))?.centre ?? null;
    case 'widest':
      return (places) => widest(posts, places);
    case 'pier':
      return (places) => places.at(-1) ?? null;
  }
}

/**
 * The middle of the smallest circle round all corners. Of a round what counts is its own outside, which depends on the
 * middle: a circle about its centre that is taken for its four quarters.
 */
function widest(posts: readonly FramePost[], places: readonly Vec[]): Vec | null {
  const from = fitCircle(places.slice(0, posts.length))?.centre;
  if (!from) return null;
  return enclosingCircle(posts.flatMap((post, i) => outermost(post, places[i]!, from)))?.centre ?? null;
}

const furthest = (post: FramePost, place: Vec, centre: Vec): number =>
  Math.max(...outermost(post, place, centre).map((corner) => distance(corner, centre)));
