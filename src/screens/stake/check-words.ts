import { listWords } from '../../judge/words.ts';
import { type CheckSet, NOTICED, type PlannedPull } from '../../stakeout/index.ts';
import { formatSmall, type Units } from '../../units/index.ts';
import type { Present } from './present.ts';

/** What the check pulls do together. */
export function guardWords(set: CheckSet, units: Units): string {
  const { guarding } = set;
  if (guarding.length === 0)
    return 'No few pulls guard every hole here: pull the sides and the diagonals that the tape reaches.';
  const pulls = guarding.length === 1 ? 'This one pull guards' : `These ${guarding.length} pulls guard`;
  return `${pulls} ${whatShows(set, units)}`;
}

/** What one of them is for; of one that guards nothing more, what all of them are for. */
export function checkWords(set: CheckSet, pull: PlannedPull, present: Present, units: Units): string {
  if (!set.guarding.includes(pull))
    return 'A misread tape moves a stake unseen. A pull between stakes shows it.';
  const count = set.guarding.length;
  const one = count === 1 ? 'This pull guards' : `This is one of ${count} pulls that guard`;
  return `${one} ${whatShows(set, units)} ${toGo(set, present)}`;
}

/** What they do together, and how many of them are still to be read. */
export function guardProgress(set: CheckSet, present: Present, units: Units): string {
  return `${guardWords(set, units)} ${toGo(set, present)}`;
}

const whatShows = ({ unguarded }: CheckSet, units: Units): string =>
  `${guardedHoles(unguarded)}: a misreading of ${formatSmall(NOTICED, units)} in any one pull shows.`;

/** Of those that guard the holes; where no few do, of all that the tape reaches. */
function toGo({ guarding, further }: CheckSet, present: Present): string {
  const asked = guarding.length > 0 ? guarding : further;
  const left = asked.length - readOf(asked, present);
  return left === 0 ? 'All are read.' : `${left} to go.`;
}

/** Beyond so many they are counted, not named. */
const MOST_NAMED = 4;

/** Labels are often numbers: a bare `but 5` could be hole 5 or five holes. */
function guardedHoles(unguarded: readonly string[]): string {
  if (unguarded.length === 0) return 'every hole';
  if (unguarded.length > MOST_NAMED) return `all but ${unguarded.length} of the holes`;
  return `every hole but ${unguarded.length === 1 ? 'hole' : 'holes'} ${listWords(unguarded)}`;
}

/** How many of the pulls are read as the stakes stand now. */
export const readOf = (pulls: readonly PlannedPull[], present: Present): number =>
  pulls.filter(({ from, to }) => present.pull(from.thing, to.thing)).length;
