import type { Length } from '../job/length.ts';
import type { Rules } from '../job/plan-schema.ts';
import { formatLength } from '../units/index.ts';

/** How deep a hole has to be, below the lowest ground at its edge. */
export interface RequiredDepth {
  /** Metres; null until the frost depth is known. */
  readonly depth: number | null;
  /** Which rule is the deeper one. */
  readonly because: 'frost' | 'embedment';
  /** Why, in one sentence. */
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
      because: 'frost',
      text: 'How deep depends on the frost depth: ask the local building office, and type what they say.',
    };
  }
  const because = frostDepth.m >= embedment.m ? 'frost' : 'embedment';
  const rule = because === 'frost' ? frostDepth : embedment;
  const depth = rule.m + gravel.m;
  return { depth, because, text: depthWords(because, rule, gravel, depth) };
}

function depthWords(because: RequiredDepth['because'], rule: Length, gravel: Length, depth: number): string {
  const name = because === 'frost' ? 'frost depth' : 'least embedment';
  const words = (m: number) => formatLength(m, rule.units);
  if (gravel.m === 0) return `${words(depth)}, the ${name}.`;
  return `${words(depth)}: ${name} ${words(rule.m)} and ${words(gravel.m)} of gravel.`;
}
