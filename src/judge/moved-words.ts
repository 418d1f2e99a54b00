import { cross, dot, length, type SitePoint, scale, subtract, type Vec } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingName } from '../job/words.ts';
import type { Units } from '../units/index.ts';
import type { JobView } from './view.ts';
import { capital, listWords, small } from './words.ts';

/** `stake A`, `nail N1`: a bare `A` would be no word in the middle of a sentence. */
export const stakeName = (stake: Thing): string =>
  stake.kind === 'stake' ? `stake ${stake.label}` : thingName(stake);

/** A part of a shift under three tenths of the other (17°) is left unsaid. */
const MINOR_PART = 0.3;

/**
 * A shift of a stake as told to someone who stands at it and looks at another: `25 mm toward B`,
 * `18 mm away from B and 12 mm to the left as you face B`.
 *
 * @param other what is looked at, and where it stands
 */
export function shiftWords(
  at: SitePoint,
  shift: Vec,
  other: { readonly name: string; readonly place: SitePoint },
  units: Units,
): string {
  const line = subtract(other.place, at);
  const toward = scale(line, 1 / length(line));
  const along = { size: dot(toward, shift), more: `toward ${other.name}`, less: `away from ${other.name}` };
  const aside = {
    size: cross(toward, shift),
    more: `to the left as you face ${other.name}`,
    less: `to the right as you face ${other.name}`,
  };
  const [main, minor] = Math.abs(along.size) >= Math.abs(aside.size) ? [along, aside] : [aside, along];
  const say = (size: number, { more, less }: typeof along, of: number) =>
    `${small(size, units)} ${of >= 0 ? more : less}`;
  if (Math.abs(minor.size) < MINOR_PART * Math.abs(main.size)) return say(length(shift), main, main.size);
  return [main, minor].map((part) => say(part.size, part, part.size)).join(' and ');
}

/** How many times likelier than anything else, in round words. */
export function oddsWords(odds: number): string {
  const [, words] = ROUND_ODDS.find(([least]) => odds >= least) ?? [0, 'about as likely as not'];
  return words;
}

/** A millionth off, for the odds are held to their greatest by a root and a power. */
const ROUND_ODDS = [
  [1e6 * (1 - 1e-6), 'more than a million to 1'],
  [1e4, 'more than 10,000 to 1'],
  [1e3, 'more than 1,000 to 1'],
  [1e2, 'more than 100 to 1'],
  [10, 'more than 10 to 1'],
] as const;

/** `stake A has moved`, `either stake A or stake B has moved`. */
export const movedWords = (stakes: readonly Thing[]): string =>
  `${stakes.length === 2 ? 'either ' : ''}${listWords(stakes.map(stakeName), 'or')} has moved`;

/** Why nothing that hangs on a stake is believed while it is not settled whether it moved. */
export function shakenWords(view: JobView, thing: Thing): string {
  const stakes = view.shaken.stakes.map(stakeName);
  const name = capital(thingName(thing, view.plan));
  return `${name} was measured from ${listWords(stakes, 'or')}, which seems to have moved: see to that first.`;
}
