import type { Instruments } from '../job/plan-schema.ts';
import type { Hole, LaidLine } from '../plan/index.ts';
import type { Units } from '../units/index.ts';
import { judgeStakes } from './judge-stakes.ts';
import { roundStakes } from './round-stakes.ts';
import { type Cost, cheapest, costOf, descend, type Found, placesOf, RULED_OUT } from './search.ts';
import { alongFamilies, freeFamily, type StakeFamily, type Surroundings, surroundingsOf } from './starts.ts';
import type { StakeChoice } from './types.ts';

/** What the yard and the job allow. */
export interface StakeWishes {
  readonly units: Units;
  /** Longest pull that is wanted, metres; the tape's length when absent. Given up where no pair can keep it. */
  readonly longestPull?: number;
  /** Lines on the ground that bar stakes and tapes. */
  readonly lines?: readonly LaidLine[];
}

/**
 * Where A and B would best stand: the pair that makes the worst-fixed hole best (least DRMS), clear of holes and spoil,
 * within the tape, and with all holes on the left of A–B, so that a tape is never swung to the wrong side.
 *
 * A search from coarse to fine over both places, the same every time: pairs of places round the plan, the best of them
 * walked downhill. What costs no more than a hundredth is then taken for convenience: A–B along the plan's own lines, and
 * after that half a hundredth for places in round numbers.
 *
 * Where the tape is too short for any pair, the tape is taken to be longer; where the ground leaves no place at all, the pair
 * that breaks its rules least is given. The choice then says so in its objections.
 *
 * @returns plan frame; null for a plan without holes
 */
export function proposeStakes(
  holes: readonly Hole[],
  instruments: Instruments,
  { units, longestPull = Number.POSITIVE_INFINITY, lines = [] }: StakeWishes,
): StakeChoice | null {
  if (holes.length === 0) return null;
  const around = surroundingsOf(holes);
  const within = (reach: number) => search(around, costOf(holes, instruments, reach, lines), units);
  const reach = Math.min(instruments.tapeLength.m, longestPull);
  const first = within(reach);
  const { a, b } = placesOf((first.cost < RULED_OUT ? first : (longer(within, reach) ?? first)).stakes);
  return judgeStakes(a, b, holes, instruments, units, lines);
}

/** What the shortest tape that does would give; null where no tape would, and it is the ground that leaves no place. */
function longer(within: (reach: number) => Found, reach: number): Found | null {
  if (within(LONGEST_TAPE).cost >= RULED_OUT) return null;
  for (let next = reach * LONGER; next < LONGEST_TAPE; next *= LONGER) {
    const found = within(next);
    if (found.cost < RULED_OUT) return found;
  }
  return within(LONGEST_TAPE);
}

/** A tape that is too short is taken to be longer by this factor, until it does. */
const LONGER = 1.25;
/** Longer than any tape (the longest sold are 100 m): by then it is not for want of tape. */
const LONGEST_TAPE = 300;

function search(around: Surroundings, cost: Cost, units: Units): Found {
  const free = bestOf(freeFamily(around), cost);
  const along = alongFamilies(around).map((family) => bestOf(family, cost));
  const best = Math.min(free.cost, ...along.map((found) => found.cost));
  const chosen = along.find((found) => costsLittle(found.cost, best, ALONG_MAY_COST)) ?? free;
  const stakes = roundStakes(chosen.stakes, units, (round) =>
    costsLittle(cost(round), chosen.cost, ROUND_MAY_COST),
  );
  return { stakes, cost: cost(stakes) };
}

/** Shares of the worst DRMS that conveniences may cost: A–B along the plan's lines, and round numbers. */
const ALONG_MAY_COST = 0.01;
const ROUND_MAY_COST = 0.005;

const costsLittle = (cost: number, best: number, share: number): boolean =>
  cost <= (best < RULED_OUT ? best * (1 + share) : best);

/** So many of the coarse pairs are walked downhill: the best are often turned copies of one another. */
const WALKED = 6;

function bestOf({ starts, directions, step }: StakeFamily, cost: Cost): Found {
  const found = cheapest(starts, WALKED, cost).map((start) => descend(start, step, directions, cost));
  return found.reduce((best, next) => (next.cost < best.cost ? next : best));
}
