import type { PlanPoint } from '../../src/geometry/point.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { type Hole, holesOf } from '../../src/plan/index.ts';
import { judgeStakes, proposeStakes, STAKE_CLEARANCE } from '../../src/stakeout/index.ts';
import { surroundingsOf } from '../../src/stakeout/starts.ts';
import { metres, pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { randomPlan } from '../stakeout/random-plans.ts';

/** Plans of thirty holes: on a ring, in rows, and strewn by chance. */
export const THIRTY: readonly { readonly name: string; readonly holes: readonly Hole[] }[] = [
  { name: 'ring of 30', holes: holesOf(ringPlan({ count: 30, size: metres(7) })) },
  { name: 'grid of 6 × 5', holes: holesOf(rowsPlan({ columns: 6, rows: 5 })) },
  { name: '30 strewn', holes: strewn(30) },
];

/** The first of the random plans with free holes enough, cut to so many. */
function strewn(count: number): Hole[] {
  for (let seed = 1; ; seed++) {
    const { shape } = randomPlan(seed);
    if (shape.kind !== 'points' || shape.points.length < count) continue;
    const points = shape.points
      .slice(0, count)
      .map(({ label, right, front }) => [label, right.m, front.m] as const);
    return holesOf(pointsPlan(points));
  }
}

/** Advice on stakes, with what keeps a faster wrong answer from passing for a good one: the worst DRMS, metres. */
export function adviseOn(holes: readonly Hole[], { instruments, units }: Plan): number {
  return proposeStakes(holes, instruments, { units })?.worst?.crossing.drms ?? Number.NaN;
}

/** What the advice gives against a habit, both for the worst hole, metres. */
export interface AgainstHabit {
  readonly count: number;
  readonly advice: number;
  /** Both stakes at corners of the square that touches the ring's circle. */
  readonly square: number;
  /** The same square moved out until the stakes are clear of the holes. */
  readonly clear: number;
}

/** Rings of 3 m and of several counts: the advice against putting A and B at two corners of the ring's own square. */
export function againstHabit(): AgainstHabit[] {
  return [6, 8, 10, 12, 16, 24].map((count) => {
    const plan = ringPlan({ count });
    const holes = holesOf(plan);
    const at = (half: number) => {
      const [a, b]: [PlanPoint, PlanPoint] = [
        { x: -half, y: -half },
        { x: half, y: -half },
      ];
      return judgeStakes(a, b, holes, plan.instruments, plan.units).worst?.crossing.drms ?? Number.NaN;
    };
    const radius = 3;
    const clear = surroundingsOf(holes).clear;
    if (!(clear > radius + STAKE_CLEARANCE))
      throw new Error('stakes on this square would stand among the holes');
    return { count, advice: adviseOn(holes, plan), square: at(radius), clear: at(clear) };
  });
}
