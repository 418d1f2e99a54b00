import type { Length } from '../job/length.ts';
import type { Rules } from '../job/plan-schema.ts';
import { formatLength } from '../units/index.ts';

/** How deep a hole has to be, below the lowest ground at its edge. */
export interface RequiredDepth {
  /** Metres; null until the frost depth is known. */
  readonly depth: number | null;
  /** How deep and by which rule, in one sentence. */
  readonly text: string;
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
