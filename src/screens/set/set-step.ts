import type { SitePoint } from '../../geometry/point.ts';
import type { EntryOf, Side, Thing } from '../../job/entry-schema.ts';
import { ofKind, thingKey } from '../../job/log.ts';
import { adviceFor } from '../../judge/advice.ts';
import { type PullPlan, pullPlan } from '../../judge/pull-ends.ts';
import type { HoleAssessment, Judgement, Nudge } from '../../judge/types.ts';
import { type JobView, postOf, pullsBetween, since, stands } from '../../judge/view.ts';
import type { RodPoint } from './rod-flow.tsx';

/** The next thing to do about one post or pier. */
export type SetStep =
  /** The plan does not lie on the site yet. */
  | { readonly do: 'lay' }
  | { readonly do: 'stand'; readonly hold: readonly PullPlan[] }
  | { readonly do: 'pull'; readonly pull: PullPlan }
  /** A pull to it looks misread. `again`: it was pulled a second time, so the wrong one can be struck. */
  | {
      readonly do: 'doubt';
      readonly pull: PullPlan;
      readonly entry: EntryOf<'pull'>;
      readonly again: boolean;
    }
  /** Out in place or plumb, and still loose. */
  | { readonly do: 'move'; readonly nudge: Nudge | null; readonly why: string }
  | { readonly do: 'plumb'; readonly side: Side }
  | { readonly do: 'rod'; readonly on: RodPoint; readonly expected: number | null }
  /** Every reading that can be asked for is in. */
  | { readonly do: 'done' };

/** What the log does not know: where the level stands now, and what the user chose to leave as it is. */
export interface SetChoices {
  readonly setup: string;
  readonly leave: boolean;
}

const ORIGIN: SitePoint = { x: 0, y: 0 };
const STAKES: readonly Thing[] = [
  { kind: 'stake', label: 'A' },
  { kind: 'stake', label: 'B' },
];

/** First the place, then plumb, then the top: each is worth reading only once the one before it is right. */
export function setStep(view: JobView, hole: HoleAssessment, choices: SetChoices): SetStep {
  if (!view.laid || !hole.designed) return { do: 'lay' };
  if (hole.poured) return { do: 'done' };
  const plans = stakePulls(view, hole.hole, hole.designed);
  if (!stands(view, postOf(hole.hole))) return { do: 'stand', hold: plans };
  return (
    placeStep(view, hole, hole.designed, plans, choices) ??
    plumbStep(view, hole, choices) ??
    levelStep(view, hole, choices.setup) ?? { do: 'done' }
  );
}

/** The two pulls that set a post: from A and from B, to the faces that look towards them. */
function stakePulls(view: JobView, hole: string, designed: SitePoint): PullPlan[] {
  const b: SitePoint = { x: view.measured.baseline?.length ?? view.laid?.baseline ?? 0, y: 0 };
  return STAKES.map((stake) =>
    pullPlan(view, stake, stake === STAKES[0] ? ORIGIN : b, postOf(hole), designed),
  );
}

function placeStep(
  view: JobView,
  { hole, set }: HoleAssessment,
  designed: SitePoint,
  plans: readonly PullPlan[],
  { leave }: SetChoices,
): SetStep | null {
  const post = postOf(hole);
  const unread = plans.find(({ from }) => pullsBetween(view, from.thing, post).length === 0);
  if (unread) return { do: 'pull', pull: unread };
  const doubt = doubtStep(view, post);
  if (doubt) return doubt;
  if (set.position.verdict === 'out' && set.position.checked) {
    return leave ? null : { do: 'move', nudge: set.nudge, why: set.position.why };
  }
  if (set.position.verdict === 'in' && set.position.checked) return null;
  const advice = adviceFor(view, post, designed, set.position.checked);
  if (advice) return { do: 'pull', pull: advice.pull };
  if (set.position.verdict === 'out' && !leave) {
    return { do: 'move', nudge: set.nudge, why: set.position.why };
  }
  return null;
}

/** Nothing is worth doing about a post while a reading of it is not to be believed. */
function doubtStep(view: JobView, post: Thing): SetStep | null {
  const entry = ofKind(view.entries, 'pull').find(
    ({ id, body }) => view.suspects.has(id) && [body.from, body.to].some((end) => sameThing(end.thing, post)),
  );
  const result = view.measured.pulls.find((pull) => pull.entry === entry?.id);
  if (!entry || !result) return null;
  const { from, to } = entry.body;
  const again = pullsBetween(view, from.thing, to.thing).length > 1;
  return { do: 'doubt', pull: { from, to, expected: result.predicted }, entry, again };
}

const sameThing = (one: Thing, other: Thing): boolean => thingKey(one) === thingKey(other);

/** Two faces side by side give the lean; the two opposite guard it. */
const PLUMB_ORDER: readonly Side[] = ['front', 'left', 'back', 'right'];
const FACES_FOR_LEAN = 2;

function plumbStep(view: JobView, { hole, set }: HoleAssessment, { leave }: SetChoices): SetStep | null {
  const readings = since(view, postOf(hole), 'plumb').filter(({ body }) => body.hole === hole);
  const unread = PLUMB_ORDER.filter((side) => !readings.some(({ body }) => body.side === side));
  const lean = unread.find((side) => PLUMB_ORDER.indexOf(side) < FACES_FOR_LEAN);
  if (lean) return { do: 'plumb', side: lean };
  if (set.plumb.verdict === 'out' && !leave) return { do: 'move', nudge: null, why: set.plumb.why };
  const guard = unread[0];
  return guard && needsMore(set.plumb) ? { do: 'plumb', side: guard } : null;
}

/** A rod reading twice on the top, and twice on the benchmark that it hangs on. */
const GUARDED = 2;

function levelStep(view: JobView, { hole, set }: HoleAssessment, setup: string): SetStep | null {
  if (!needsMore(set.level)) return null;
  const rods = ofKind(view.entries, 'rod').filter(({ body }) => body.setup === setup);
  const benchmarks = rods.filter(({ body }) => body.on.point === 'benchmark');
  const target = view.sited.get(hole)?.top ?? 0;
  const expected = benchmarks.length > 0 ? mean(benchmarks.map(({ body }) => body.reading.m)) - target : null;
  const tops = since(view, postOf(hole), 'rod').filter(
    ({ body }) => body.on.point === 'top' && body.on.hole === hole,
  );
  const benchmark: SetStep = { do: 'rod', on: { point: 'benchmark' }, expected: null };
  if (benchmarks.length === 0) return benchmark;
  if (tops.length < GUARDED) return { do: 'rod', on: { point: 'top', hole }, expected };
  return benchmarks.length < GUARDED ? benchmark : null;
}

const mean = (values: readonly number[]): number => values.reduce((sum, m) => sum + m, 0) / values.length;

const needsMore = ({ verdict, checked }: Judgement): boolean =>
  verdict === 'unmeasured' || verdict === 'unsure' || !checked;

/** Where the level stands: the set-up of the last rod reading, or the first. */
export function lastSetup(view: JobView): string {
  return ofKind(view.entries, 'rod').at(-1)?.body.setup ?? FIRST_SETUP;
}
const FIRST_SETUP = '1';

/** A name that no set-up has had. */
export function nextSetup(view: JobView): string {
  const used = ofKind(view.entries, 'rod').map(({ body }) => Number(body.setup));
  return String(Math.max(0, ...used.filter(Number.isInteger)) + 1);
}

/** The pier first, for other heights hang on it; then in the plan's order. */
export function setOrder(view: JobView): string[] {
  const piers = view.holes.filter(({ section }) => section.kind === 'pier');
  const posts = view.holes.filter(({ section }) => section.kind !== 'pier');
  return [...piers, ...posts].map(({ label }) => label);
}

/** The hole to go on with: the first that still wants something, from `after` onwards and round again. */
export function nextHole(
  view: JobView,
  holes: readonly HoleAssessment[],
  setup: string,
  after: string | null = null,
): string | null {
  const order = setOrder(view);
  const from = after === null ? 0 : order.indexOf(after) + 1;
  const round = [...order.slice(from), ...order.slice(0, from)].filter((label) => label !== after);
  const open = round.find((label) => {
    const hole = holes.find((candidate) => candidate.hole === label);
    return hole && setStep(view, hole, { setup, leave: false }).do !== 'done';
  });
  return open ?? null;
}
