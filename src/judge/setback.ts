import type { Vec } from '../geometry/point.ts';
import { toPlan } from '../geometry/rigid.ts';
import type { Plan } from '../job/plan-schema.ts';
import { thingName } from '../job/words.ts';
import type { GroundLines, Hole, LaidLine } from '../plan/index.ts';
import { faceGap, type Hand, roundGap, type Standing, structureSide } from '../plan/setback.ts';
import { formatLength, type Units } from '../units/index.ts';
import { sigmaAlong } from './chance.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import type { Finding, HoleAssessment, LineAssessment, LineGap } from './types.ts';
import { type JobView, postOf } from './view.ts';
import { capital, small } from './words.ts';

/** How near the structure comes to every line on the ground: by the plan, and as far as its posts are set. */
export function assessLines(
  view: JobView,
  { lines }: GroundLines,
  holes: readonly HoleAssessment[],
): LineAssessment[] {
  return lines.map((line) => assessLine(view, line, holes));
}

function assessLine(view: JobView, line: LaidLine, holes: readonly HoleAssessment[]): LineAssessment {
  const { planned, edge, text } = plannedGaps(view.plan, view.holes, line);
  const set = setGaps(view, line, structureSide(line, view.holes), holes);
  const asSet = nearest(set);
  return {
    line: line.name,
    kind: line.kind,
    keep: line.keep,
    planned,
    edge,
    asSet,
    measured: set.length,
    text,
    asSetText: asSet ? asSetText(view, line, asSet, set.length) : '',
  };
}

/** What a plan keeps from a line, before anything is set. */
export interface PlannedGaps extends Pick<LineAssessment, 'planned' | 'edge' | 'text'> {
  /** Nearer than asked for, or beyond the line. */
  readonly short: boolean;
}

/** How near the posts and the deck's edge come to a line by the plan, in numbers and in words. */
export function plannedGaps(plan: Plan, holes: readonly Hole[], line: LaidLine): PlannedGaps {
  const hand = structureSide(line, holes);
  const planned = nearest(
    holes.map((hole) => ({ hole: hole.label, gap: faceGap(line, hand, hole), doubt: 0, checked: false })),
  );
  const radius = plan.deck?.edge?.m;
  const edge = radius === undefined ? null : roundGap(line, hand, { x: 0, y: 0 }, radius);
  const gaps = { line: line.name, keep: line.keep, planned, edge };
  return { planned, edge, text: planText(plan, line, gaps), short: isShort(gaps) };
}

const nearest = (gaps: readonly LineGap[]): LineGap | null =>
  gaps.reduce<LineGap | null>((least, each) => (least && least.gap <= each.gap ? least : each), null);

/** Of every post that is set and measured, where it was found to stand; turned as it was planned. */
function setGaps(view: JobView, line: LaidLine, hand: Hand, holes: readonly HoleAssessment[]): LineGap[] {
  const { laid } = view;
  if (!laid) return [];
  return holes.flatMap(({ hole, set }) => {
    const planned = view.holes.find(({ label }) => label === hole);
    if (!planned || !set.at) return [];
    const standing: Standing = { ...planned, place: toPlan(laid.motion, set.at.place) };
    const across = acrossOnSite(line, laid.motion.turn);
    const doubt = HALF_WIDTH_95 * sigmaAlong(set.at.covariance, across);
    return [{ hole, gap: faceGap(line, hand, standing), doubt, checked: set.position.checked }];
  });
}

/** Unit vector square to a line of the plan, on the site. */
function acrossOnSite({ from, to }: LaidLine, turn: number): Vec {
  const bearing = Math.atan2(to.y - from.y, to.x - from.x) + turn;
  return { x: -Math.sin(bearing), y: Math.cos(bearing) };
}

type Gaps = Pick<LineAssessment, 'line' | 'keep' | 'planned' | 'edge'>;

function planText(plan: Plan, line: LaidLine, { planned, edge, keep }: Gaps): string {
  if (!planned) return '';
  const { units } = plan;
  const name = thingName(postOf(planned.hole), plan);
  const post = gapWords(units, line, `${name}, the nearest,`, planned.gap);
  const deck = edge === null ? '' : ` ${capital(gapWords(units, line, DECK_EDGE, edge))}.`;
  const [governs, least] = edge !== null && edge < planned.gap ? [DECK_EDGE, edge] : [name, planned.gap];
  const kept =
    keep !== null
      ? ` ${keepWords(units, line, keep, governs, least)}`
      : least < -EXACT
        ? ` Move the plan away from ${awayFrom(line)}, or put right where that line runs.`
        : '';
  return `${line.name}, by the plan: ${post}.${deck}${kept}`;
}

const DECK_EDGE = 'the deck’s edge';

/** `post 3, the nearest, keeps its outer face 8′ 4″ from it`. */
function gapWords(units: Units, { kind }: LaidLine, what: string, gap: number): string {
  const size = formatLength(Math.abs(gap), units);
  const stays = what === DECK_EDGE ? 'stays' : 'keeps its outer face';
  if (gap >= 0) return `${what} ${stays} ${size} from it`;
  return kind === 'house'
    ? `${what} would stand ${size} inside the house`
    : `${what} reaches ${size} beyond it`;
}

const awayFrom = ({ kind }: LaidLine): string => (kind === 'house' ? 'the house' : 'it');

function keepWords(units: Units, line: LaidLine, keep: number, governs: string, gap: number): string {
  const asked = `${formatLength(keep, units)} must be kept`;
  const room = gap - keep;
  if (room >= -EXACT)
    return `${asked}: ${room <= EXACT ? 'just that is kept' : `${small(room, units)} to spare`}.`;
  return `${asked}: ${governs} is ${small(room, units)} short. Move the plan that far away from ${awayFrom(line)}, make it smaller, or ask whoever set that distance.`;
}

/** A hundredth of a millimetre is rounding. */
const EXACT = 1e-5;

function asSetText(
  view: JobView,
  line: LaidLine,
  { hole, gap, doubt, checked }: LineGap,
  measured: number,
): string {
  const { units } = view.plan;
  const post = gapWords(units, line, `${thingName(postOf(hole), view.plan)}, the nearest,`, gap);
  const of = `${measured} of ${view.holes.length} are measured`;
  const open = checked ? '' : ' No spare pull guards that post: one misread tape would hide more.';
  const text = `As set: ${post}, ± ${small(doubt, units)}; ${of}.${open}`;
  if (line.keep === null) return text;
  const room = gap - line.keep;
  if (Math.abs(room) <= doubt)
    return `${text} That is too near the ${formatLength(line.keep, units)} asked for to call.`;
  return `${text} ${room > 0 ? `${small(room, units)} to spare.` : `${small(room, units)} short: ask whoever set that distance before more is built.`}`;
}

/** What is too near a line, or under a house; and what was typed of lines that cannot be. */
export function lineFindings({ problems }: GroundLines, lines: readonly LineAssessment[]): Finding[] {
  const input = problems.map(({ text }): Finding => ({ code: 'input', text, entries: [] }));
  const short = lines.flatMap((each): Finding[] => {
    const texts = [
      isShort(each) ? each.text : '',
      isShortAsSet(each) ? `${each.line}. ${each.asSetText}` : '',
    ];
    return texts.filter((text) => text !== '').map((text) => ({ code: 'setback', text, entries: [] }));
  });
  return [...input, ...short];
}

/** By the plan: nearer than asked for, or beyond the line. */
const isShort = ({ keep, planned, edge }: Gaps): boolean =>
  planned !== null && Math.min(planned.gap, edge ?? planned.gap) < (keep ?? 0) - EXACT;

/** As set, and no doubt of the tapes explains it. */
const isShortAsSet = ({ keep, asSet }: LineAssessment): boolean =>
  asSet !== null && asSet.gap + asSet.doubt < (keep ?? 0);
