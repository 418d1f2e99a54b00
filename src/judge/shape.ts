import { add, cross, dot, length, type SitePoint, scale, subtract } from '../geometry/point.ts';
import { type RigidMotion, toSite } from '../geometry/rigid.ts';
import type { Finding } from './types.ts';
import { type JobView, pointOf, postOf } from './view.ts';
import { listWords, moveWords, small } from './words.ts';

/** A post as planned and as set, both in the site frame. */
export interface Pair {
  readonly hole: string;
  readonly designed: SitePoint;
  readonly built: SitePoint;
}

/**
 * The rigid motion that brings designed places nearest to built ones, in least squares; never a scale.
 *
 * turn = atan2(Σ d×b, Σ d·b) about the centroids: the planar, scale-free case of Umeyama, "Least-squares estimation of
 * transformation parameters between two point patterns", IEEE PAMI 13(4), 1991. In the plane it cannot come out mirrored.
 *
 * @param pairs two or more, not all in one place
 */
export function fitRigid(pairs: readonly Pair[]): RigidMotion {
  const from = centroid(pairs.map((pair) => pair.designed));
  const to = centroid(pairs.map((pair) => pair.built));
  let s = 0;
  let c = 0;
  for (const { designed, built } of pairs) {
    const d = subtract(designed, from);
    const b = subtract(built, to);
    s += cross(d, b);
    c += dot(d, b);
  }
  const turn = Math.atan2(s, c);
  return { turn, shift: subtract(to, carry({ turn, shift: { x: 0, y: 0 } }, from)) };
}

/** A motion of the site onto itself. */
const carry = (motion: RigidMotion, { x, y }: SitePoint): SitePoint => toSite(motion, { x, y });

const centroid = (points: readonly SitePoint[]): SitePoint =>
  scale(points.reduce<SitePoint>(add, { x: 0, y: 0 }), 1 / points.length);

/** Two pairs always fit to within their distance; three are the fewest that show a shape. */
const LEAST_FOR_SHAPE = 3;
/** Four that agree are believed against one that does not. */
const LEAST_AGAINST_ONE = 4;

/**
 * Tells a structure that is right in shape but turned or shifted from one post that is out by itself: the first may be
 * left as it is, the second may not.
 *
 * @param wrong holes whose set post is not known to be in place
 */
export function shapeFinding(view: JobView, wrong: ReadonlySet<string>): Finding | null {
  const pairs = builtPairs(view);
  if (wrong.size === 0 || pairs.length < LEAST_FOR_SHAPE) return null;
  const tolerance = view.plan.tolerances.position.m;
  const whole = fitRigid(pairs);
  const worst = Math.max(...pairs.map((pair) => misfit(whole, pair)));
  const moved = wrong.size > 1 && worst <= tolerance ? movedWords(view, whole, worst) : null;
  if (moved) return { code: 'shape', text: moved, entries: [] };
  return oneOut(view, pairs, wrong, tolerance);
}

function builtPairs(view: JobView): Pair[] {
  return [...view.sited.values()].flatMap((hole) => {
    const built = pointOf(view, postOf(hole.label))?.fix?.place;
    return built ? [{ hole: hole.label, designed: hole.site, built }] : [];
  });
}

const misfit = (motion: RigidMotion, { designed, built }: Pair): number =>
  length(subtract(built, carry(motion, designed)));

/** A turn that moves no post by this share of what its place may be off is not worth a word. */
const NOTICEABLE = 0.25;

function movedWords(view: JobView, motion: RigidMotion, worst: number): string | null {
  const { units } = view.plan;
  const { centre } = view.ground;
  const shift = subtract(carry(motion, centre), centre);
  const reach = Math.max(...[...view.sited.values()].map((hole) => length(subtract(hole.site, centre))));
  const notable = NOTICEABLE * view.plan.tolerances.position.m;
  const turned = Math.abs(motion.turn) * reach;
  const parts = [
    ...(turned > notable ? [turnWords(motion.turn, turned, units)] : []),
    ...(length(shift) > notable ? [`shifted ${moveWords(centre, shift, view.ground)}`] : []),
  ];
  if (parts.length === 0) return null;
  return `The posts fit one another to within ${small(worst, units)}, so the shape is right; the whole of it is ${listWords(parts)}. Decide whether its place matters before moving any post.`;
}

function turnWords(turn: number, atPosts: number, units: JobView['plan']['units']): string {
  const degrees = Math.abs((turn * 180) / Math.PI);
  const way = turn > 0 ? 'anticlockwise' : 'clockwise';
  return `turned ${degrees.toFixed(degrees < 1 ? 2 : 1)}° ${way} seen from above (${small(atPosts, units)} at the outermost post)`;
}

function oneOut(
  view: JobView,
  pairs: readonly Pair[],
  wrong: ReadonlySet<string>,
  tolerance: number,
): Finding | null {
  for (const one of pairs.filter((pair) => wrong.has(pair.hole))) {
    const others = pairs.filter((pair) => pair !== one);
    if (others.length < LEAST_AGAINST_ONE) continue;
    const motion = fitRigid(others);
    const worst = Math.max(...others.map((pair) => misfit(motion, pair)));
    const apart = misfit(motion, one);
    if (worst > tolerance || apart <= tolerance) continue;
    const { units } = view.plan;
    const text = `Post ${one.hole} is out by itself: the other ${others.length} fit one another to within ${small(worst, units)}, and it stands ${small(apart, units)} from where they would have it.`;
    return { code: 'shape', text, entries: [] };
  }
  return null;
}
