import { type SitePoint, subtract, type Vec } from '../geometry/point.ts';
import { type RigidMotion, toSite } from '../geometry/rigid.ts';
import type { Entry, EntryKind, EntryOf, Thing } from '../job/entry-schema.ts';
import { isKind, ofKind, thingKey } from '../job/log.ts';
import type { Plan } from '../job/plan-schema.ts';
import type { Measured, MeasuredHeight, MeasuredPoint, PullResult } from '../measure/types.ts';
import type { Hole, SitedHole } from '../plan/hole.ts';
import type { LaidPlan } from '../plan/index.ts';
import type { Situation } from './situation.ts';
import type { Ground } from './words.ts';

/** A standing job with everything looked up once, for the judges. */
export interface JobView {
  /** Entries that stand, in order. */
  readonly entries: readonly Entry[];
  readonly plan: Plan;
  readonly holes: readonly Hole[];
  /** The plan as it lies on the site; null until A and B are placed. */
  readonly laid: LaidPlan | null;
  readonly measured: Measured;
  readonly ground: Ground;
  readonly sited: ReadonlyMap<string, SitedHole>;
  /** Current points, by `thingKey`. */
  readonly points: ReadonlyMap<string, MeasuredPoint>;
  readonly heights: ReadonlyMap<string, MeasuredHeight>;
  /** The bodies of the pulls that the adjustment used, by entry. */
  readonly pullBodies: ReadonlyMap<string, EntryOf<'pull'>>;
  /** Things that a pull believed wrong touches, by `thingKey`. */
  readonly suspected: ReadonlySet<string>;
  /** Index in `entries` of the stand event that opened each thing's current stand. */
  readonly standAt: ReadonlyMap<string, number>;
}

const NOTHING_MEASURED: Measured = {
  points: [],
  pulls: [],
  suspicions: [],
  globalTest: { chiSquare: 0, degreesOfFreedom: 0, chance: 1 },
  baseline: null,
  heights: [],
};

/** Gathers a situation into a view; null before there is a plan to judge by. */
export function viewOf(situation: Situation): JobView | null {
  const { entries, plan, holes, laid } = situation;
  if (!plan) return null;
  const measured = situation.measured ?? NOTHING_MEASURED;
  const standAt = new Map<string, number>();
  entries.forEach((entry, i) => {
    if (isKind(entry, 'stand')) standAt.set(thingKey(entry.body.thing), i);
  });
  const pullBodies = new Map(ofKind(entries, 'pull').map((entry) => [entry.id, entry]));
  const current = measured.points.filter((point) => point.current);
  return {
    entries,
    plan,
    holes,
    laid,
    measured,
    ground: groundOf(plan, laid),
    sited: new Map((laid?.holes ?? []).map((hole) => [hole.label, hole])),
    points: new Map(current.map((point) => [thingKey(point.thing), point])),
    heights: new Map(measured.heights.map((height) => [height.key, height])),
    pullBodies,
    suspected: suspectedThings(measured, pullBodies),
    standAt,
  };
}

function suspectedThings(measured: Measured, bodies: ReadonlyMap<string, EntryOf<'pull'>>): Set<string> {
  const pulls = measured.suspicions.flatMap(({ entries }) => entries.map((id) => bodies.get(id)?.body));
  return new Set(pulls.flatMap((body) => (body ? [thingKey(body.from.thing), thingKey(body.to.thing)] : [])));
}

const UNTURNED: RigidMotion = { turn: 0, shift: { x: 0, y: 0 } };

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
  return view.standAt.has(thingKey(thing)) || (point !== null && point.lack?.reason !== 'no-pulls');
}

/** What the adjustment says of the current pulls between two things, either way round. */
export function pullsBetween(view: JobView, one: Thing, other: Thing): PullResult[] {
  const wanted = [thingKey(one), thingKey(other)].sort().join();
  return view.measured.pulls.filter((pull) => {
    const body = view.pullBodies.get(pull.entry)?.body;
    return body && [thingKey(body.from.thing), thingKey(body.to.thing)].sort().join() === wanted;
  });
}

/** Entries of one kind logged since the thing's present stand began. */
export function since<K extends EntryKind>(view: JobView, thing: Thing, kind: K): EntryOf<K>[] {
  const from = (view.standAt.get(thingKey(thing)) ?? -1) + 1;
  return view.entries.slice(from).filter((entry): entry is EntryOf<K> => isKind(entry, kind));
}

/** Index in the view's entries of the last entry that fits, or −1. */
export function lastIndex(view: JobView, fits: (entry: Entry) => boolean): number {
  for (let i = view.entries.length - 1; i >= 0; i--) if (fits(view.entries[i]!)) return i;
  return -1;
}

export const postOf = (hole: string): Thing => ({ kind: 'post', hole });
export const stakeOf = (hole: string): Thing => ({ kind: 'hole-stake', hole });
