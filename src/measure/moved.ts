import { subtract, type Vec } from '../geometry/point.ts';
import type { Entry, EntryOf, Thing } from '../job/entry-schema.ts';
import { isKind, standing, thingKey } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/hole.ts';
import { type Adjusted, adjusted } from './adjusted.ts';
import { chiSquareChance } from './chi-square.ts';
import { isKnown } from './determined.ts';
import { heights } from './heights.ts';
import { networkOf } from './network.ts';
import { ALIKE_WITHIN, standardised } from './snooping.ts';
import { placeOf, testedOf } from './solution.ts';

/** A stake that seems to stand elsewhere since some pull. */
export interface Move {
  readonly stake: Thing;
  /** The first pull that finds it elsewhere. */
  readonly since: string;
  /** From where it stood to where it stands, metres, site frame; null where the pulls since do not fix it. */
  readonly by: Vec | null;
}

export interface Moves {
  /** Likeliest first; more than one means that the pulls do not tell which stake moved. */
  readonly moves: readonly Move[];
  /** One misread pull would explain the readings as well. */
  readonly orMisread: boolean;
}

/** Chance by luck alone below which a move is believed: as for a single misreading. */
const SIGNIFICANCE = 0.001;

/** A gap in the log that begins a new session: long enough for somebody to have driven a barrow into a stake, seconds. */
const NEW_SESSION_S = 3600;

/** The last so many moments are looked at, for each stake: a move that long ago would have shown before. */
const MOST_MOMENTS = 24;

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
): Moves | null {
  const log = standing(entries);
  const levels = heights(log, instruments).heights;
  const settle = (some: readonly Entry[]) =>
    adjusted(networkOf(some, holes, levels, instruments), baseline, instruments);
  const still = settle(log).solution;
  const trials = momentsOf(log)
    .map(({ stake, at }) => ({ stake, at, ...settle(split(log, stake, at)) }))
    .map((trial) => ({ ...trial, fall: still.chiSquare - trial.solution.chiSquare }));
  const likeliest = bestOfEach(trials);
  const best = likeliest[0];
  if (!best || chiSquareChance(best.fall, 2) > SIGNIFICANCE) return null;
  // A misread pull has one thing to be found, its size; a moved stake two. Each is worth 2 of χ² (Akaike 1974).
  const misread = greatestSquare(testedOf(still)) + 2;
  if (misread > best.fall + ALIKE_WITHIN) return null;
  return {
    moves: likeliest
      .filter(({ fall }) => fall >= best.fall - ALIKE_WITHIN)
      .map(({ stake, at, solution, places }) => ({
        stake,
        since: log[at]!.id,
        by: shiftOf(thingKey(stake), solution, places),
      })),
    orMisread: misread >= best.fall - ALIKE_WITHIN,
  };
}

interface Moment {
  readonly stake: Thing;
  /** Place in the log of the first pull after it. */
  readonly at: number;
}

/**
 * When each stake may have been found elsewhere: at its first pull after a check began. A check begins where lines that were
 * pulled before are pulled again, where one of them is pulled yet again, and after a gap in the log.
 */
function momentsOf(log: readonly Entry[]): Moment[] {
  const seen = new Set<string>();
  const moments = new Map<string, Moment[]>();
  let check = new Set<string>();
  let waiting = new Set<string>();
  let last: number | null = null;
  for (const [at, entry] of log.entries()) {
    if (!isKind(entry, 'pull')) continue;
    const time = Date.parse(entry.at) / 1000;
    const line = lineOf(entry);
    const again = seen.has(line);
    const rested = last !== null && time - last > NEW_SESSION_S;
    if (rested || (again && (check.size === 0 || check.has(line)))) {
      check = new Set();
      waiting = new Set(moments.keys());
    }
    if (again) check.add(line);
    else if (!rested) check.clear();
    for (const { thing } of [entry.body.from, entry.body.to]) {
      if (thing.kind !== 'stake') continue;
      const key = thingKey(thing);
      const known = moments.get(key) ?? [];
      if (waiting.delete(key)) known.push({ stake: thing, at });
      moments.set(key, known);
    }
    seen.add(line);
    last = time;
  }
  return [...moments.values()].flatMap((list) => list.slice(-MOST_MOMENTS));
}

const lineOf = ({ body }: EntryOf<'pull'>): string =>
  [body.from, body.to]
    .map(({ thing }) => thingKey(thing))
    .sort()
    .join(' ');

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

/** The likeliest moment of each stake, likeliest stake first. */
function bestOfEach<T extends Moment & { readonly fall: number }>(trials: readonly T[]): T[] {
  const byStake = new Map<string, T[]>();
  for (const trial of trials) {
    const key = thingKey(trial.stake);
    byStake.set(key, [...(byStake.get(key) ?? []), trial]);
  }
  return [...byStake.values()]
    .map((list) => {
      const fall = Math.max(...list.map((trial) => trial.fall));
      return { ...list.findLast((trial) => trial.fall >= fall - SAME_MOMENT)!, fall };
    })
    .sort((p, q) => q.fall - p.fall);
}

function greatestSquare(tested: ReturnType<typeof testedOf>): number {
  return tested.residual.reduce((greatest, _, k) => Math.max(greatest, standardised(tested, k) ** 2), 0);
}

function shiftOf(key: string, solution: Adjusted['solution'], places: Adjusted['places']): Vec | null {
  const stands = solution.model.network.nodes.filter((node) => node.key === key);
  const [before, after] = [stands.at(-2), stands.at(-1)];
  if (!before || !after || !isKnown(places[before.index]!) || !isKnown(places[after.index]!)) return null;
  return subtract(placeOf(solution, after.index), placeOf(solution, before.index));
}
