import type { Entry } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import { thingName } from '../../job/words.ts';
import type { Situation } from '../../judge/situation.ts';
import type { Assessment, HoleAssessment, Judgement } from '../../judge/types.ts';
import { verdictWord } from '../../ui/index.ts';
import { formatLength } from '../../units/index.ts';
import { isBeforePour, setLook } from '../looks.ts';

export type Cell = Pick<Judgement, 'verdict' | 'checked' | 'text'> & {
  /** It was in before the concrete, and nobody has read it since. */
  readonly beforePour?: boolean;
};

/** One hole as the record's table of holes says it. */
export interface DugRow {
  readonly hole: string;
  /** Depth that the rules ask for; a word where they cannot say yet. */
  readonly asked: string;
  readonly depth: Cell;
  readonly width: Cell;
  /** Room round what it holds, by the hole's own middle. */
  readonly room: Cell;
  /** `rock`, `nothing`; `—` before the hole is dug. */
  readonly inTheWay: string;
  readonly dugAt: string | null;
}

/** One post or pier as the record's table of posts says it. */
export interface SetRow {
  readonly hole: string;
  /** `Post 4`, `Pier P`. */
  readonly name: string;
  readonly place: Cell;
  readonly plumb: Cell;
  readonly top: Cell;
  /** The top against the others. */
  readonly tops: Cell;
  readonly spacing: readonly (Cell & { readonly to: string })[];
  readonly verdict: Cell;
  readonly setAt: string | null;
  readonly poured: { readonly at: string; readonly bags: string } | null;
}

/** Nothing to say yet. Never an empty cell: on paper that could be taken for a forgotten one. */
export const NOTHING_YET = '—';

export function dugRows({ holes }: Assessment, { plan }: Pick<Situation, 'plan'>): DugRow[] {
  return holes.map(({ hole, dug }) => ({
    hole,
    asked: dug.requiredDepth === null || !plan ? 'not known' : formatLength(dug.requiredDepth, plan.units),
    depth: dug.depth,
    width: dug.width,
    room: dug.room,
    inTheWay: dug.obstruction ?? (dug.at === null ? NOTHING_YET : 'nothing'),
    dugAt: dug.at,
  }));
}

export function setRows(
  { holes }: Assessment,
  { plan, entries }: Pick<Situation, 'plan' | 'entries'>,
): SetRow[] {
  return holes.map((assessed) => {
    const { hole, set, poured } = assessed;
    const name = thingName({ kind: 'post', hole }, plan);
    return {
      hole,
      name: name.slice(0, 1).toUpperCase() + name.slice(1),
      place: cellOf(assessed, set.position),
      plumb: cellOf(assessed, set.plumb),
      top: cellOf(assessed, set.level),
      tops: cellOf(assessed, set.tops),
      spacing: set.spacing.map((each) => cellOf(assessed, each)),
      verdict: verdictCell(assessed),
      setAt: lastSet(entries, hole),
      poured: poured && { at: poured.at, bags: `${poured.bags} ${poured.bags === 1 ? 'bag' : 'bags'}` },
    };
  });
}

/** What was in before the pour is marked so until the post is read again. */
const cellOf = <C extends Cell>(hole: HoleAssessment, cell: C): C =>
  isBeforePour(hole) && cell.verdict === 'in' ? { ...cell, beforePour: true } : cell;

/** The post's verdict as its mark on the drawing has it. */
function verdictCell(hole: HoleAssessment): Cell {
  const { verdict, checked = true } = setLook(hole);
  if (verdict === undefined) return { verdict: 'unmeasured', checked: false, text: 'not set' };
  return cellOf(hole, { verdict, checked, text: verdictWord(verdict, checked) });
}

/** When the post was last set, nudged or moved. */
function lastSet(entries: readonly Entry[], hole: string): string | null {
  const stands = ofKind(entries, 'stand').filter(
    ({ body }) => body.thing.kind === 'post' && body.thing.hole === hole,
  );
  return stands.at(-1)?.at ?? null;
}

const VERDICTS = ['in', 'out', 'unsure', 'unmeasured'] as const;

/** The job in one line: `11 holes: 11 dug, 2 poured; of 11 set, 4 in, 2 in before the pour and not read since, 5 unsure.` */
export function countWords({ holes }: Pick<Assessment, 'holes'>): string {
  const dug = holes.filter((hole) => hole.dug.at !== null).length;
  const poured = holes.filter((hole) => hole.poured !== null).length;
  const set = holes.filter((hole) => hole.set.done);
  const posts = VERDICTS.flatMap((verdict) => {
    const all = set.filter((hole) => hole.set.verdict === verdict);
    const before = verdict === 'in' ? all.filter(isBeforePour).length : 0;
    return [
      ...(all.length > before ? [`${all.length - before} ${verdict}`] : []),
      ...(before > 0 ? [`${before} in before the pour and not read since`] : []),
    ];
  });
  const standing = posts.length === 0 ? 'no post is set' : `of ${set.length} set, ${posts.join(', ')}`;
  return `${holes.length} ${holes.length === 1 ? 'hole' : 'holes'}: ${dug} dug, ${poured} poured; ${standing}.`;
}
