import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/index.ts';
import { checkPulls, stakePull } from './check-pulls.ts';
import { guardingPairs, type Pair } from './guarding-pulls.ts';
import type { PlannedPull } from './types.ts';
import { workOrder } from './work-order.ts';

export interface CheckSetAsked {
  readonly holes: readonly SitedHole[];
  /** A to B, metres. */
  readonly baseline: number;
  readonly instruments: Instruments;
  /** How far a misreading that does not show may move a stake, metres. */
  readonly shiftAllowed: number;
}

/** The pulls between stakes before anybody digs. */
export interface CheckSet {
  /** The fewest that guard every hole, in the order of the walk. */
  readonly guarding: readonly PlannedPull[];
  /** Sides, diagonals and pulls across that guard nothing more. */
  readonly further: readonly PlannedPull[];
  /** Holes that the few leave unguarded, by label: all of them where there are too many to search. */
  readonly unguarded: readonly string[];
}

/** Beyond so many holes the search takes too long to wait for: then all that people pull is asked for. */
const MOST_GUARDED = 200;
/** So many stakes are guarded together; more are taken by stretches of the walk, or the search would take seconds on a phone. */
const TOGETHER = 32;

/**
 * The check pulls of a plan: the few that guard every hole against an inch misread in any one pull, and the rest of what people
 * pull. Never more of the few than neighbours and pulls across are together.
 */
export function checkSet({ holes, baseline, instruments, shiftAllowed }: CheckSetAsked): CheckSet {
  const usual = checkPulls(holes, instruments);
  if (holes.length > MOST_GUARDED)
    return { guarding: [], further: usual, unguarded: holes.map(({ label }) => label) };
  const asUsual = new Map(usual.map((pull) => [keyOf(pull), pull]));
  const pullOf = (one: SitedHole, other: SitedHole): PlannedPull => {
    const [first, second] = holes.indexOf(one) < holes.indexOf(other) ? [one, other] : [other, one];
    const pull = stakePull(purposeOf(one, other), first, second);
    // Either way round it is one pull: as people make it, where they do.
    return { ...pull, ...asUsual.get(keyOf(pull)), purpose: pull.purpose };
  };
  const chosen: PlannedPull[] = [];
  const unguarded: string[] = [];
  for (const group of stretches(holes)) {
    const pulls = ([i, j]: Pair) => pullOf(group[i]!, group[j]!);
    const found = guardingPairs({
      places: group.map(({ site }) => site),
      baseline,
      instruments,
      shiftAllowed,
      most: Math.floor((usual.length * group.length) / holes.length),
      liked: (pair) => asUsual.has(keyOf(pulls(pair))),
    });
    // The holes of a stretch are in the order of the walk already.
    chosen.push(...[...found.pairs].sort(([i, j], [k, l]) => i - k || j - l).map(pulls));
    unguarded.push(...found.unguarded.map((i) => group[i]!.label));
  }
  const taken = new Set(chosen.map(keyOf));
  return { guarding: chosen, further: usual.filter((pull) => !taken.has(keyOf(pull))), unguarded };
}

/** The holes in the order of the walk, in stretches of like length. */
function stretches(holes: readonly SitedHole[]): SitedHole[][] {
  const byLabel = new Map(holes.map((hole) => [hole.label, hole]));
  const walk = workOrder(holes.map(({ label, site }) => ({ label, at: site }))).flatMap(
    (label) => byLabel.get(label) ?? [],
  );
  const groups = Math.ceil(walk.length / TOGETHER);
  const each = Math.ceil(walk.length / Math.max(groups, 1));
  return Array.from({ length: groups }, (_, k) => walk.slice(k * each, (k + 1) * each));
}

const holeOf = ({ thing }: PlannedPull['from']): string => ('hole' in thing ? thing.hole : '');

const keyOf = ({ from, to }: PlannedPull): string => [holeOf(from), holeOf(to)].sort().join('\n');

/** What two stakes are to each other: a side, a diagonal of a bay, a chord over the one between, or across. */
function purposeOf(one: SitedHole, other: SitedHole): PlannedPull['purpose'] {
  if (one.neighbours.includes(other.label)) return 'neighbour';
  const between = one.neighbours.filter((label) => other.neighbours.includes(label)).length;
  if (between === 0) return 'across';
  return between === 1 ? 'chord' : 'diagonal';
}
