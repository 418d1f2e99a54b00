import type { JobQuantities } from '../../build/quantities.ts';
import { type PostLength, shoppingLines } from '../../build/shopping.ts';
import { stockName, usualSpare } from '../../build/stock.ts';
import { lengthWords } from '../../job/length.ts';
import { USUAL_WASTE } from '../../judge/supplies.ts';
import type { JobView } from '../../judge/view.ts';
import { listWords } from '../../judge/words.ts';
import type { Units } from '../../units/index.ts';
import { loadWords, yieldShown, yieldUnit } from './volume-words.ts';

/** What to ask for at the yard, one thing a line. */
export function shoppingWords(view: JobView, lengths: readonly PostLength[], all: JobQuantities): string[] {
  const { units } = view.plan;
  const posts = shoppingLines(lengths).map(
    ({ stock, holes }) =>
      `${holes.length} ${holes.length === 1 ? 'post' : 'posts'} of ${stockName(stock, units)}: ${listWords(holes)}`,
  );
  const tooLong = lengths.filter(({ needed, stock }) => needed !== null && !stock).map(({ hole }) => hole);
  return [
    ...posts,
    ...(tooLong.length > 0 ? [`longer than any stock, to be ordered: ${listWords(tooLong)}`] : []),
    ...concreteWords(all, units),
    ...(all.gravel > 0 ? [`${loadWords(all.gravel, units)} of gravel`] : []),
  ];
}

/** A hole without a depth has no volume to tell: nothing is not the same as not known. */
function concreteWords(all: JobQuantities, units: Units): string[] {
  if (!(all.concrete > 0)) return ['concrete: not known before the holes have a depth'];
  const volume = loadWords(all.concrete, units);
  return all.bags === null
    ? [`${volume} of concrete, and what is wasted`]
    : [`${bagCount(all.bags)} of concrete (${volume} without waste)`];
}

/** What the list rests on, and what it leaves out. */
export function buySentences(view: JobView, lengths: readonly PostLength[], all: JobQuantities): string[] {
  const { plan } = view;
  const spare = plan.supplies?.spare ?? usualSpare(plan.units);
  const assumed = lengths.filter((post) => post.assumed).map(({ hole }) => hole);
  const noLength = lengths.filter(({ length }) => length === null);
  return [
    ...(assumed.length > 0 ? [assumedWords(view, assumed, lengths.length)] : []),
    ...noLength.slice(0, 1).map(({ why }) => `${why} ${depthWords(view)}`.trim()),
    `A post stands on the gravel and reaches its top with ${lengthWords(spare)} to cut off.`,
    ...(all.unknown.length > 0
      ? [`Not counted, since their depth is not known: ${listWords(all.unknown)}.`]
      : []),
    ...formWords(all),
  ];
}

function assumedWords({ plan }: JobView, assumed: readonly string[], count: number): string {
  const level = plan.supplies?.ground;
  const height = level ? `${lengthWords(level)} above the benchmark` : 'as high as the benchmark';
  const which = assumed.length === count ? 'every post' : `posts ${listWords(assumed)}`;
  return `The ground at ${which} is taken to lie ${height}, which nobody has measured: on a slope read the rod on the ground at each hole before you buy.`;
}

const depthWords = ({ plan }: JobView): string =>
  plan.rules.frostDepth === null ? 'Type the frost depth into the plan: ask the local building office.' : '';

function formWords({ holes }: JobQuantities): string[] {
  const without = holes.filter(({ withoutForm }) => withoutForm).map(({ hole }) => hole);
  if (without.length === 0) return [];
  return [
    `Of ${listWords(without)} what rises above the ground is not counted: the ground there is not measured.`,
  ];
}

/** What was used against what was reckoned, and what is still to come; empty before the first pour. */
export function usedWords({ used, usedFor, left, holes }: JobQuantities): string {
  const poured = holes.filter((hole) => hole.poured !== null).length;
  if (poured === 0) return '';
  const plain = `${bagCount(used)} went into ${poured} ${poured === 1 ? 'hole' : 'holes'}`;
  if (usedFor === null || left === null) return `${plain}.`;
  // Half bags are poured, too.
  const off = Math.round((used - usedFor) * 100) / 100;
  const against =
    off === 0 ? 'as reckoned' : `${Math.abs(off)} ${off > 0 ? 'more' : 'fewer'} than the ${usedFor} reckoned`;
  return `${plain}, ${against}. The other holes still take ${bagCount(left)}.`;
}

/** Where the count of bags comes from. */
export function bagWords({ plan: { supplies, units } }: JobView, all: JobQuantities): string {
  const { bagYield, waste } = supplies ?? {};
  if (bagYield === undefined) return 'Say what one bag makes, and the bags are counted.';
  const percent = Math.round((waste ?? USUAL_WASTE) * 100);
  const apart = all.holes.reduce((sum, { bags }) => sum + (bags ?? 0), 0);
  const rounding =
    apart === all.bags
      ? ''
      : ` Hole by hole it would be ${apart}, each rounded up: an opened bag serves the next hole.`;
  return `At ${yieldShown(bagYield, units)} ${yieldUnit(units)} a bag, with ${percent} % for waste.${rounding}`;
}

const bagCount = (bags: number): string => `${bags} ${bags === 1 ? 'bag' : 'bags'}`;
