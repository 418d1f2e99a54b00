import { subtract } from '../geometry/point.ts';
import type { Entry, Thing } from '../job/entry-schema.ts';
import { standing, thingKey } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole, SitedReference } from '../plan/hole.ts';
import { type Adjusted, adjusted } from './adjusted.ts';
import { chiSquareChance } from './chi-square.ts';
import { isKnown } from './determined.ts';
import { heights } from './heights.ts';
import { PER_NODE } from './model.ts';
import { type Moment, momentsOf } from './moments.ts';
import { scores } from './moved-score.ts';
import { networkOf } from './network.ts';
import { ALIKE_WITHIN, standardised, type Tested } from './snooping.ts';
import { covariancesAmong, placeOf, type Solution, testedOf } from './solution.ts';
import type { Covariance, Move, Moves } from './types.ts';

/** Chance by luck alone below which a move is believed: as for a single misreading. */
const SIGNIFICANCE = 0.001;

/**
 * Looks for a stake that moved without anybody's saying so. For every stake, and every moment at which it was pulled again,
 * the readings are settled once more with two stands of the stake, before and after; the fall of χ² is a chi-square with 2
 * degrees of freedom when nothing moved (Koch, "Parameter Estimation and Hypothesis Testing in Linear Models", ch. 3).
 *
 * @param entries a whole log, in any order
 * @returns null when nothing says that a stake moved, or one misread pull explains the readings far better
 */
export function movedStakes(
  entries: readonly Entry[],
  holes: readonly SitedHole[],
  baseline: number | null,
  instruments: Instruments,
  references: readonly SitedReference[] = [],
): Moves | null {
  const log = standing(entries);
  const levels = heights(log, instruments).heights;
  const settle = (some: readonly Entry[]) =>
    adjusted(networkOf(some, holes, levels, instruments, references), baseline, instruments);
  const { solution } = settle(log);
  return movesIn(log, solution, testedOf(solution), settle);
}

/**
 * As `movedStakes`, for a log that is settled already. What a score test finds not worth it is not settled once more, so
 * that a job in which nothing moved costs next to nothing.
 *
 * @param log that stands, in order
 * @param tested of that solution
 */
export function movesIn(
  log: readonly Entry[],
  still: Solution,
  tested: Tested,
  settle: (log: readonly Entry[]) => Adjusted,
): Moves | null {
  // A misread pull has one thing to be found, its size; a moved stake two. Each is worth 2 of χ² (Akaike 1974).
  const misread = greatestSquare(tested) + 2;
  const trials = worthSettling(log, still, misread)
    .map(({ stake, at }) => ({ stake, at, ...settle(split(log, stake, at)) }))
    .map((trial) => ({ ...trial, fall: still.chiSquare - trial.solution.chiSquare }));
  const likeliest = bestOfEach(trials);
  const best = likeliest[0];
  if (!best || chiSquareChance(best.fall, 2) > SIGNIFICANCE) return null;
  if (misread > best.fall + ALIKE_WITHIN) return null;
  const rival = Math.max(misread, likeliest[1]?.fall ?? 0);
  return {
    moves: likeliest
      .filter(({ fall }) => fall >= best.fall - ALIKE_WITHIN)
      .map(({ stake, at, solution, places }) => ({
        stake,
        since: log[at]!.id,
        ...shiftOf(thingKey(stake), solution, places),
      })),
    orMisread: misread >= best.fall - ALIKE_WITHIN,
    odds: Math.exp(Math.min(best.fall - rival, MOST_LOG_ODDS) / 2),
  };
}

/** Odds beyond a million to one say no more than that, and stay finite. */
const MOST_LOG_ODDS = 2 * Math.log(1e6);

/** The score test is linear; what it finds is believed to this share only when it speaks against settling once more. */
const SCORE_SHARE = 0.7;
/** A misreading of feet bends the distance equations: nothing is ruled out by the score test then. */
const STRAIGHT_TO = 30 ** 2;

/** The moments that could be the one, by the score test: for each stake the likeliest, and the latest about as likely. */
function worthSettling(log: readonly Entry[], still: Solution, misread: number): Moment[] {
  const moments = momentsOf(log);
  if (moments.length === 0) return [];
  const scored = scores(still, moments);
  const greatest = Math.max(...scored.map(({ fall }) => fall));
  if (chiSquareChance(greatest / SCORE_SHARE, 2) > SIGNIFICANCE) return [];
  if (misread < STRAIGHT_TO && misread > greatest / SCORE_SHARE + ALIKE_WITHIN) return [];
  return [...new Set([...bestOfEach(scored), ...greatestOfEach(scored)].map(({ moment }) => moment))];
}

/** The log as if the stake had been known to move before the entry at `at`. */
function split(log: readonly Entry[], stake: Thing, at: number): Entry[] {
  const moved: Entry = {
    ...log[at]!,
    id: 'supposed-move',
    body: { kind: 'stand', thing: stake, event: 'moved' },
  };
  return [...log.slice(0, at), moved, ...log.slice(at)];
}

/** Moments whose fall of χ² differs by less are not told apart; the latest then asks least of the readings. */
const SAME_MOMENT = 4;

/** The likeliest moment of each stake, of those about as likely the latest; likeliest stake first. */
function bestOfEach<T extends { readonly stake: Thing; readonly fall: number }>(trials: readonly T[]): T[] {
  return byStake(trials)
    .map((list) => {
      const fall = Math.max(...list.map((trial) => trial.fall));
      return { ...list.findLast((trial) => trial.fall >= fall - SAME_MOMENT)!, fall };
    })
    .sort((p, q) => q.fall - p.fall);
}

const greatestOfEach = <T extends { readonly stake: Thing; readonly fall: number }>(
  trials: readonly T[],
): T[] => byStake(trials).map((list) => list.reduce((best, next) => (next.fall > best.fall ? next : best)));

/** In the order of the log. */
function byStake<T extends { readonly stake: Thing }>(trials: readonly T[]): T[][] {
  const lists = new Map<string, T[]>();
  for (const trial of trials) {
    const key = thingKey(trial.stake);
    lists.set(key, [...(lists.get(key) ?? []), trial]);
  }
  return [...lists.values()];
}

function greatestSquare(tested: Tested): number {
  return tested.residual.reduce((greatest, _, k) => Math.max(greatest, standardised(tested, k) ** 2), 0);
}

function shiftOf(
  key: string,
  solution: Adjusted['solution'],
  places: Adjusted['places'],
): Pick<Move, 'by' | 'covariance'> {
  const stands = solution.model.network.nodes.filter((node) => node.key === key);
  const [before, after] = [stands.at(-2), stands.at(-1)];
  if (!before || !after || !isKnown(places[before.index]!) || !isKnown(places[after.index]!))
    return { by: null, covariance: null };
  const by = subtract(placeOf(solution, after.index), placeOf(solution, before.index));
  return { by, covariance: differenceCovariance(solution, before.index, after.index) };
}

function differenceCovariance(solution: Solution, one: number, other: number): Covariance {
  const at = [one, other].flatMap((node) => [node * PER_NODE, node * PER_NODE + 1]);
  const c = covariancesAmong(solution, at);
  const of = (p: 0 | 1, q: 0 | 1) => c[p]![q]! + c[p + 2]![q + 2]! - c[p]![q + 2]! - c[p + 2]![q]!;
  return { xx: of(0, 0), xy: of(0, 1), yy: of(1, 1) };
}
