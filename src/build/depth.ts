import type { Length } from '../job/length.ts';
import type { Plan, Rules } from '../job/plan-schema.ts';
import { formatLength } from '../units/index.ts';

/** How deep a hole has to be, below the lowest ground at its edge. */
export interface RequiredDepth {
  /** Metres; null until the frost depth is known. */
  readonly depth: number | null;
  /** How deep and by which rule, in one sentence. */
  readonly text: string;
}

/** The same of one hole, which may have a depth of its own. */
export interface HoleDepth extends RequiredDepth {
  /** What a depth of its own lacks against the rules, and who has to agree to that; null where it lacks nothing. */
  readonly lacks?: { readonly by: number | null; readonly text: string } | null;
}

/**
 * The depth of one hole: what the rules ask for, unless the plan gives it a depth of its own. One that is less than the
 * rules ask is dug to, and is never enough by itself: somebody has to agree to it.
 */
export function requiredDepthOf(plan: Pick<Plan, 'rules' | 'overrides' | 'units'>, hole: string): HoleDepth {
  const byRules = { ...requiredDepth(plan.rules), lacks: null };
  const own = Object.hasOwn(plan.overrides, hole) ? plan.overrides[hole] : undefined;
  if (!own?.depth) return byRules;
  const words = (m: number) => formatLength(m, plan.units);
  const { m } = own.depth;
  const why = own.depthWhy ? ` (${own.depthWhy})` : '';
  const text = `${words(m)}, a depth of its own${why}.`;
  if (byRules.depth !== null && m >= byRules.depth - SAME_DEPTH) return { depth: m, text, lacks: null };
  return { depth: m, text, lacks: lackOf(hole, m, byRules.depth, why, words) };
}

/** Lengths typed in other units come to the same within this, metres. */
const SAME_DEPTH = 1e-6;

function lackOf(
  hole: string,
  own: number,
  rules: number | null,
  why: string,
  words: (m: number) => string,
): NonNullable<HoleDepth['lacks']> {
  const agree =
    'whoever is responsible for the structure, the designer or the building office, has to agree to that before concrete goes in.';
  if (rules === null)
    return {
      by: null,
      text: `Hole ${hole} has a depth of its own, ${words(own)}${why}, and the frost depth is not known: ${agree}`,
    };
  const by = rules - own;
  return {
    by,
    text: `Hole ${hole} has a depth of its own, ${words(own)}${why}, ${words(by)} less than the ${words(rules)} that the rules ask: ${agree}`,
  };
}

/**
 * The depth that the job's rules ask for: the frost depth or the least embedment, whichever is more, and below it the
 * gravel. Frost depth is a matter of the local code: where it is not known there is no depth.
 */
export function requiredDepth({ frostDepth, embedment, gravel }: Rules): RequiredDepth {
  if (!frostDepth) {
    return {
      depth: null,
      text: 'How deep depends on the frost depth: ask the local building office, and type what they say.',
    };
  }
  if (frostDepth.m >= embedment.m) return ruledBy('frost depth', frostDepth, gravel);
  return ruledBy('least embedment', embedment, gravel);
}

function ruledBy(name: string, rule: Length, gravel: Length): RequiredDepth {
  const depth = rule.m + gravel.m;
  const words = (m: number) => formatLength(m, rule.units);
  if (gravel.m === 0) return { depth, text: `${words(depth)}, the ${name}.` };
  return { depth, text: `${words(depth)}: ${name} ${words(rule.m)} and ${words(gravel.m)} of gravel.` };
}
