import type { JobQuantities } from '../../build/quantities.ts';
import type { PostLength } from '../../build/shopping.ts';
import { stockName } from '../../build/stock.ts';
import { thingName } from '../../job/words.ts';
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
    heads: ['From foot to top', 'With spare', 'Buy', ...(anyBought ? ['Bought'] : [])],
    rows: lengths.map((post) => [
      capital(thingName(postOf(post.hole), view.plan)),
      post.length === null
        ? NOT_KNOWN
        : `${formatLength(post.length, units)}${post.assumed ? ', ground assumed' : ''}`,
      post.needed === null ? NOT_KNOWN : formatLength(post.needed, units),
      buyWords(view, post),
      ...(anyBought ? [boughtWords(view, post)] : []),
    ]),
  };
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

/** Posts that were bought too short, in one sentence; empty where none is. Said before anything is poured. */
export function shortWords(view: JobView, lengths: readonly PostLength[]): string {
  const { units } = view.plan;
  const short = lengths.filter((post) => post.short?.of === 'top');
  if (short.length === 0) return '';
  const each = short.map(
    ({ hole, short: by }) => `${thingName(postOf(hole), view.plan)} by ${small(by!.by, units)}`,
  );
  const assumed = short.some((post) => post.assumed)
    ? ' The height of the ground is assumed there: read the rod on it first.'
    : '';
  return `Bought too short for its hole and its top: ${listWords(each)}.${assumed} Get a longer one before it is set in concrete.`;
}
