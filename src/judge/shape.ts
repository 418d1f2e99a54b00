import { length, type SitePoint, subtract } from '../geometry/point.ts';
import { type RigidMotion, toSite } from '../geometry/rigid.ts';
import { fitRigid, type RigidFit } from '../geometry/rigid-fit.ts';
import type { Finding } from './types.ts';
import { type JobView, pointOf, postOf } from './view.ts';
import { listWords, moveWords, small } from './words.ts';

/** A post as planned and as set, both in the site frame. */
interface Built {
  readonly hole: string;
  readonly planned: SitePoint;
  readonly found: SitePoint;
}

/** A motion of the site onto itself. */
const carry = (motion: RigidMotion, { x, y }: SitePoint): SitePoint => toSite(motion, { x, y });

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
  if (!whole) return null;
  const worst = worstOf(whole);
  const moved = wrong.size > 1 && worst <= tolerance ? movedWords(view, whole.motion, worst) : null;
  if (moved) return { code: 'shape', text: moved, entries: [] };
  return oneOut(view, pairs, wrong, tolerance);
}

function builtPairs(view: JobView): Built[] {
  return [...view.sited.values()].flatMap((hole) => {
    const found = pointOf(view, postOf(hole.label))?.fix?.place;
    return found ? [{ hole: hole.label, planned: hole.site, found }] : [];
  });
}

const worstOf = ({ residuals }: RigidFit): number => Math.max(...residuals.map(length));

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
  pairs: readonly Built[],
  wrong: ReadonlySet<string>,
  tolerance: number,
): Finding | null {
  for (const one of pairs.filter((pair) => wrong.has(pair.hole))) {
    const others = pairs.filter((pair) => pair !== one);
    if (others.length < LEAST_AGAINST_ONE) continue;
    const fit = fitRigid(others);
    if (!fit) continue;
    const worst = worstOf(fit);
    const apart = length(subtract(one.found, carry(fit.motion, one.planned)));
    if (worst > tolerance || apart <= tolerance) continue;
    const { units } = view.plan;
    const text = `Post ${one.hole} is out by itself: the other ${others.length} fit one another to within ${small(worst, units)}, and it stands ${small(apart, units)} from where they would have it.`;
    return { code: 'shape', text, entries: [] };
  }
  return null;
}
