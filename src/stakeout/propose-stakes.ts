import type { Instruments } from '../job/plan-schema.ts';
import type { Hole } from '../plan/index.ts';
import type { Units } from '../units/index.ts';
import { judgeStakes } from './judge-stakes.ts';
import { roundStakes } from './round-stakes.ts';
import { type Cost, cheapest, costOf, descend, type Found, placesOf, RULED_OUT } from './search.ts';
import { alongFamilies, freeFamily, type StakeFamily, surroundingsOf } from './starts.ts';
import type { StakeChoice } from './types.ts';

/** What the yard and the job allow. */
export interface StakeWishes {
  readonly units: Units;
  /** Longest pull that is wanted, metres: the tape's length when absent. */
  readonly longestPull?: number;
}

/**
 * Where A and B would best stand: the pair that makes the worst-fixed hole best (least DRMS), clear of holes and spoil,
 * within the tape, and with all holes on the left of A–B, so that a tape is never swung to the wrong side.
 *
 * A search from coarse to fine over both places, the same every time: rings of places round the plan, the best of them
 * walked downhill. What costs less than a hundredth is then taken for convenience: A–B along the plan's own lines, and
 * places in round numbers.
 *
 * Where the tape is too short for any pair, the least bad one is given, with its objections.
 *
 * @returns plan frame; null for a plan without holes
 */
export function proposeStakes(
  holes: readonly Hole[],
  instruments: Instruments,
  wishes: StakeWishes,
): StakeChoice | null {
  if (holes.length === 0) return null;
  const reach = Math.min(instruments.tapeLength.m, wishes.longestPull ?? Number.POSITIVE_INFINITY);
  const cost = costOf(holes, instruments, reach);
  const around = surroundingsOf(holes);
  const free = bestOf(freeFamily(around), cost);
  const along = alongFamilies(around).map((family) => bestOf(family, cost));
  const best = Math.min(free.cost, ...along.map((found) => found.cost));
  const chosen = along.find((found) => costsLittle(found.cost, best)) ?? free;
  const rounded = roundStakes(chosen.stakes, wishes.units, (stakes) =>
    costsLittle(cost(stakes), chosen.cost),
  );
  const { a, b } = placesOf(rounded);
  return judgeStakes(a, b, holes, instruments, wishes.units);
}

/** A–B along the plan's lines, and then round numbers, may each cost this share of the worst hole's DRMS. */
const CONVENIENCE = 0.005;

const costsLittle = (cost: number, best: number): boolean =>
  cost <= (best < RULED_OUT ? best * (1 + CONVENIENCE) : best);

/** So many of the coarse pairs are walked downhill: the best are often turned copies of one another. */
const WALKED = 6;

function bestOf({ starts, directions, step }: StakeFamily, cost: Cost): Found {
  const found = cheapest(starts, WALKED, cost).map((start) => descend(start, step, directions, cost));
  return found.reduce((best, next) => (next.cost < best.cost ? next : best));
}
