import { ofKind } from '../../job/log.ts';
import type { Situation } from '../../judge/situation.ts';
import type { Assessment, Gate, HoleAssessment } from '../../judge/types.ts';
import { waitsForDecision } from '../undecided.ts';

/**
 * What the next thing with one hole is. `again`: it is too shallow, too narrow, or too near to tell. `unknown`: nobody
 * has said yet how deep it has to be. `middle`: where its own middle lies is not measured. `shave`: it leaves too little
 * room on one side. `tell`: it may leave too little, and another tape to its middle tells.
 */
export type DigTask = 'gate' | 'dig' | 'again' | 'unknown' | 'decide' | 'shave' | 'tell' | 'middle' | 'done';

/** The one thing that the Dig screen is about. */
export type DigStep =
  | { readonly at: 'plan' }
  | { readonly at: 'stakes' }
  | { readonly at: 'hole'; readonly hole: string; readonly task: DigTask }
  | { readonly at: 'done'; readonly undecided: readonly string[]; readonly noMiddle: readonly string[] };

export interface DigState {
  readonly situation: Pick<Situation, 'plan' | 'holes' | 'laid' | 'entries'>;
  readonly assessment: Pick<Assessment, 'holes'>;
  /** Labels, in the order in which the holes are best dug. */
  readonly order: readonly string[];
  /** The hole in the address. */
  readonly focused: string | null;
}

/**
 * The next thing to do in the Dig phase: the hole in the address; else a hole that was dug and is short, for the bar is
 * still beside it; else the middle of the hole that was dug last, before the next is dug out of line as well; else one
 * that may be dug; else one whose gate is shut, to say what is missing.
 */
export function digStep({ situation, assessment, order, focused }: DigState): DigStep {
  const { plan, holes, laid } = situation;
  if (!plan || holes.length === 0) return { at: 'plan' };
  if (!laid) return { at: 'stakes' };
  const focus = assessment.holes.find(({ hole }) => hole === focused);
  const next = focus ?? lastDugMiddle(situation, assessment) ?? nextHole(assessment.holes, order);
  if (next) return { at: 'hole', hole: next.hole, task: digTask(next) };
  const labelled = (task: DigTask) =>
    assessment.holes.filter((hole) => digTask(hole) === task).map(({ hole }) => hole);
  return { at: 'done', undecided: labelled('decide'), noMiddle: labelled('middle') };
}

/** The hole that was dug last while its middle is asked for, and no hole is short. */
function lastDugMiddle(
  { entries }: DigState['situation'],
  { holes }: DigState['assessment'],
): HoleAssessment | null {
  const last = ofKind(entries, 'dug').at(-1)?.body.hole;
  const hole = holes.find((each) => each.hole === last);
  if (!hole || digTask(hole) !== 'middle') return null;
  return holes.some((each) => digTask(each) === 'again') || holes.every(({ dug }) => dug.at !== null)
    ? null
    : hole;
}

/** What a hole wants next. What was met in it is never this tool's to wave through. */
export function digTask(hole: HoleAssessment): DigTask {
  const { dug, digGate, set } = hole;
  if (dug.at === null) return digGate.open ? 'dig' : 'gate';
  if (waitsForDecision(hole)) return 'decide';
  if (dug.depth.verdict === 'unmeasured' && dug.width.verdict === 'in') return 'unknown';
  if (dug.depth.verdict !== 'in' || dug.width.verdict !== 'in') return 'again';
  // Once the post stands, the gap is measured at the post.
  if (set.done || dug.room.verdict === 'in') return 'done';
  if (dug.room.verdict === 'unmeasured') return 'middle';
  return dug.room.verdict === 'out' ? 'shave' : 'tell';
}

/** Which task goes first when no hole is asked for; what waits for a decision, or a middle, holds up no other hole. */
const FIRST: readonly DigTask[] = ['again', 'shave', 'tell', 'dig', 'gate', 'unknown'];

/** The hole to work on next, leaving out `but`; null when none is left. */
export function nextHole(
  holes: readonly HoleAssessment[],
  order: readonly string[],
  but: string | null = null,
): HoleAssessment | null {
  const byLabel = new Map(holes.map((hole) => [hole.hole, hole]));
  const at = but === null ? -1 : order.indexOf(but);
  const round = [...order.slice(at + 1), ...order.slice(0, Math.max(at, 0))];
  const candidates = round.flatMap((label) => byLabel.get(label) ?? []);
  for (const task of FIRST) {
    const found = candidates.find((hole) => digTask(hole) === task);
    if (found) return found;
  }
  return null;
}

/** Where what is missing at a shut gate is mended: on the plan, at the stakes, by a tick on the spot, or by a decision. */
export function gateWay({ items }: Gate): 'plan' | 'stake' | 'ties' | 'decide' {
  const missing = items.filter(({ green }) => !green).map(({ item }) => item);
  if (missing.some((item) => item !== 'depth' && item !== 'ties' && item !== 'shallower')) return 'stake';
  if (missing.includes('ties')) return 'ties';
  return missing.includes('depth') ? 'plan' : 'decide';
}
