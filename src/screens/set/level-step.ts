import { HALF_WIDTH_95 } from '../../judge/normal.ts';
import type { HoleAssessment, Judgement } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { worthALift } from '../../judge/worth-a-push.ts';
import { rodAtTarget, sightLine } from '../heights/rod-belief.ts';
import { isToMakeSure, needsMore, type Part, type SetStep } from './step.ts';

/** A rod reading twice on the top, and twice on the benchmark that it hangs on. */
const GUARDED = 2;
/** More readings than this of one top say nothing new: what is still in doubt then lies near the edge of what is allowed. */
const MOST_TOPS = 4;

/** What is still to be read of a post's top; null when that is known and guarded, or no more readings would help. */
export function levelStep(
  view: JobView,
  assessed: HoleAssessment,
  setup: string,
  left: ReadonlySet<Part>,
): SetStep | null {
  const { hole, poured } = assessed;
  const { level } = assessed.set;
  const expected = rodAtTarget(view, hole, setup);
  // Only while the level still stands where it read this top: another set-up for it is not worth the walk.
  const here = view.book.tops(hole).some(({ body }) => body.setup === setup);
  const sure = here && isToMakeSure(view, assessed, level);
  const more = needsMore(level) || sure ? readingStep(view, hole, setup, expected) : null;
  if (more) return more;
  if (!isOff(level, sure) || poured || left.has('top')) return null;
  return { do: 'move', part: 'top', nudge: null, rod: expected, why: level.why };
}

/** Out, however often it was read; or so near the edge that it may be, where another height would tell. */
const isOff = ({ verdict, chance, uncertainty, tolerance }: Judgement, near: boolean): boolean =>
  verdict === 'out' ||
  ((near || verdict === 'unsure') &&
    uncertainty !== null &&
    worthALift(chance, uncertainty / HALF_WIDTH_95, tolerance));

function readingStep(view: JobView, hole: string, setup: string, expected: number | null): SetStep | null {
  const tops = view.book.tops(hole);
  const read = view.book.benchmarks(setup).length > 0;
  // A set-up that hangs on the benchmark over a turning point need not see it.
  const hangs = sightLine(view, setup) !== null;
  const benchmark: SetStep = { do: 'rod', on: { point: 'benchmark' }, expected: null, again: read };
  const top: SetStep = { do: 'rod', on: { point: 'top', hole }, expected, again: tops.length > 0 };
  if (tops.length >= MOST_TOPS) return null;
  if (!hangs) return benchmark;
  const setups = new Set(tops.map(({ body }) => body.setup));
  if (tops.length < GUARDED || !setups.has(setup)) return top;
  const hangsOn = [...setups].flatMap((each) => view.book.benchmarks(each));
  return hangsOn.length < GUARDED ? benchmark : top;
}
