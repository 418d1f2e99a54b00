import { type FrameAsBuilt, type FramePost, finder, frameAsBuilt } from '../build/frame.ts';
import { frameOutline } from '../build/frame-outline.ts';
import { type DeckCentre, type RoundDeck, roundDeck } from '../build/round-deck.ts';
import { type SquareAsBuilt, squareAsBuilt } from '../build/square.ts';
import { type PostsTogether, postsTogether } from '../measure/together.ts';
import type { SitedHole } from '../plan/hole.ts';
import { PIER_LABEL } from '../plan/index.ts';
import { topKey } from './level.ts';
import { type JobView, pointOf, postOf, readingsOfTheBook } from './view.ts';

/** How far up its post the frame is told. */
export type FrameHeight =
  /** Where the frame lies: its lean is read, and so is the height of its ground. */
  | 'top'
  /** At the ground: how far up its top is, or how far it leans, is not known. */
  | 'ground';

/** The posts as they stand, for whoever cuts to them. */
export interface AsBuilt {
  readonly posts: readonly FramePost[];
  readonly together: PostsTogether;
  readonly frame: FrameAsBuilt;
  readonly heightOf: ReadonlyMap<string, FrameHeight>;
}

/**
 * What the frame is to be cut to. Readings that are believed wrong are left out, as they are from every verdict.
 *
 * @returns null until the plan lies on the site
 */
export function asBuilt(view: JobView): AsBuilt | null {
  if (!view.laid) return null;
  const [best] = readingsOfTheBook(view);
  const wrong = new Set(
    view.measured.suspicions.filter(({ entries }) => entries.length === 1).flatMap(({ entries }) => entries),
  );
  const { holes, baseline, references } = view.laid;
  const together = postsTogether(
    view.entries.filter(({ id }) => !wrong.has(id)),
    holes,
    baseline,
    view.plan.instruments,
    references,
  );
  const posts = holes.map((hole) => framePost(best, hole));
  return {
    posts,
    together,
    frame: frameAsBuilt(view.plan.shape, posts, together),
    heightOf: new Map(posts.map(({ label, height }) => [label, height > 0 ? 'top' : 'ground'])),
  };
}

function framePost(view: JobView, hole: SitedHole): FramePost {
  const { label, section, facing, site, neighbours } = hole;
  return { label, hole: label, section, facing, designed: site, neighbours, height: heightOn(view, hole) };
}

/** How far above its ground the frame meets a post; 0 where its lean or that height is not known. */
function heightOn(view: JobView, { label, top }: SitedHole): number {
  const ground = view.heights.get(`ground:${label}`);
  if (!ground || !pointOf(view, postOf(label))?.lean) return 0;
  return Math.max(0, (view.heights.get(topKey(label))?.height ?? top) - ground.height);
}

/** The outer corners of rows and columns; null for another shape, and while one of the four is not measured. */
export function asBuiltSquare(view: JobView, { posts, together }: AsBuilt): SquareAsBuilt | null {
  const { rectangle } = frameOutline(view.plan.shape, posts);
  return rectangle && squareAsBuilt(together, rectangle.map(finder(posts)));
}

/** The posts of the ring; none of another shape. */
function ringOf({ plan }: JobView, posts: readonly FramePost[]): readonly FramePost[] {
  return plan.shape.kind === 'ring' ? posts.slice(0, plan.shape.count) : [];
}

const pierOf = (posts: readonly FramePost[]): FramePost | null =>
  posts.find(({ label, section }) => label === PIER_LABEL && section.kind === 'pier') ?? null;

/** How a round edge lies over a ring as built; null for another shape, and while too few posts are measured. */
export function asBuiltRound(view: JobView, built: AsBuilt, about: DeckCentre): RoundDeck | null {
  const ring = ringOf(view, built.posts);
  if (ring.length === 0) return null;
  const opening = view.plan.deck?.opening;
  return roundDeck(built.together, {
    ring,
    pier: pierOf(built.posts),
    middle: view.ground.centre,
    edge: view.plan.deck?.edge?.m ?? null,
    opening: opening ? opening.m / 2 : null,
    about,
  });
}
