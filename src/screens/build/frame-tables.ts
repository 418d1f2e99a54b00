import type { Cuts } from '../../build/cuts.ts';
import type { FrameAsBuilt } from '../../build/frame.ts';
import { thingName } from '../../job/words.ts';
import {
  angleAgainst,
  angleTold,
  lengthAgainst,
  lengthStep,
  lengthTold,
  mitreTold,
  told,
} from '../../judge/frame-words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { formatLength, formatSmall } from '../../units/index.ts';
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
  const { is, half } = told({ is: cut.off, sigma: cut.sigma }, lengthStep(units));
  const size = `${formatSmall(Math.abs(is), units)} ± ${formatSmall(half, units)}`;
  if (Math.abs(is) <= half) return `none: right within ${formatSmall(half, units)}`;
  return is > 0 ? size : `too short by ${size}`;
}

const lineWords = (down: number, units: JobView['plan']['units']): string =>
  `${formatLength(Math.abs(down), units)} ${down < 0 ? 'above it' : 'below it'}`;
