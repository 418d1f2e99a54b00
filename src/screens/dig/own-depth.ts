import type { Length } from '../../job/length.ts';
import type { Plan } from '../../job/plan-schema.ts';

/** Gives a hole a depth of its own and says why, or takes it away. What else the hole has of its own stays. */
export function withOwnDepth(
  plan: Plan,
  hole: string,
  own: { readonly depth: Length; readonly why: string } | null,
): Plan {
  const before = Object.hasOwn(plan.overrides, hole) ? plan.overrides[hole] : undefined;
  const { depth: _, depthWhy: __, ...rest } = before ?? {};
  const next = own ? { ...rest, depth: own.depth, depthWhy: own.why } : rest;
  const others = Object.fromEntries(Object.entries(plan.overrides).filter(([label]) => label !== hole));
  return { ...plan, overrides: Object.keys(next).length === 0 ? others : { ...others, [hole]: next } };
}
