import type { JobView } from '../../../judge/view.ts';
import { small } from '../../../judge/words.ts';
import type { SitedHole } from '../../../plan/index.ts';
import { LONG_STRING } from '../../../stakeout/string-sag.ts';
import type { LaidString } from '../../../stakeout/string-types.ts';
import { type HoleTies, tiesOf } from '../../../stakeout/ties.ts';
import type { Drawn } from '../../../ui/index.ts';
import { drawnNear, drawnString } from '../strings/drawn-strings.ts';
import {
  crossingWords,
  nailDoubtWords,
  offsetWords,
  sagWords,
  standsForWords,
  stringsWords,
} from '../strings/string-words.ts';
import type { JobStrings } from '../strings/strings-of.ts';
import {
  NONE,
  reads,
  type SheetCard,
  type SheetDrawing,
  type SheetPart,
  type SheetTable,
  TO_WRITE,
} from './sheet-parts.ts';

/** Every string with its nails, and its marks. */
export function stringsPart(view: JobView, { plan }: JobStrings, drawing: SheetDrawing): SheetPart | null {
  if (plan.strings.length === 0) return null;
  const { units } = view.plan;
  const [first] = plan.strings;
  const doubts = plan.strings.flatMap((string) =>
    string.nails.flatMap((nail) => {
      const words = nailDoubtWords(nail, string, units, view.inHand);
      return words === null ? [] : [`Nail ${nail.label}: ${words}`];
    }),
  );
  return {
    heading: 'Strings',
    drawing,
    sentences: [
      ...stringsWords(plan, units),
      standsForWords(first!, view.ground).replace('This string stands', 'Every string stands'),
      sagWords({ ...first!, length: 0 }, units),
      ...doubts,
    ],
    tables: [stringsTable(view, plan.strings), nailsTable(view, plan.strings)],
  };
}

const stringsTable = (view: JobView, strings: readonly LaidString[]): SheetTable => ({
  readings: 2,
  caption: 'Marks along every string, from its first nail',
  nameHead: 'String',
  heads: ['Nail to nail', 'Marks', 'Nails', 'Hangs in the middle'],
  rows: strings.map(({ label, nails, length, marks, sag }) => [
    label,
    reads(view, length),
    marks.map(({ hole, at }) => `hole ${hole} at ${reads(view, at)}`).join('; '),
    `${nails[0].label} to ${nails[1].label}`,
    length < LONG_STRING ? NONE : `${small(sag, view.plan.units)}: hold it up halfway`,
  ]),
});

const nailsTable = (view: JobView, strings: readonly LaidString[]): SheetTable => ({
  readings: 2,
  caption: 'Nails of the strings, level tapes',
  nameHead: 'Nail',
  heads: ['From A', 'From B', 'Side', 'Read, A', 'Read, B'],
  rows: strings.flatMap(({ nails }) =>
    nails.map(({ label, pulls: { fromA, fromB, side, withinTape } }) => [
      label,
      withinTape ? reads(view, fromA) : 'off the string',
      withinTape ? reads(view, fromB) : 'off the string',
      side === 'on-line' ? 'on the line' : side,
      TO_WRITE,
      TO_WRITE,
    ]),
  ),
});

/** So far round a hole is drawn: its offset stakes and its neighbours, metres. */
const REACH = 2.6;
/** Size of the drawing of one hole's ties, pixels. */
const CARD = { width: 190, maxHeight: 170 };
/** More holes than these have their ties in words alone: drawings of hundreds would make a book. */
const MOST_DRAWN = 40;

/** The ways back to every centre that survive the digging. */
export function tiesPart(view: JobView, strings: JobStrings, drawn: Drawn): SheetPart {
  const holes = strings.asked.holes.filter(({ label }) => !view.dugHoles.has(label));
  const isDrawn = holes.length <= MOST_DRAWN;
  return {
    heading: 'Ties: the way back to every centre after digging',
    sentences: [
      'Digging takes the stake away. Make two ties of each hole before it is dug: one may be knocked. Offset stakes go nail to nail from the hole’s own stake, in one line with it; write hole, length and side on each.',
    ],
    cards: holes.map((hole) => tieCard(view, strings, hole, isDrawn ? drawn : null)),
  };
}

function tieCard(view: JobView, strings: JobStrings, hole: SitedHole, drawn: Drawn | null): SheetCard {
  const ties = tiesOf(hole, strings.asked, strings.plan);
  return {
    heading: `Hole ${hole.label}`,
    sentences: tieSentences(view, hole, ties),
    drawing: drawn && tieDrawing(strings, hole, ties, drawn),
  };
}

function tieSentences(view: JobView, hole: SitedHole, ties: HoleTies): string[] {
  const { tapes } = ties;
  return [
    ...ties.offsets.map((pair) => offsetWords(pair, hole, view.ground, view.inHand)),
    ...(ties.strings ? [crossingWords(ties.strings)] : []),
    ...(tapes
      ? [`Tapes: ${reads(view, tapes.fromA)} from A, ${reads(view, tapes.fromB)} from B, while both stand.`]
      : []),
  ];
}

function tieDrawing(strings: JobStrings, hole: SitedHole, ties: HoleTies, drawn: Drawn): SheetDrawing {
  const over = strings.plan.strings.filter(({ label }) => ties.strings?.strings.includes(label));
  return {
    ...CARD,
    title: `Ties of hole ${hole.label}`,
    drawn: {
      ...drawn,
      pulls: over.map((string) => drawnNear(string, hole.site, REACH)),
      references: ties.offsets.flatMap(({ stakes }) =>
        stakes.map(({ label, site }) => ({ label: label.slice(-1), place: site, awayFrom: hole.site })),
      ),
      focus: { at: hole.site, reach: REACH },
    },
  };
}

/** All strings with their nails. */
export const stringsDrawn = (drawn: Drawn, { plan }: JobStrings): Drawn => ({
  ...drawn,
  pulls: plan.strings.map((string) => drawnString(string, 'string')),
  references: plan.strings.flatMap(({ nails: [one, other] }) => [
    { label: one.label, place: one.site, awayFrom: other.site },
    { label: other.label, place: other.site, awayFrom: one.site },
  ]),
});

/** The holes with the lines of their offset stakes, which are too many to be named here; none of them where holes are many. */
export function tiesDrawn(drawn: Drawn, strings: JobStrings): Drawn {
  const { holes } = strings.asked;
  if (holes.length > MOST_DRAWN) return drawn;
  const pulls = holes.flatMap((hole) =>
    tiesOf(hole, strings.asked, strings.plan).offsets.map(({ how, stakes: [one, other] }) => ({
      from: how === 'both-sides' ? one.site : hole.site,
      to: other.site,
      kind: 'string' as const,
      words: `${one.label} to ${other.label}`,
    })),
  );
  return { ...drawn, pulls };
}
