import type { Length } from '../job/length.ts';
import { postLength } from './post-length.ts';
import { stockFor } from './stock.ts';

/** A height and how sure it is; `assumed` where nobody measured it. Metres above the benchmark. */
export interface KnownHeight {
  readonly height: number;
  readonly sigma: number;
  readonly assumed: boolean;
}

/** What is known of one post before it is bought. */
export interface PostToBuy {
  readonly hole: string;
  readonly top: number;
  readonly ground: KnownHeight;
  /** To the bottom of the hole from its downhill lip, as dug or else as asked for; null while neither is known. */
  readonly depth: number | null;
  readonly gravel: number;
  /** The bottom by its own reading, which counts before ground less depth. */
  readonly bottom: KnownHeight | null;
  /** Length of the post that is there already; null where none is. */
  readonly bought: number | null;
}

/** What a bought post is short of. */
export type Short =
  /** It does not reach its top: by so much, metres. */
  | { readonly of: 'top'; readonly by: number }
  /** It reaches, and lacks so much of the spare. */
  | { readonly of: 'spare'; readonly by: number };

export interface PostLength {
  readonly hole: string;
  /** What the post stands on, above the benchmark; null where that is not known. */
  readonly foot: number | null;
  /** Rests on a height of the ground that nobody measured. */
  readonly assumed: boolean;
  /** From foot to top, without spare. */
  readonly length: number | null;
  /** One sigma of that. */
  readonly sigma: number;
  /** With spare: what to buy at least. */
  readonly needed: number | null;
  /** Null where none is long enough, or `needed` is not known. */
  readonly stock: Length | null;
  readonly bought: number | null;
  readonly short: Short | null;
  /** Why there is no length; empty where there is. */
  readonly why: string;
}

/** Lengths of the posts, and the stock that gives them. */
export function postLengths(
  posts: readonly PostToBuy[],
  spare: number,
  stock: readonly Length[],
): PostLength[] {
  return posts.map((post) => lengthOf(post, spare, stock));
}

function lengthOf(post: PostToBuy, spare: number, stock: readonly Length[]): PostLength {
  const { hole, top, gravel, bought } = post;
  const under = bottomOf(post);
  const none = { hole, length: null, sigma: 0, needed: null, stock: null, bought, short: null };
  if (!under)
    return { ...none, foot: null, assumed: post.ground.assumed, why: 'How deep the hole goes is not known.' };
  const foot = under.height + gravel;
  const length = postLength({ top, bottom: foot, spare: 0 });
  if (!length.ok) return { ...none, foot, assumed: under.assumed, why: length.problem.text };
  const needed = length.value + spare;
  return {
    hole,
    foot,
    assumed: under.assumed,
    length: length.value,
    sigma: under.sigma,
    needed,
    stock: stockFor(needed, stock),
    bought,
    short: bought === null ? null : shortOf(bought, length.value, needed),
    why: '',
  };
}

function bottomOf({ ground, depth, bottom }: PostToBuy): KnownHeight | null {
  if (bottom) return bottom;
  return depth === null ? null : { ...ground, height: ground.height - depth };
}

/** Less than a tape tells is not short. */
const TELLS_M = 0.0005;

function shortOf(bought: number, length: number, needed: number): Short | null {
  if (bought < length - TELLS_M) return { of: 'top', by: length - bought };
  return bought < needed - TELLS_M ? { of: 'spare', by: needed - bought } : null;
}

/** So many posts of one length. */
export interface ShoppingLine {
  readonly stock: Length;
  readonly holes: readonly string[];
}

/** Posts by stock length, shortest first; those for which there is none, or no length, are left out. */
export function shoppingLines(lengths: readonly PostLength[]): ShoppingLine[] {
  const lines = new Map<number, { stock: Length; holes: string[] }>();
  for (const { hole, stock } of lengths) {
    if (!stock) continue;
    const line = lines.get(stock.m) ?? { stock, holes: [] };
    line.holes.push(hole);
    lines.set(stock.m, line);
  }
  return [...lines.values()].sort((p, q) => p.stock.m - q.stock.m);
}
