import type { Situation } from '../../judge/situation.ts';
import type { Assessment, Gate, HoleAssessment } from '../../judge/types.ts';
import { waitsForDecision } from './dig-ticks.ts';

/**
 * What the next thing with one hole is. `again`: it is too shallow, too narrow, or too near to tell. `unknown`: nobody
 * has said yet how deep it has to be.
 */
export type DigTask = 'gate' | 'dig' | 'again' | 'unknown' | 'decide' | 'done';

/** The one thing that the Dig screen is about. */
export type DigStep =
  | { readonly at: 'plan' }
  | { readonly at: 'stakes' }
  | { readonly at: 'hole'; readonly hole: string; readonly task: DigTask }
  | { readonly at: 'done'; readonly undecided: readonly string[] };

export interface DigState {
  readonly situation: Pick<Situation, 'plan' | 'holes' | 'laid'>;
  readonly assessment: Pick<Assessment, 'holes'>;
  /** Labels, in the order in which the holes are best dug. */
  readonly order: readonly string[];
  /** The hole in the address. */
  readonly focused: string | null;
}

/**
 * The next thing to do in the Dig phase: the hole in the address; else a hole that was dug and is short, for the bar is
 * still beside it; else one that may be dug; else one whose gate is shut, to say what is missing.
 */
export function digStep({ situation, assessment, order, focused }: DigState): DigStep {
  const { plan, holes, laid } = situation;
  if (!plan || holes.length === 0) return { at: 'plan' };
  if (!laid) return { at: 'stakes' };
  const focus = assessment.holes.find(({ hole }) => hole === focused);
  const next = focus ?? nextHole(assessment.holes, order);
  if (next) return { at: 'hole', hole: next.hole, task: digTask(next) };
  const undecided = assessment.holes.filter((hole) => digTask(hole) === 'decide');
  return { at: 'done', undecided: undecided.map(({ hole }) => hole) };
}

/** What a hole wants next. What was met in it is never this tool's to wave through. */
export function digTask(hole: HoleAssessment): DigTask {
  const { dug, digGate } = hole;
  if (dug.at === null) return digGate.open ? 'dig' : 'gate';
  if (waitsForDecision(hole)) return 'decide';
  if (dug.depth.verdict === 'unmeasured' && dug.width.verdict === 'in') return 'unknown';
  return dug.depth.verdict === 'in' && dug.width.verdict === 'in' ? 'done' : 'again';
}

/** Which task goes first when no hole is asked for; what waits for a decision holds up no other hole. */
const FIRST: readonly DigTask[] = ['again', 'dig', 'gate', 'unknown'];

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

/** Where what is missing at a shut gate is mended: on the plan, at the stakes, or by a tick on the spot. */
export function gateWay({ items }: Gate): 'plan' | 'stake' | 'ties' {
  const missing = items.filter(({ green }) => !green).map(({ item }) => item);
  if (missing.some((item) => item !== 'depth' && item !== 'ties')) return 'stake';
  return missing.includes('ties') ? 'ties' : 'plan';
}
