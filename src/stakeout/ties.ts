import { distance } from '../geometry/point.ts';
import type { SitedHole } from '../plan/index.ts';
import { crossingAt, gradeOf } from './crossing.ts';
import { isOpen } from './string-nails.ts';
import type { StringCrossing, StringPlan, StringsAsked } from './string-types.ts';
import { type OffsetPair, offsetPairs } from './tie-offsets.ts';
import type { Crossing } from './types.ts';

/** The ways back to a hole's centre that can be made before it is dug. All of them outlive the digging. */
export interface HoleTies {
  readonly hole: string;
  /** Two strings that cross over it. */
  readonly strings: StringCrossing | null;
  /** Offset stakes in line with it: one pair, or two square to each other. */
  readonly offsets: readonly OffsetPair[];
  /** Two tapes, from A and B; null where they do not reach, cross too flat, or meet a house. */
  readonly tapes: { readonly fromA: number; readonly fromB: number; readonly crossing: Crossing } | null;
}

/**
 * The ways back to one hole.
 *
 * @param plan the job's strings, whose nails offset stakes keep clear of
 */
export function tiesOf(hole: SitedHole, asked: StringsAsked, plan: StringPlan): HoleTies {
  const nails = plan.strings.flatMap((string) => string.nails.map(({ site }) => site));
  return {
    hole: hole.label,
    strings: plan.crossings.find((crossing) => crossing.hole === hole.label) ?? null,
    offsets: offsetPairs(hole, asked, nails),
    tapes: tapesOf(hole, asked),
  };
}

function tapesOf({ site }: SitedHole, asked: StringsAsked): HoleTies['tapes'] {
  const { a, b, instruments } = asked;
  const crossing = crossingAt(site, a, b, instruments);
  const [fromA, fromB] = [distance(a, site), distance(b, site)];
  const reaches =
    Math.max(fromA, fromB) <= instruments.tapeLength.m && isOpen(asked, a, site) && isOpen(asked, b, site);
  return reaches && gradeOf(crossing.angle) !== 'poor' ? { fromA, fromB, crossing } : null;
}
