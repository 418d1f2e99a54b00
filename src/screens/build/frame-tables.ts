import type { Cuts } from '../../build/cuts.ts';
import type { FrameAsBuilt } from '../../build/frame.ts';
import type { Seats } from '../../build/seats.ts';
import { thingName } from '../../job/words.ts';
import {
  angleAgainst,
  angleTold,
  lengthAgainst,
  lengthTold,
  mitreTold,
  told,
} from '../../judge/frame-words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { formatLength, formatSmall, smallStep } from '../../units/index.ts';
import type { PaperTable } from './paper-table.tsx';

const NOT_MEASURED = 'not measured';

export function sidesTable({ plan }: JobView, { sides }: FrameAsBuilt): PaperTable {
  return {
    caption: 'Sides',
    nameHead: 'Posts',
    heads: ['Centres', 'Faces', 'Drawing'],
    rows: sides.map(({ from, to, centres, clear }) => [
      `${from} to ${to}`,
      centres ? lengthTold(centres, plan.units) : NOT_MEASURED,
      clear ? lengthTold(clear, plan.units) : NOT_MEASURED,
      centres ? lengthAgainst(centres, plan.units) : '—',
    ]),
  };
}

export function cornersTable({ plan }: JobView, { corners }: FrameAsBuilt): PaperTable {
  return {
    caption: 'Angles and the saw',
    nameHead: 'At',
    heads: ['Angle', 'Saw set to', 'Drawing'],
    rows: corners.map(({ hole, angle, mitre }) => [
      capital(thingName(postOf(hole), plan)),
      angle ? angleTold(angle) : NOT_MEASURED,
      mitre ? mitreTold(mitre) : NOT_MEASURED,
      angle ? angleAgainst(angle) : '—',
    ]),
  };
}

export function diagonalsTable({ plan }: JobView, { diagonals }: FrameAsBuilt): PaperTable {
  return {
    caption: 'Diagonals',
    nameHead: 'Posts',
    heads: ['Centres', 'Drawing'],
    rows: diagonals.map(({ from, to, centres }) => [
      `${from} to ${to}`,
      centres ? lengthTold(centres, plan.units) : NOT_MEASURED,
      centres ? lengthAgainst(centres, plan.units) : '—',
    ]),
  };
}

/**
 * Every post of the plan, measured or not.
 *
 * @param line height of a level line above the benchmark, metres; null where there is none
 */
export function cutsTable(view: JobView, { cuts }: Cuts, line: number | null): PaperTable {
  const { units } = view.plan;
  const byHole = new Map(cuts.map((cut) => [cut.hole, cut]));
  const posts = view.holes.filter(({ section }) => section.kind === 'post');
  return {
    caption: 'Cut marks',
    nameHead: 'Post',
    heads: ['Cut off', 'Cut at', ...(line === null ? [] : ['By the line'])],
    rows: posts.map(({ label }) => {
      const name = capital(thingName(postOf(label), view.plan));
      const cut = byHole.get(label);
      if (!cut) return [name, 'top not measured', '—', ...(line === null ? [] : ['—'])];
      return [
        name,
        cutWords(cut, units),
        formatLength(cut.height, units),
        ...(line === null ? [] : [lineWords(line - cut.height, units)]),
      ];
    }),
  };
}

function cutWords(cut: { off: number; sigma: number }, units: JobView['plan']['units']): string {
  const { is, half } = told({ is: cut.off, sigma: cut.sigma }, smallStep(units));
  const size = `${formatSmall(Math.abs(is), units)} ± ${formatSmall(half, units)}`;
  if (Math.abs(is) <= half) return `none: right within ${formatSmall(half, units)}`;
  return is > 0 ? size : `too short by ${size}`;
}

/** Where the beams lie on the tops as they stand now, and what is packed under them. */
export function seatsTable(view: JobView, { seats }: Seats): PaperTable {
  const { units } = view.plan;
  return {
    caption: 'Seats of the beams',
    nameHead: 'Post',
    heads: ['Seat at', 'Pack under'],
    rows: seats.map(({ hole, height, sigma, pack }) => [
      capital(thingName(postOf(hole), view.plan)),
      lengthTold({ is: height, sigma }, units),
      packWords(pack, units),
    ]),
  };
}

function packWords(pack: Seats['seats'][number]['pack'], units: JobView['plan']['units']): string {
  if (pack.sigma === 0 && pack.is === 0) return 'none: it stands highest';
  const { is, half } = told(pack, smallStep(units));
  return is <= half && is < smallStep(units)
    ? `none, ± ${formatSmall(half, units)}`
    : `${formatSmall(is, units)} ± ${formatSmall(half, units)}`;
}

/** How each beam lies from post to post. */
export function fallsTable({ plan }: JobView, { falls }: Seats): PaperTable {
  return {
    caption: 'Beams, end to end',
    nameHead: 'Posts',
    heads: ['Falls', 'Drawing'],
    rows: falls.map(({ from, to, fall }) => [
      `${from} to ${to}`,
      fallWords(fall, plan.units),
      fallWords({ is: fall.drawn, sigma: null }, plan.units),
    ]),
  };
}

function fallWords(
  fall: { readonly is: number; readonly sigma: number | null },
  units: JobView['plan']['units'],
): string {
  const { is, half } = told({ is: fall.is, sigma: fall.sigma ?? 0 }, smallStep(units));
  const doubt = fall.sigma === null ? '' : ` ± ${formatSmall(half, units)}`;
  if (Math.abs(is) < smallStep(units) / 2) return `level${doubt}`;
  return `${formatSmall(Math.abs(is), units)}${doubt} ${is > 0 ? 'down' : 'up'}`;
}

const lineWords = (down: number, units: JobView['plan']['units']): string =>
  `${formatLength(Math.abs(down), units)} ${down < 0 ? 'above it' : 'below it'}`;
