import { type CheckSet, NOTICED, type PlannedPull } from '../../stakeout/index.ts';
import { formatSmall, type Units } from '../../units/index.ts';
import type { Present } from './present.ts';

/** What the check pulls do together. */
export function guardWords({ guarding, unguarded }: CheckSet, units: Units): string {
  if (guarding.length === 0)
    return 'No few pulls guard every hole here: pull the sides and the diagonals that the tape reaches.';
  const pulls = guarding.length === 1 ? 'This one pull guards' : `These ${guarding.length} pulls guard`;
  return `${pulls} every hole${exceptWords(unguarded)}: a misreading of ${formatSmall(NOTICED, units)} in any one pull shows.`;
}

/** The same, and how many of them are still to be read. */
export function guardProgress(set: CheckSet, present: Present, units: Units): string {
  const left = set.guarding.length - readOf(set.guarding, present);
  return `${guardWords(set, units)} ${left === 0 ? 'All are read.' : `${left} to go.`}`;
}

/** Beyond so many they are counted, not named. */
const MOST_NAMED = 4;

function exceptWords(unguarded: readonly string[]): string {
  if (unguarded.length === 0) return '';
  if (unguarded.length > MOST_NAMED) return ` but ${unguarded.length}`;
  return ` but ${unguarded.join(', ')}`;
}

/** How many of the pulls are read as the stakes stand now. */
export const readOf = (pulls: readonly PlannedPull[], present: Present): number =>
  pulls.filter(({ from, to }) => present.pull(from.thing, to.thing)).length;
