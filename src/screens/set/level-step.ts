import { ofKind } from '../../job/log.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { needsMore, type Part, type SetStep } from './step.ts';

/** A rod reading twice on the top, and twice on the benchmark that it hangs on. */
const GUARDED = 2;
/** More readings than this of one top say nothing new: what is still in doubt then lies near the edge of what is allowed. */
const MOST_TOPS = 4;

/** What is still to be read of a post's top; null when that is known and guarded, or no more readings would help. */
export function levelStep(
  view: JobView,
  { hole, set, poured }: HoleAssessment,
  setup: string,
  left: ReadonlySet<Part>,
): SetStep | null {
  const { level } = set;
  const expected = rodAtTarget(view, hole, setup);
  if (needsMore(level)) return readingStep(view, hole, setup, expected);
  if (level.verdict !== 'out' || poured || left.has('top')) return null;
  return { do: 'move', part: 'top', nudge: null, rod: expected, why: level.why };
}

function readingStep(view: JobView, hole: string, setup: string, expected: number | null): SetStep | null {
  const tops = view.book.tops(hole);
  const read = view.book.benchmarks(setup).length > 0;
  const benchmark: SetStep = { do: 'rod', on: { point: 'benchmark' }, expected: null, again: read };
  const top: SetStep = { do: 'rod', on: { point: 'top', hole }, expected, again: tops.length > 0 };
  if (tops.length >= MOST_TOPS) return null;
  if (!read) return benchmark;
  const setups = new Set(tops.map(({ body }) => body.setup));
  if (tops.length < GUARDED || !setups.has(setup)) return top;
  const hangsOn = [...setups].flatMap((each) => view.book.benchmarks(each));
  return hangsOn.length < GUARDED ? benchmark : top;
}

/** What the rod reads on a top that is at its height, from one set-up: line of sight less target. Null without a benchmark. */
export function rodAtTarget(view: JobView, hole: string, setup: string): number | null {
  const readings = view.book.benchmarks(setup).map(({ body }) => body.reading.m);
  const target = view.sited.get(hole)?.top;
  if (readings.length === 0 || target === undefined) return null;
  return readings.reduce((sum, m) => sum + m, 0) / readings.length - target;
}

/** A level is taken in for the night: readings of another day hang on another set-up, common practice. Milliseconds. */
const SETUP_HOLDS_MS = 10 * 3600 * 1000;
const FIRST_SETUP = '1';

/** Where the level stands: the set-up of the last rod reading; a new one after a night, or before there is any. */
export function standingSetup(view: JobView, now: number): string {
  const last = ofKind(view.entries, 'rod').at(-1);
  if (!last) return FIRST_SETUP;
  return now - Date.parse(last.at) > SETUP_HOLDS_MS ? nextSetup(view) : last.body.setup;
}

/** A name that no set-up has had. */
export function nextSetup(view: JobView): string {
  const used = ofKind(view.entries, 'rod').map(({ body }) => Number(body.setup));
  return String(Math.max(0, ...used.filter(Number.isInteger)) + 1);
}
