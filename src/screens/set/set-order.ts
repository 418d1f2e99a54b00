import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import type { SetBook } from './set-book.ts';
import { setStep } from './set-step.ts';
import type { SetChoices } from './step.ts';

/** The pier first, for other heights hang on it; then in the plan's order. */
export function setOrder(view: JobView): string[] {
  const piers = view.holes.filter(({ section }) => section.kind === 'pier');
  const posts = view.holes.filter(({ section }) => section.kind !== 'pier');
  return [...piers, ...posts].map(({ label }) => label);
}

/**
 * The hole to go on with: the first not in concrete that still wants something, from `after` onwards and round again. Null
 * when none does.
 */
export function nextHole(
  book: SetBook,
  holes: readonly HoleAssessment[],
  choices: SetChoices,
  after: string | null = null,
): string | null {
  const order = setOrder(book.view);
  const from = after === null ? 0 : order.indexOf(after) + 1;
  const round = [...order.slice(from), ...order.slice(0, from)].filter((label) => label !== after);
  const byLabel = new Map(holes.map((hole) => [hole.hole, hole]));
  const open = round.find((label) => {
    const hole = byLabel.get(label);
    return hole && !hole.poured && setStep(book, hole, choices).do !== 'done';
  });
  return open ?? null;
}
