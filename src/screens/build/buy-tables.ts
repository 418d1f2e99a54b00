import type { JobQuantities } from '../../build/quantities.ts';
import type { PostLength } from '../../build/shopping.ts';
import { stockName } from '../../build/stock.ts';
import { thingName } from '../../job/words.ts';
import { lengthTold } from '../../judge/frame-words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital, listWords, small } from '../../judge/words.ts';
import { formatLength } from '../../units/index.ts';
import type { PaperTable } from './paper-table.tsx';
import { volumeWords } from './volume-words.ts';

const NOT_KNOWN = 'not known';

/** Every post: from what it stands on to its top, what to ask for, and whether what was bought will do. */
export function lengthsTable(view: JobView, lengths: readonly PostLength[]): PaperTable {
  const { units } = view.plan;
  const anyBought = lengths.some(({ bought }) => bought !== null);
  return {
    caption: 'Posts',
    nameHead: 'Post',
    heads: ['Length', 'With spare', 'Buy', ...(anyBought ? ['Bought'] : [])],
    rows: lengths.map((post) => [
      capital(thingName(postOf(post.hole), view.plan)),
      lengthWords(view, post),
      post.needed === null ? NOT_KNOWN : formatLength(post.needed, units),
      buyWords(view, post),
      ...(anyBought ? [boughtWords(view, post)] : []),
    ]),
  };
}

/** With the doubt of the ground; where that is assumed there is no saying how much. */
function lengthWords({ plan: { units } }: JobView, { length, sigma, assumed }: PostLength): string {
  if (length === null) return NOT_KNOWN;
  return assumed
    ? `${formatLength(length, units)}, ground assumed`
    : lengthTold({ is: length, sigma }, units);
}

function buyWords({ plan: { units } }: JobView, { needed, stock }: PostLength): string {
  if (needed === null) return '—';
  return stock ? stockName(stock, units) : 'longer than any stock';
}

function boughtWords({ plan: { units } }: JobView, { bought, short, length }: PostLength): string {
  if (bought === null) return '—';
  const is = formatLength(bought, units);
  if (length === null) return is;
  if (!short) return `${is}, long enough`;
  return `${is}, ${small(short.by, units)} ${short.of === 'top' ? 'too short' : 'short of its spare'}`;
}

/** Concrete and gravel by hole; bags where a yield is known, beside those that were poured. */
export function fillTable(view: JobView, { holes, bags }: JobQuantities): PaperTable {
  const { units } = view.plan;
  const volume = (m3: number | null) => (m3 === null ? NOT_KNOWN : volumeWords(m3, units));
  return {
    caption: 'Concrete and gravel by hole',
    nameHead: 'Hole',
    heads: ['As planned', 'As dug', ...(bags === null ? [] : ['Bags']), 'Poured', 'Gravel'],
    rows: holes.map((hole) => [
      hole.hole,
      volume(hole.asPlanned),
      hole.from === 'dug' ? volume(hole.concrete) : 'not dug',
      ...(bags === null ? [] : [hole.bags === null ? NOT_KNOWN : String(hole.bags)]),
      hole.poured === null ? 'no' : `${hole.poured} bags`,
      volume(hole.gravel),
    ]),
  };
}

/** More posts than this are named together, and how short each is stands in the table. */
const MOST_NAMED = 3;

/** Posts that were bought too short, in two or three sentences; empty where none is. Said before anything is poured. */
export function shortWords(view: JobView, lengths: readonly PostLength[]): string {
  const { units, supplies } = view.plan;
  const short = lengths.flatMap((post) => (post.short?.of === 'top' ? [{ ...post, by: post.short.by }] : []));
  if (short.length === 0) return '';
  const named = short.map(({ hole, by }) => `${thingName(postOf(hole), view.plan)} by ${small(by, units)}`);
  const worst = Math.max(...short.map(({ by }) => by));
  const holes = listWords(short.map(({ hole }) => hole));
  const who =
    short.length > MOST_NAMED ? `posts ${holes}, by up to ${small(worst, units)}` : listWords(named);
  const assumed = short.some((post) => post.assumed)
    ? ` The ground is taken to be level${supplies?.ground ? '' : ' with the benchmark'} there: read the rod on it first.`
    : '';
  return `Bought too short to reach from the gravel to the top: ${who}.${assumed} No post goes into concrete that is too short.`;
}
