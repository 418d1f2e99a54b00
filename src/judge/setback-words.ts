import type { Plan } from '../job/plan-schema.ts';
import { thingName } from '../job/words.ts';
import type { LaidLine } from '../plan/index.ts';
import { formatLength, type Units } from '../units/index.ts';
import type { LineAssessment, LineGap } from './types.ts';
import { postOf } from './view.ts';
import { capital, listWords, small } from './words.ts';

/** By the plan, what comes nearest to a line. */
export interface Gaps extends Pick<LineAssessment, 'keep' | 'planned' | 'edge'> {
  /** Labels of all holes whose posts come too near. */
  readonly near: readonly string[];
}

/** A hundredth of a millimetre is rounding. */
const EXACT = 1e-5;
const DECK_EDGE = 'the deck’s edge';

/** What governs: the post that comes nearest, or the deck's edge where that comes nearer; null of a plan without holes. */
function governs(
  plan: Plan,
  { planned, edge }: Gaps,
): { readonly name: string; readonly gap: number } | null {
  if (!planned) return null;
  if (edge !== null && edge < planned.gap) return { name: DECK_EDGE, gap: edge };
  return { name: thingName(postOf(planned.hole), plan), gap: planned.gap };
}

/** The posts that are too near beside the one that governs: `posts 6 and 9 are`; empty where there is none. */
function othersWords(plan: Plan, gaps: Gaps): string {
  const { planned, near } = gaps;
  const first = planned && governs(plan, gaps)?.name !== DECK_EDGE ? planned.hole : null;
  const others = near.filter((hole) => hole !== first);
  if (others.length === 0) return '';
  if (others.length === 1) return `${thingName(postOf(others[0]!), plan)} is`;
  return `posts ${listWords(others)} are`;
}

/** Whether a gap is shorter than what must be kept, by more than rounding. */
export const isTooNear = (gap: number, keep: number | null): boolean => gap < (keep ?? 0) - EXACT;

/** The edge of a slope is for stakes to mind; posts may stand on both sides of it, unless a distance is asked for. */
export const isOfNoAccount = ({ kind, keep }: LaidLine): boolean => kind === 'other' && keep === null;

/** What a plan keeps from a line, in whole sentences: the nearest post, the deck's edge, and what is to spare or short. */
export function planText(plan: Plan, line: LaidLine, gaps: Gaps): string {
  const { planned, edge, keep } = gaps;
  const least = governs(plan, gaps);
  if (!planned || !least || isOfNoAccount(line)) return '';
  const { units } = plan;
  const post = gapWords(units, line, `${thingName(postOf(planned.hole), plan)}, the nearest,`, planned.gap);
  const deck = edge === null ? '' : ` ${capital(gapWords(units, line, DECK_EDGE, edge))}.`;
  const kept = keep === null ? '' : ` ${keepWords(units, keep, least, othersWords(plan, gaps))}`;
  return `${line.name}, by the plan: ${post}.${deck}${kept}`;
}

/** What is too near a line by the plan, with what to do, in as few words as a caution should have; empty where nothing is. */
export function shortText(plan: Plan, line: LaidLine, gaps: Gaps): string {
  const { keep } = gaps;
  const least = governs(plan, gaps);
  if (!least || isOfNoAccount(line) || !isTooNear(least.gap, keep)) return '';
  const others = othersWords(plan, gaps);
  const also = others === '' ? '' : `; ${others} too near as well`;
  const where = capital(reachWords(plan.units, line, least.name, least.gap));
  if (keep === null) return `${where}${also}. Move the plan, or put right where that line runs.`;
  return `${where}, and ${formatLength(keep, plan.units)} must be kept${also}. Move the plan or make it smaller, or ask whoever set that distance.`;
}

/** `post 3, the nearest, keeps its outer face 8′ 4″ from it`. */
function gapWords(units: Units, { kind }: LaidLine, what: string, gap: number): string {
  const size = formatLength(Math.abs(gap), units);
  if (gap >= 0) return `${what} ${what === DECK_EDGE ? 'stays' : 'keeps its outer face'} ${size} from it`;
  return kind === 'house'
    ? `${what} would stand ${size} inside the house`
    : `${what} reaches ${size} beyond it`;
}

/** `post 3 comes within 6′ 3″ of Boundary`. */
function reachWords(units: Units, { kind, name }: LaidLine, what: string, gap: number): string {
  const size = formatLength(Math.abs(gap), units);
  if (gap >= 0) return `${what} comes within ${size} of ${name}`;
  return kind === 'house'
    ? `${what} would stand ${size} inside ${name}`
    : `${what} reaches ${size} beyond ${name}`;
}

function keepWords(
  units: Units,
  keep: number,
  { name, gap }: { readonly name: string; readonly gap: number },
  others: string,
): string {
  const asked = `${formatLength(keep, units)} must be kept`;
  const room = gap - keep;
  if (Math.abs(room) <= EXACT) return `${asked}: just that is kept.`;
  return room > 0
    ? `${asked}: ${small(room, units)} to spare.`
    : `${asked}: ${name} is ${small(room, units)} short${others === '' ? '' : `; ${others} short as well`}.`;
}

/** As `planText`, of the post that comes nearest of those that are set and measured. */
export function asSetText(
  plan: Plan,
  line: LaidLine,
  asSet: LineGap,
  counts: { measured: number; of: number },
): string {
  if (isOfNoAccount(line)) return '';
  const { units } = plan;
  const { hole, gap, doubt, checked } = asSet;
  const post = gapWords(units, line, `${thingName(postOf(hole), plan)}, the nearest,`, gap);
  const open = checked ? '' : ' No spare pull guards that post: one misread tape would hide more.';
  const text = `As set: ${post}, ± ${small(doubt, units)}; ${counts.measured} of ${counts.of} are measured.${open}`;
  if (line.keep === null) return text;
  const room = gap - line.keep;
  if (Math.abs(room) <= doubt)
    return `${text} That is too near the ${formatLength(line.keep, units)} asked for to call.`;
  return `${text} ${small(room, units)} ${room > 0 ? 'to spare' : 'short'}.`;
}

/** Every post that stands too near a line, whatever the tapes may be off, the surest first; empty where none is known to. */
export function shortAsSetText(plan: Plan, line: LaidLine, set: readonly LineGap[]): string {
  const { units } = plan;
  const atMost = ({ gap, doubt }: LineGap) => gap + doubt;
  const short = set
    .filter((each) => atMost(each) < (line.keep ?? 0))
    .sort((one, other) => atMost(one) - atMost(other));
  if (short.length === 0 || isOfNoAccount(line)) return '';
  const where = short.map(({ hole, gap }) => reachWords(units, line, thingName(postOf(hole), plan), gap));
  const kept = line.keep === null ? '' : `, and ${formatLength(line.keep, units)} must be kept`;
  return `As set, ${where.join('; ')}${kept}: ask whoever set that line before more is built.`;
}
