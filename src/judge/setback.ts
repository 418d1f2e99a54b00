import type { Vec } from '../geometry/point.ts';
import { toPlan } from '../geometry/rigid.ts';
import type { Plan } from '../job/plan-schema.ts';
import type { GroundLines, Hole, LaidLine } from '../plan/index.ts';
import { faceGap, type Hand, roundGap, type Standing, structureSide } from '../plan/setback.ts';
import { sigmaAlong } from './chance.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { asSetText, isOfNoAccount, isTooNear, planText, shortAsSetText, shortText } from './setback-words.ts';
import type { Finding, HoleAssessment, LineAssessment, LineGap } from './types.ts';
import type { JobView } from './view.ts';

/** How near the structure comes to every line on the ground: by the plan, and as far as its posts are set. */
export function assessLines(
  view: JobView,
  { lines }: GroundLines,
  holes: readonly HoleAssessment[],
): LineAssessment[] {
  return lines.map((line) => assessLine(view, line, holes));
}

function assessLine(view: JobView, line: LaidLine, holes: readonly HoleAssessment[]): LineAssessment {
  const { plan } = view;
  const set = setGaps(view, line, structureSide(line, view.holes), holes);
  const asSet = nearest(set);
  const counts = { measured: set.length, of: view.holes.length };
  return {
    line: line.name,
    kind: line.kind,
    keep: line.keep,
    ...plannedGaps(plan, view.holes, line),
    asSet,
    measured: set.length,
    asSetText: asSet ? asSetText(plan, line, asSet, counts) : '',
    asSetShort: shortAsSetText(plan, line, set),
  };
}

/** What a plan keeps from a line, before anything is set. */
export type PlannedGaps = Pick<LineAssessment, 'planned' | 'edge' | 'text' | 'short'>;

/** How near the posts and the deck's edge come to a line by the plan, in numbers and in words. */
export function plannedGaps(plan: Plan, holes: readonly Hole[], line: LaidLine): PlannedGaps {
  const hand = structureSide(line, holes);
  const all = holes.map((hole) => ({
    hole: hole.label,
    gap: faceGap(line, hand, hole),
    doubt: 0,
    checked: false,
  }));
  const planned = nearest(all);
  const radius = plan.deck?.edge?.m;
  const edge = radius === undefined ? null : roundGap(line, hand, { x: 0, y: 0 }, radius);
  const near = all.filter(({ gap }) => isTooNear(gap, line.keep)).map(({ hole }) => hole);
  const gaps = { keep: line.keep, planned, edge, near };
  return { planned, edge, text: planText(plan, line, gaps), short: shortText(plan, line, gaps) };
}

/** The lines that a hole's post comes too near by the plan, by their names. */
export const linesTooNear = (hole: Hole, holes: readonly Hole[], lines: readonly LaidLine[]): string[] =>
  lines
    .filter((line) => !isOfNoAccount(line))
    .filter((line) => isTooNear(faceGap(line, structureSide(line, holes), hole), line.keep))
    .map(({ name }) => name);

const nearest = (gaps: readonly LineGap[]): LineGap | null =>
  gaps.reduce<LineGap | null>((least, each) => (least && least.gap <= each.gap ? least : each), null);

/** Of every post that is set and measured, where it was found to stand; turned as it was planned. */
function setGaps(view: JobView, line: LaidLine, hand: Hand, holes: readonly HoleAssessment[]): LineGap[] {
  const { laid } = view;
  if (!laid) return [];
  const across = acrossOnSite(line, laid.motion.turn);
  const planned = new Map(view.holes.map((hole) => [hole.label, hole]));
  return holes.flatMap(({ hole, set }) => {
    const at = planned.get(hole);
    if (!at || !set.at) return [];
    const standing: Standing = { ...at, place: toPlan(laid.motion, set.at.place) };
    const doubt = HALF_WIDTH_95 * sigmaAlong(set.at.covariance, across);
    return [{ hole, gap: faceGap(line, hand, standing), doubt, checked: set.position.checked }];
  });
}

/** Unit vector square to a line of the plan, on the site. */
function acrossOnSite({ from, to }: LaidLine, turn: number): Vec {
  const bearing = Math.atan2(to.y - from.y, to.x - from.x) + turn;
  return { x: -Math.sin(bearing), y: Math.cos(bearing) };
}

/** What is too near a line, or under a house; and what was typed of lines that cannot be. */
export function lineFindings({ problems }: GroundLines, lines: readonly LineAssessment[]): Finding[] {
  const input = problems.map(({ text }): Finding => ({ code: 'input', text, entries: [] }));
  const short = lines
    .flatMap((line) => [line.short, line.asSetShort])
    .filter((text) => text !== '')
    .map((text): Finding => ({ code: 'setback', text, entries: [] }));
  return [...input, ...short];
}
