import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import type { Hole } from '../../plan/hole.ts';
import { isReady } from './hole-ready.ts';
import type { SetBook } from './set-book.ts';
import { setStep } from './set-step.ts';
import type { SetChoices, SetStep } from './step.ts';

/**
 * The pier first, for other heights hang on it; then the post on the highest ground, which limits how high all can be, and so
 * down; posts whose ground was not read come last, in the plan's order.
 */
export function setOrder(view: JobView): string[] {
  const piers = view.holes.filter(({ section }) => section.kind === 'pier');
  const posts = view.holes.filter(({ section }) => section.kind !== 'pier');
  const groundAt = ({ label }: Hole) =>
    view.heights.get(`ground:${label}`)?.height ?? Number.NEGATIVE_INFINITY;
  const downhill = posts.toSorted((p, q) => (groundAt(p) === groundAt(q) ? 0 : groundAt(q) - groundAt(p)));
  return [...piers, ...downhill].map(({ label }) => label);
}

/** The next thing to do about a post. */
export type StepOf = (hole: HoleAssessment) => SetStep;

/** As `setStep`, worked out once for each post, though the order asks for all of them again and again. */
export function stepsOf(book: SetBook, choices: SetChoices): StepOf {
  const known = new Map<string, SetStep>();
  return (hole) => {
    const step = known.get(hole.hole) ?? setStep(book, hole, choices);
    known.set(hole.hole, step);
    return step;
  };
}

/** What is wrong comes before what is merely not read yet; a reading that is not to be believed before all else. */
const URGENT: readonly SetStep['do'][] = ['doubt', 'tell', 'move'];

/**
 * The hole to go on with, of those not in concrete that still want something: the most urgent; or, where `after` says
 * where the user is, the next one round. A post whose hole is not ready comes after those whose hole is. Null when none
 * wants anything.
 */
export function nextHole(
  view: JobView,
  holes: readonly HoleAssessment[],
  stepOf: StepOf,
  after: string | null = null,
): string | null {
  const order = setOrder(view);
  const from = after === null ? 0 : order.indexOf(after) + 1;
  const round = [...order.slice(from), ...order.slice(0, from)].filter((label) => label !== after);
  const byLabel = new Map(holes.map((hole) => [hole.hole, hole]));
  const open = round.flatMap((label) => {
    const hole = byLabel.get(label);
    const step = hole && !hole.poured ? stepOf(hole).do : 'done';
    return step === 'done'
      ? []
      : [{ label, step, waits: step === 'stand' && hole !== undefined && !isReady(hole) }];
  });
  const urgent = URGENT.flatMap((step) => open.find((each) => each.step === step) ?? []);
  const ready = open.find(({ waits }) => !waits) ?? open[0];
  return ((after === null ? urgent[0] : undefined) ?? ready)?.label ?? null;
}
