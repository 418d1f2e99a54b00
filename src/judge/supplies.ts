import { requiredDepthOf } from '../build/index.ts';
import { type JobQuantities, jobQuantities } from '../build/quantities.ts';
import { type KnownHeight, type PostLength, postLengths } from '../build/shopping.ts';
import { usualSpare, usualStock } from '../build/stock.ts';
import type { Hole } from '../plan/hole.ts';
import type { JobView } from './view.ts';

/** The share of concrete that is added where nobody has said: one part in twenty (our choice). */
export const USUAL_WASTE = 0.05;

/** Concrete, bags and gravel: as dug where a hole is dug, else as planned. */
export function quantitiesOf(view: JobView): JobQuantities {
  const { supplies, rules } = view.plan;
  const { tube, bell } = supplies ?? {};
  return jobQuantities(
    view.holes.map((hole) => toFill(view, hole)),
    {
      gravel: Math.max(0, rules.gravel.m),
      waste: supplies?.waste ?? USUAL_WASTE,
      bagYield: supplies?.bagYield ?? null,
      ...(tube && tube.m > 0 ? { tube: tube.m } : {}),
      ...(bell && bell.height.m > 0 ? { bell: { diameter: bell.diameter.m, height: bell.height.m } } : {}),
    },
  );
}

function toFill(view: JobView, { label, section, holeDiameter, top }: Hole) {
  const asked = requiredDepthOf(view.plan, label).depth;
  const dug = view.book.dug(label).at(-1)?.entry.body;
  const ground = view.heights.get(`ground:${label}`);
  const pours = view.book.pours(label);
  return {
    hole: label,
    section,
    planned: asked === null ? null : { depth: asked, diameter: holeDiameter },
    dug: dug ? { depth: dug.depth.m, diameter: dug.width.m } : null,
    above: ground ? Math.max(0, top - ground.height) : null,
    poured: pours.length === 0 ? null : pours.reduce((sum, { entry }) => sum + entry.body.bags, 0),
  };
}

/** Length of every post, by the ground where it is measured and else by the level ground that is assumed. */
export function lengthsOf(view: JobView): readonly PostLength[] {
  const before = worked.get(view);
  if (before) return before;
  const lengths = workOut(view);
  worked.set(view, lengths);
  return lengths;
}

/** Worked out once for each view, though every hole asks. */
const worked = new WeakMap<JobView, readonly PostLength[]>();

function workOut(view: JobView): PostLength[] {
  const { plan } = view;
  const { supplies } = plan;
  return postLengths(
    view.holes.filter(({ section }) => section.kind === 'post').map((hole) => toBuy(view, hole)),
    (supplies?.spare ?? usualSpare(plan.units)).m,
    supplies?.stock ?? usualStock(plan.units),
  );
}

/** The same of one hole; null for a pier, which is not bought. */
export function lengthOf(view: JobView, hole: Hole): PostLength | null {
  const { plan } = view;
  if (hole.section.kind !== 'post') return null;
  const spare = (plan.supplies?.spare ?? usualSpare(plan.units)).m;
  return postLengths([toBuy(view, hole)], spare, plan.supplies?.stock ?? usualStock(plan.units))[0] ?? null;
}

function toBuy(view: JobView, { label, top }: Hole) {
  const { rules } = view.plan;
  const dug = view.book.dug(label).at(-1)?.entry.body;
  const bottom = view.heights.get(`bottom:${label}`);
  return {
    hole: label,
    top,
    ground: groundAt(view, label),
    depth: dug?.depth.m ?? requiredDepthOf(view.plan, label).depth,
    gravel: Math.max(0, rules.gravel.m),
    bottom: bottom ? { ...bottom, assumed: false } : null,
    bought: boughtFor(view, label),
  };
}

/** As measured; else the level ground that the plan says, or at the benchmark's own height. */
export function groundAt({ heights, plan }: JobView, hole: string): KnownHeight {
  const measured = heights.get(`ground:${hole}`);
  if (measured) return { height: measured.height, sigma: measured.sigma, assumed: false };
  return { height: plan.supplies?.ground?.m ?? 0, sigma: 0, assumed: true };
}

function boughtFor({ plan: { supplies } }: JobView, hole: string): number | null {
  const own = supplies?.boughtFor;
  const single = own && Object.hasOwn(own, hole) ? own[hole] : undefined;
  return (single ?? supplies?.bought)?.m ?? null;
}
