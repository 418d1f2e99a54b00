import type { Entry } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import { thingName } from '../../job/words.ts';
import type { Situation } from '../../judge/situation.ts';
import type { Assessment, HoleAssessment, Judgement } from '../../judge/types.ts';
import { verdictWord } from '../../ui/index.ts';
import { formatLength } from '../../units/index.ts';
import { setLook } from '../looks.ts';

export type Cell = Pick<Judgement, 'verdict' | 'checked' | 'text'>;

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
      place: set.position,
      plumb: set.plumb,
      top: set.level,
      tops: set.tops,
      spacing: set.spacing,
      verdict: verdictCell(assessed),
      setAt: lastSet(entries, hole),
      poured: poured && { at: poured.at, bags: `${poured.bags} ${poured.bags === 1 ? 'bag' : 'bags'}` },
    };
  });
}

/** The post's verdict as its mark on the drawing has it. */
function verdictCell(hole: HoleAssessment): Cell {
  const { verdict, checked = true } = setLook(hole);
  if (verdict === undefined) return { verdict: 'unmeasured', checked: false, text: 'not set' };
  return { verdict, checked, text: verdictWord(verdict, checked) };
}

/** When the post was last set, nudged or moved. */
function lastSet(entries: readonly Entry[], hole: string): string | null {
  const stands = ofKind(entries, 'stand').filter(
    ({ body }) => body.thing.kind === 'post' && body.thing.hole === hole,
  );
  return stands.at(-1)?.at ?? null;
}

const VERDICTS = ['in', 'out', 'unsure', 'unmeasured'] as const;

/** The job in one line: `11 holes: 11 dug, 2 poured. Posts: 4 in, 2 out, 4 unsure, 1 unmeasured.` */
export function countWords({ holes }: Pick<Assessment, 'holes'>): string {
  const dug = holes.filter((hole) => hole.dug.at !== null).length;
  const poured = holes.filter((hole) => hole.poured !== null).length;
  const set = holes.filter((hole) => hole.set.done);
  const posts = VERDICTS.map((verdict) => {
    const count = set.filter((hole) => hole.set.verdict === verdict).length;
    return count === 0 ? null : `${count} ${verdict}`;
  }).filter((words) => words !== null);
  const standing = posts.length === 0 ? 'no post is set' : `of ${set.length} set, ${posts.join(', ')}`;
  return `${holes.length} ${holes.length === 1 ? 'hole' : 'holes'}: ${dug} dug, ${poured} poured; ${standing}.`;
}
