import type { EntryOf, Side } from '../../job/entry-schema.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { type JobView, postOf, stands } from '../../judge/view.ts';
import { doubtStep } from './doubt-step.ts';
import { levelStep } from './level-step.ts';
import { baselinePull, placeStep, stakePulls } from './place-step.ts';
import type { SetBook } from './set-book.ts';
import { isToMakeSure, needsMore, type Part, pouredAt, type SetChoices, type SetStep } from './step.ts';

/**
 * First A–B, on which every place hangs. Then the place, then plumb, then the top: each is worth reading only once the one before it is right. A post in concrete
 * is asked for again from the start, by its readings since the pour: it can be pushed while the concrete is wet.
 */
export function setStep(book: SetBook, hole: HoleAssessment, choices: SetChoices): SetStep {
  const { view } = book;
  if (!view.laid || !hole.designed) return { do: 'lay' };
  if (!view.measured.baseline) return { do: 'baseline', pull: baselinePull(view.laid.baseline) };
  const post = postOf(hole.hole);
  if (!stands(view, post)) return { do: 'stand', hold: stakePulls(view, hole.hole, hole.designed) };
  const left = choices.left(hole.hole);
  return (
    placeStep(book, hole, hole.designed, left, () => doubtStep(book, post)) ??
    plumbStep(view, hole, left) ??
    levelStep(view, hole, choices.setup, left) ?? { do: 'done' }
  );
}

/** Two faces side by side give the lean; the two opposite guard it. */
const PLUMB_ORDER: readonly Side[] = ['front', 'left', 'back', 'right'];
const FACES_FOR_LEAN = 2;

function plumbStep(view: JobView, assessed: HoleAssessment, left: ReadonlySet<Part>): SetStep | null {
  const { hole, set, poured } = assessed;
  const since = pouredAt(view, hole);
  const fresh = view.book.plumbs(hole).filter((entry) => view.entries.indexOf(entry) > since);
  const unread = PLUMB_ORDER.filter((side) => !fresh.some(({ body }) => body.side === side));
  const lean = unread.find((side) => PLUMB_ORDER.indexOf(side) < FACES_FOR_LEAN);
  if (lean) return { do: 'plumb', side: lean, again: false };
  const doubted = readOnceInDoubt(view, fresh);
  if (doubted) return { do: 'plumb', side: doubted, again: true };
  if (set.plumb.verdict === 'out' && !left.has('plumb'))
    return { do: 'move', part: 'plumb', nudge: null, rod: null, why: set.plumb.why };
  if (poured) return null;
  const [guard] = unread;
  if (guard && needsMore(set.plumb)) return { do: 'plumb', side: guard, again: true };
  // Too near the edge for any level to tell: it is brought nearer plumb while it can be.
  const near = set.plumb.verdict === 'unsure' || isToMakeSure(view, assessed, set.plumb);
  const push = near && set.plumbNudge?.worthIt === true && !left.has('plumb');
  return push ? { do: 'move', part: 'plumb', nudge: null, rod: null, why: set.plumb.why } : null;
}

/** A face on which a reading looks misread that was taken once only: it is taken again before anything is pushed on its word. */
function readOnceInDoubt(view: JobView, readings: readonly EntryOf<'plumb'>[]): Side | null {
  const once = readings.filter(
    ({ body }) => readings.filter((other) => other.body.side === body.side).length === 1,
  );
  return once.find(({ id }) => view.suspects.has(id))?.body.side ?? null;
}
