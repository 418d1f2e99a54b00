import { distance, type PlanPoint } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { Hole, LaidLine } from '../plan/index.ts';
import type { Units } from '../units/index.ts';
import { crossingAt } from './crossing.ts';
import { objectionsTo } from './objections.ts';
import type { StakeChoice } from './types.ts';

/**
 * What a choice of A and B gives: the crossing at every hole, the worst of them, and what speaks against the choice, as
 * short sentences. A choice without objections can be used as it is.
 *
 * @param a plan frame, metres
 * @param units in which the sentences give lengths
 * @param lines on the ground, plan frame
 */
export function judgeStakes(
  a: PlanPoint,
  b: PlanPoint,
  holes: readonly Hole[],
  instruments: Instruments,
  units: Units,
  lines: readonly LaidLine[] = [],
): StakeChoice {
  const reach = instruments.tapeLength.m;
  const perHole = holes.map(({ label, place }) => ({
    hole: label,
    crossing: crossingAt(place, a, b, instruments),
    withinTape: Math.max(distance(place, a), distance(place, b)) <= reach,
  }));
  const worst = perHole.reduce<(typeof perHole)[number] | null>(
    (most, next) => (most && most.crossing.drms >= next.crossing.drms ? most : next),
    null,
  );
  return {
    a,
    b,
    baseline: distance(a, b),
    perHole,
    worst: worst && { hole: worst.hole, crossing: worst.crossing },
    objections: objectionsTo({ a, b, holes, reach, units, lines }),
  };
}
