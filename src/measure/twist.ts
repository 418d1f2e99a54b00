import { add, bearingOf, distance, dot, scale, subtract, unit, type Vec } from '../geometry/point.ts';
import type { EntryOf, Side, Thing } from '../job/entry-schema.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/hole.ts';
import { sideBearing, sideToward } from '../plan/touch.ts';
import { touched } from './predict.ts';
import { tapeSigma } from './sigma.ts';
import { halfSection } from './touch.ts';
import type { Covariance, Measured } from './types.ts';

type Twist = EntryOf<'twist'>['body'];

/** How far a post is turned about itself from the way it was planned to look: radians, anticlockwise seen from above. */
export interface MeasuredTwist {
  readonly turn: number;
  readonly sigma: number;
  /** What of sigma comes from where the string or the place lies, alike in all readings from there; radians. */
  readonly common: number;
}

/** A rule held square to a face is read to half a millimetre, one sigma (common practice). */
const RULER_M = 0.0005;

/** Turned further than this a face is no longer the one that was meant: a quarter turn lies as far the other way. */
const MOST_TURN = Math.PI / 4;

/** Halvings of that range: to a millionth of a degree. */
const HALVINGS = 26;

/**
 * How far a post is turned, from what was measured to both edges of one of its faces. Off a string the difference of the two is
 * w sin(turn − lie of the string); from one place it is the difference of two distances, searched for (derived, not
 * published). Two rulers, or two pulls, and where the string or the place lies, make its sigma.
 *
 * @returns null where nothing follows: of a round, off a string that runs more than 45° off the face, off a string or from a place
 *   that the face does not look to, and where the two differ by more than such a face could show
 */
export function twistOf(
  body: Twist,
  hole: SitedHole,
  measured: Measured,
  holes: readonly SitedHole[],
  instruments: Instruments,
): MeasuredTwist | null {
  if (hole.section.kind !== 'post') return null;
  const difference = body.anticlockwise.m - body.clockwise.m;
  const { from, side } = body;
  const place = placeOf({ kind: 'post', hole: hole.label }, measured, holes) ?? {
    place: hole.site,
    covariance: NONE,
  };
  if (from.by === 'tape') {
    const at = touched(from.at, measured, holes);
    const sigma = Math.hypot(
      ...[body.anticlockwise, body.clockwise].map(({ m }) => tapeSigma(m, instruments)),
    );
    return at && fromPlace({ difference, sigma, face: faceOf(hole, side) }, place, at);
  }
  const [a, b] = [from.from, from.to].map((thing) => placeOf(thing, measured, holes));
  if (!a || !b) return null;
  return offString({ difference, sigma: RULER_M * Math.SQRT2, face: faceOf(hole, side) }, place.place, [
    a,
    b,
  ]);
}

/** The face that looks best towards a place, or towards a string past the post. */
export function faceToward(
  hole: SitedHole,
  from: Twist['from'],
  measured: Measured,
  holes: readonly SitedHole[],
): Side {
  const here = placeOf({ kind: 'post', hole: hole.label }, measured, holes)?.place ?? hole.site;
  const there =
    from.by === 'tape'
      ? touched(from.at, measured, holes)?.place
      : nearestOn(
          here,
          [from.from, from.to].map((thing) => placeOf(thing, measured, holes)?.place),
        );
  return sideToward(hole.facing, there ? bearingOf(subtract(there, here)) : hole.facing);
}

function nearestOn(here: Vec, [a, b]: readonly (Vec | undefined)[]): Vec | undefined {
  if (!a || !b || distance(a, b) === 0) return undefined;
  const along = unit(bearingOf(subtract(b, a)));
  const off = subtract(here, a);
  return add(a, scale(along, off.x * along.x + off.y * along.y));
}

interface Placed {
  readonly place: Vec;
  readonly covariance: Covariance;
}

const NONE: Covariance = { xx: 0, xy: 0, yy: 0 };

const placeOf = (thing: Thing, measured: Measured, holes: readonly SitedHole[]): Placed | null =>
  touched({ thing, touch: { at: 'centre' } }, measured, holes);

/** A face as planned: the way it looks, how far it lies from the post's middle, how wide it is. */
interface Face {
  readonly bearing: number;
  readonly half: number;
  readonly width: number;
}

function faceOf(hole: SitedHole, side: Side): Face {
  const next = side === 'front' || side === 'back' ? 'left' : 'front';
  return {
    bearing: sideBearing(hole.facing, side),
    half: halfSection(side, hole),
    width: 2 * halfSection(next, hole),
  };
}

/** What was read: to the anticlockwise edge less to the clockwise one, with one sigma of that. */
interface EdgesRead {
  readonly difference: number;
  readonly sigma: number;
  readonly face: Face;
}

function offString(
  { difference, sigma, face }: EdgesRead,
  post: Vec,
  [a, b]: readonly [Placed, Placed],
): MeasuredTwist | null {
  const length = distance(a.place, b.place);
  const beside = nearestOn(post, [a.place, b.place]);
  // One through the post itself, as along a row, may have been drawn past either face.
  if (!beside || dot(subtract(beside, post), unit(face.bearing)) < -face.half) return null;
  const along = bearingOf(subtract(b.place, a.place));
  // Of the string's two normals the one that the face looks along.
  const lie = [along + Math.PI / 2, along - Math.PI / 2]
    .map((normal) => wrapped(normal - face.bearing))
    .reduce((best, each) => (Math.abs(each) < Math.abs(best) ? each : best));
  const sine = difference / face.width;
  if (Math.abs(lie) > MOST_TURN || Math.abs(sine) > 1) return null;
  const turn = lie + Math.asin(sine);
  if (Math.abs(turn) > MOST_TURN) return null;
  const common = Math.hypot(radius(a), radius(b)) / length;
  const read = sigma / (face.width * Math.cos(Math.asin(sine)));
  return { turn, sigma: Math.hypot(read, common), common };
}

function fromPlace({ difference, sigma, face }: EdgesRead, post: Placed, at: Placed): MeasuredTwist | null {
  const shown = (turn: number) => {
    const [acw, cw] = edges(face, post.place, turn);
    return distance(acw, at.place) - distance(cw, at.place);
  };
  let [least, most] = [-MOST_TURN, MOST_TURN];
  // Turned anticlockwise its anticlockwise edge goes away from who looks at the face.
  if (!(shown(least) < difference && difference < shown(most))) return null;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (least + most) / 2;
    if (shown(middle) < difference) least = middle;
    else most = middle;
  }
  const turn = (least + most) / 2;
  const step = 1e-4;
  const slope = (shown(turn + step) - shown(turn - step)) / (2 * step);
  const sideways = Math.hypot(radius(post), radius(at)) / distance(post.place, at.place);
  return { turn, sigma: Math.hypot(sigma / slope, sideways), common: sideways };
}

function edges({ bearing, half, width }: Face, place: Vec, turn: number): [Vec, Vec] {
  const middle = add(place, scale(unit(bearing + turn), half));
  const across = scale(unit(bearing + turn + Math.PI / 2), width / 2);
  return [add(middle, across), subtract(middle, across)];
}

/** One sigma along the worst way. */
const radius = ({ covariance: { xx, xy, yy } }: Placed): number =>
  Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));

const wrapped = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));
