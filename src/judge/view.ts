import { type SitePoint, subtract, type Vec } from '../geometry/point.ts';
import { type RigidMotion, toSite } from '../geometry/rigid.ts';
import type { Entry, EntryOf, Thing } from '../job/entry-schema.ts';
import { ofKind, thingKey } from '../job/log.ts';
import type { Plan } from '../job/plan-schema.ts';
import type { TapeInHand } from '../measure/taped.ts';
import type { Measured, MeasuredHeight, MeasuredPoint, Moves, PullResult } from '../measure/types.ts';
import type { Hole, SitedHole } from '../plan/hole.ts';
import type { LaidPlan, LineInPlace } from '../plan/index.ts';
import { type Book, bookOf } from './book.ts';
import { named } from './leave-out.ts';
import { believedMoves, type Shaken, shakenBy } from './shaken.ts';
import { groundLinesOf, type Situation } from './situation.ts';
import type { Ground } from './words.ts';

/** What tells of heights. */
export type Levelled = EntryOf<'rod'> | EntryOf<'difference'>;

/** A pull seen from one of its ends. */
export interface OtherEnd {
  readonly end: Thing;
  readonly result: PullResult;
}

/** A standing job with everything looked up once, for the judges. */
export interface JobView {
  /** Entries that stand, in order. */
  readonly entries: readonly Entry[];
  readonly plan: Plan;
  readonly holes: readonly Hole[];
  /** The plan as it lies on the site; null until A and B are placed. */
  readonly laid: LaidPlan | null;
  readonly measured: Measured;
  /** The same without what is believed misread: see `Situation`. */
  readonly measuredWithout: readonly Measured[];
  /** What the next pull is made with; null for a tape without corrections of its own. */
  readonly inHand: TapeInHand | null;
  readonly ground: Ground;
  readonly sited: ReadonlyMap<string, SitedHole>;
  /** Walls of houses, through which no tape goes; site frame. */
  readonly walls: readonly LineInPlace[];
  /** Current points, by `thingKey`. */
  readonly points: ReadonlyMap<string, MeasuredPoint>;
  readonly heights: ReadonlyMap<string, MeasuredHeight>;
  /** Rod readings and differences that stand, by entry. */
  readonly levelled: ReadonlyMap<string, Levelled>;
  /** The bodies of the pulls that the adjustment used, by entry. */
  readonly pullBodies: ReadonlyMap<string, EntryOf<'pull'>>;
  /** Readings that are believed wrong, by entry. */
  readonly suspects: ReadonlySet<string>;
  /** What such pulls touch, by `thingKey`. */
  readonly suspectedThings: ReadonlySet<string>;
  /** Stakes that are believed to have moved; null when none is. */
  readonly moves: Moves | null;
  /** The same, and what hangs on them. */
  readonly shaken: Shaken;
  /** Holes with an as-dug reading: their stakes are gone. */
  readonly dugHoles: ReadonlySet<string>;
  /** The current pulls that the adjustment used of a thing, each with the thing at its other end. */
  readonly pullsOf: (thing: Thing) => readonly OtherEnd[];
  /** Entries by what they are of. */
  readonly book: Book;
}

const NOTHING_MEASURED: Measured = {
  points: [],
  pulls: [],
  offsets: [],
  suspicions: [],
  globalTest: { chiSquare: 0, degreesOfFreedom: 0, chance: 1 },
  moves: null,
  baseline: null,
  frameBaseline: null,
  designedBaseline: null,
  heights: [],
  heightsTest: { chiSquare: 0, degreesOfFreedom: 0, chance: 1 },
  levelling: { setups: [], loops: [], collimations: [], adrift: [], tops: { keys: [], covariance: [] } },
  unused: [],
  settled: true,
};

/** Gathered once for each situation, though every card asks. */
const gathered = new WeakMap<Situation, JobView | null>();

/** Gathers a situation into a view; null before there is a plan to judge by. */
export function viewOf(situation: Situation): JobView | null {
  const before = gathered.get(situation);
  if (before !== undefined) return before;
  const view = gather(situation);
  gathered.set(situation, view);
  return view;
}

function gather(situation: Situation): JobView | null {
  const { entries, plan, holes, laid, inHand, measuredWithout } = situation;
  if (!plan) return null;
  const measured = situation.measured ?? NOTHING_MEASURED;
  const moves = believedMoves(measured.moves, entries);
  const suspects = new Set(measured.suspicions.flatMap((suspicion) => suspicion.entries));
  const pullBodies = new Map(ofKind(entries, 'pull').map((entry) => [entry.id, entry]));
  return {
    entries,
    plan,
    holes,
    laid,
    measured,
    measuredWithout,
    inHand,
    ground: groundOf(plan, laid),
    sited: new Map((laid?.holes ?? []).map((hole) => [hole.label, hole])),
    walls: wallsOf(situation),
    ...lookupsOf(measured, pullBodies),
    levelled: new Map(
      [...ofKind(entries, 'rod'), ...ofKind(entries, 'difference')].map((entry) => [entry.id, entry]),
    ),
    pullBodies,
    dugHoles: new Set(ofKind(entries, 'dug').map(({ body }) => body.hole)),
    suspects,
    moves,
    shaken: shakenBy(moves, entries),
    suspectedThings: new Set(
      [...ofKind(entries, 'pull'), ...ofKind(entries, 'offset')]
        .filter(({ id }) => suspects.has(id))
        .flatMap(({ body }) =>
          body.kind === 'pull'
            ? [thingKey(body.from.thing), thingKey(body.to.thing)]
            : [thingKey(body.of.thing)],
        ),
    ),
    book: bookOf(entries),
  };
}

/**
 * The job as it would be if the readings that are believed wrong were not there. First without every one that stands out
 * by itself, which is the best guess; then with all of them; then, where the geometry cannot tell several apart, without
 * each in turn. What holds in all of them does not hang on a misreading. One view when nothing is suspected.
 */
export function readingsOfTheBook(view: JobView): [JobView, ...JobView[]] {
  const [best, ...others] = view.measuredWithout.map((measured) => without(view, measured));
  if (!best) return [view];
  const withAll = named(view.measured.suspicions).length > 0 ? [view] : [];
  return [best, ...withAll, ...others];
}

/** Suspects stay known, so that a place is not called checked by leaving out what speaks against it. */
const without = (view: JobView, measured: Measured): JobView =>
  measured === view.measured ? view : { ...view, measured, ...lookupsOf(measured, view.pullBodies) };

function lookupsOf(measured: Measured, pullBodies: ReadonlyMap<string, EntryOf<'pull'>>) {
  const current = measured.points.filter((point) => point.current);
  return {
    points: new Map(current.map((point) => [thingKey(point.thing), point])),
    heights: new Map(measured.heights.map((height) => [height.key, height])),
    pullsOf: otherEnds(measured, pullBodies),
  };
}

function otherEnds(
  measured: Measured,
  bodies: ReadonlyMap<string, EntryOf<'pull'>>,
): (thing: Thing) => readonly OtherEnd[] {
  const ends = new Map<string, OtherEnd[]>();
  const put = (at: Thing, end: Thing, result: PullResult) => {
    const key = thingKey(at);
    const list = ends.get(key);
    if (list) list.push({ end, result });
    else ends.set(key, [{ end, result }]);
  };
  for (const result of measured.pulls) {
    const body = bodies.get(result.entry)?.body;
    if (!body || !result.current) continue;
    put(body.from.thing, body.to.thing, result);
    put(body.to.thing, body.from.thing, result);
  }
  return (thing) => ends.get(thingKey(thing)) ?? [];
}

const UNTURNED: RigidMotion = { turn: 0, shift: { x: 0, y: 0 } };

function wallsOf(situation: Situation): LineInPlace[] {
  const { laid } = situation;
  if (!laid) return [];
  return groundLinesOf(situation)
    .lines.filter(({ kind }) => kind === 'house')
    .map((wall) => ({ ...wall, from: toSite(laid.motion, wall.from), to: toSite(laid.motion, wall.to) }));
}

function groundOf(plan: Plan, laid: LaidPlan | null): Ground {
  const motion = laid?.motion ?? UNTURNED;
  const centre: SitePoint = toSite(motion, { x: 0, y: 0 });
  const front: Vec = subtract(toSite(motion, { x: 0, y: 1 }), centre);
  const around = plan.shape.kind === 'ring' ? (plan.shape.pier ? 'pier' : 'centre') : null;
  return { units: plan.units, centre, front, around };
}

/** The current point of a thing; null while nothing was ever logged of it. */
export const pointOf = (view: JobView, thing: Thing): MeasuredPoint | null =>
  view.points.get(thingKey(thing)) ?? null;

/** Whether a thing is known to stand: by a stand event, or by pulls to it. */
export function stands(view: JobView, thing: Thing): boolean {
  const point = pointOf(view, thing);
  return view.book.standAt(thing) >= 0 || (point !== null && point.lack?.reason !== 'no-pulls');
}

/** What the adjustment says of the current pulls between two things, either way round. */
export function pullsBetween(view: JobView, one: Thing, other: Thing): PullResult[] {
  const key = thingKey(other);
  return view
    .pullsOf(one)
    .filter(({ end }) => thingKey(end) === key)
    .map(({ result }) => result);
}

export const postOf = (hole: string): Thing => ({ kind: 'post', hole });
export const stakeOf = (hole: string): Thing => ({ kind: 'hole-stake', hole });
/** A dug hole itself, which is touched at the middle of its foot. */
export const middleOf = (hole: string): Thing => ({ kind: 'dug-hole', hole });
