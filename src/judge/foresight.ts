import { distance, dot, type SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { ellipseOf } from '../measure/ellipse.ts';
import type { Covariance, Fix, MeasuredPoint, PullResult } from '../measure/types.ts';
import { tapeSigma } from '../plan/tape.ts';
import { localFix, type Ray } from './local-fix.ts';
import { rayOf } from './possible-pulls.ts';
import type { PullPlan } from './pull-ends.ts';
import { type JobView, pointOf } from './view.ts';

const ORIGIN: SitePoint = { x: 0, y: 0 };
/** The stake at which the site's frame is tied: known by definition. */
const EXACT: Covariance = { xx: 0, xy: 0, yy: 0 };

/**
 * The job as it would be known, had a pull been read as it is predicted: the places at its ends stay where they are and
 * are known better, by a rank-one update of their covariance. What the other places owe to it is left out, and so is what
 * the two ends have in common: good enough to plan the next pulls by; the adjustment has the last word once they are made.
 */
export function foresee(view: JobView, pull: PullPlan): JobView {
  const [from, to] = [pull.from.thing, pull.to.thing];
  const result = foreseen(view, from, to);
  const keys = [thingKey(from), thingKey(to)];
  const ahead: JobView = {
    ...view,
    pullsOf: (thing) => {
      const at = keys.indexOf(thingKey(thing));
      const pulls = view.pullsOf(thing);
      return at === -1 ? pulls : [...pulls, { end: at === 0 ? to : from, result }];
    },
  };
  const points = new Map(view.points);
  for (const [thing, other] of [
    [from, to],
    [to, from],
  ] as const) {
    const point = pointOf(view, thing);
    if (point) points.set(thingKey(thing), betterKnown(view, ahead, point, other));
  }
  return { ...ahead, points };
}

/** As `foresee`, for the pull from A to B before which no place is known. */
export function foreseeBaseline(view: JobView, baseline: number): JobView {
  const sigma = tapeSigma(baseline, view.plan.instruments);
  const points = new Map(view.points);
  const put = (label: string, place: SitePoint, covariance: Covariance) => {
    const thing: Thing = { kind: 'stake', label };
    const fix = { place, covariance, ellipse: ellipseOf(covariance), unseenShift: Number.POSITIVE_INFINITY };
    points.set(thingKey(thing), { thing, stand: 1, current: true, fix, lack: null, lean: null });
  };
  put('A', ORIGIN, EXACT);
  put('B', { x: baseline, y: 0 }, { xx: sigma * sigma, xy: 0, yy: 0 });
  return { ...view, points, measured: { ...view.measured, baseline: { length: baseline, sigma } } };
}

/** Where a thing was measured to stand; of one that has no place yet, where it is to stand. */
const placeAhead = (view: JobView, thing: Thing): SitePoint | null =>
  pointOf(view, thing)?.fix?.place ?? ('hole' in thing ? (view.sited.get(thing.hole)?.site ?? null) : null);

function betterKnown(view: JobView, ahead: JobView, point: MeasuredPoint, other: Thing): MeasuredPoint {
  const { thing, fix } = point;
  const place = placeAhead(view, thing);
  const end = pointOf(view, other)?.fix;
  // Stakes and nails hold the places: theirs is a matter of the whole network, not of one pull more.
  const holds = thing.kind === 'stake' || thing.kind === 'nail';
  if (holds || !place || !end) return point;
  const after = localFix(raysOf(ahead, thing, place));
  if (!after) return point;
  if (!fix) {
    const unproved = { place, ...after, ellipse: ellipseOf(after.covariance) };
    return { ...point, fix: unproved, lack: null };
  }
  const covariance = updated(fix.covariance, rayOf(view, end, place));
  const before = localFix(raysOf(view, thing, place));
  return {
    ...point,
    fix: { ...fix, covariance, ellipse: ellipseOf(covariance), ...shift(fix, before, after) },
  };
}

/** What a local solution gains, taken off what the adjustment says: its own figure where it says nothing finite. */
function shift(
  fix: Fix,
  before: { unseenShift: number } | null,
  after: { unseenShift: number },
): Pick<Fix, 'unseenShift'> {
  const known = before && Number.isFinite(before.unseenShift) && Number.isFinite(fix.unseenShift);
  return {
    unseenShift: known ? (fix.unseenShift * after.unseenShift) / before.unseenShift : after.unseenShift,
  };
}

/** All pulls to a thing, as it sees them. */
export const raysOf = (view: JobView, thing: Thing, place: SitePoint): Ray[] =>
  view.pullsOf(thing).flatMap(({ end }) => {
    const other = pointOf(view, end)?.fix;
    return other && distance(other.place, place) > 0 ? [rayOf(view, other, place)] : [];
  });

/** C − C n nᵀ C / (nᵀ C n + σ²): a covariance after one more reading along n. */
function updated(c: Covariance, { along, sigma }: Ray): Covariance {
  const gain = { x: c.xx * along.x + c.xy * along.y, y: c.xy * along.x + c.yy * along.y };
  const s = dot(gain, along) + sigma * sigma;
  return {
    xx: c.xx - (gain.x * gain.x) / s,
    xy: c.xy - (gain.x * gain.y) / s,
    yy: c.yy - (gain.y * gain.y) / s,
  };
}

/** What the adjustment will say of a pull that reads as predicted. Redundancy: σ² of the tape over that of the prediction. */
function foreseen(view: JobView, from: Thing, to: Thing): PullResult {
  const [p, q] = [placeAhead(view, from), placeAhead(view, to)];
  const predicted = p && q ? distance(p, q) : 0;
  const sigma = tapeSigma(predicted, view.plan.instruments);
  const [near, far] = [pointOf(view, from)?.fix, pointOf(view, to)?.fix];
  // The sigma of a ray holds the tape and its far end; the near end's part comes on top.
  const seen = near && far && predicted > 0 ? rayOf(view, near, far.place) : null;
  const own = seen && far ? dotted(far.covariance, seen.along) : Number.POSITIVE_INFINITY;
  const redundancy = seen ? (sigma * sigma) / (seen.sigma * seen.sigma + own) : 0;
  return {
    entry: 'foreseen',
    current: true,
    predicted,
    residual: 0,
    sigma,
    redundancy,
    standardised: 0,
    smallestCaught: Number.POSITIVE_INFINITY,
  };
}

const dotted = (c: Covariance, n: SitePoint | Ray['along']): number =>
  c.xx * n.x * n.x + 2 * c.xy * n.x * n.y + c.yy * n.y * n.y;
