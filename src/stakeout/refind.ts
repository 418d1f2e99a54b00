import { cross, distance, dot, length, scale, subtract, type Vec } from '../geometry/point.ts';
import type { PullEnd } from '../job/entry-schema.ts';
import type { Covariance } from '../measure/types.ts';
import { tapeSigma } from '../plan/index.ts';
import { blocked } from './blocked.ts';
import { postEnd, touchedPoint } from './ends.ts';
import type {
  NoTapes,
  RefindAsked,
  RefindPull,
  Refound,
  StandingThing,
  StringBack,
  TapesBack,
} from './refind-types.ts';
import { sineBetween } from './squarest.ts';
import { crossesWell } from './string-cover.ts';

/** A shorter tape says nothing of a direction: two hands' breadths. */
const SHORTEST = 0.2;
/** Of so many surest tapes every pair is weighed; a thousand posts would make half a million pairs. */
const MOST_WEIGHED = 40;

/** A tape that can be pulled to the centre, and one sigma of where its arc lies there. */
interface Ray {
  readonly standing: StandingThing;
  readonly end: PullEnd;
  /** From what it touches to the centre. */
  readonly line: Vec;
  readonly sigma: number;
}

/**
 * How to find a centre again from what still stands: the two tapes that find it best, a third that proves them, and the
 * best string. With tapes of σ₁ and σ₂ (their own error, and that of the place pulled from, along the tape) that cross at γ
 * the place found is good to √(σ₁² + σ₂²) / sin γ, root mean square.
 *
 * Places are taken as erring apart from each other. Those measured from the same stakes err together, so what is told is if
 * anything too large.
 */
export function refind({ target, standing, instruments }: RefindAsked): Refound {
  const posts = standing.flatMap(({ post }) => post ?? []);
  const rays = standing.flatMap((each): Ray[] => {
    const ray = rayTo(target, each, instruments);
    return ray ? [ray] : [];
  });
  const inReach = rays.filter(({ line }) => length(line) <= instruments.tapeLength.m);
  const open = inReach.filter(
    ({ standing: { post }, line }) =>
      !blocked(
        subtract(target, line),
        target,
        posts.filter((other) => other !== post),
      ),
  );
  const tapes = bestTapes(open);
  return {
    tapes,
    noTapes: tapes ? null : whyNot(rays, inReach, open),
    string: bestString(target, standing, instruments),
  };
}

function rayTo(target: Vec, standing: StandingThing, instruments: RefindAsked['instruments']): Ray | null {
  const { thing, place, post, covariance } = standing;
  const end: PullEnd = post ? postEnd(post, target) : { thing, touch: { at: 'nail' } };
  const at = post ? touchedPoint(post, end, target) : place;
  const line = subtract(target, at);
  const away = length(line);
  if (away < SHORTEST) return null;
  const sigma = Math.hypot(tapeSigma(away, instruments), sigmaAlong(covariance, scale(line, 1 / away)));
  return { standing, end, line, sigma };
}

function sigmaAlong({ xx, xy, yy }: Covariance, { x, y }: Vec): number {
  return Math.sqrt(Math.max(0, xx * x * x + 2 * xy * x * y + yy * y * y));
}

function whyNot(rays: readonly Ray[], inReach: readonly Ray[], open: readonly Ray[]): NoTapes {
  if (rays.length === 0) return 'nothing-stands';
  if (rays.length === 1) return 'one-stands';
  if (inReach.length < 2) return 'beyond-tape';
  return open.length < 2 ? 'blocked' : 'in-line';
}

const errorOf = (one: Ray, other: Ray): number =>
  Math.hypot(one.sigma, other.sigma) / sineBetween(one.line, other.line);

function bestTapes(open: readonly Ray[]): TapesBack | null {
  const rays = [...open].sort((p, q) => p.sigma - q.sigma).slice(0, MOST_WEIGHED);
  let best: { readonly pair: readonly [Ray, Ray]; readonly error: number } | null = null;
  for (const [i, one] of rays.entries())
    for (const other of rays.slice(i + 1)) {
      if (!crossesWell(one.line, other.line)) continue;
      const error = errorOf(one, other);
      if (!best || error < best.error) best = { pair: [one, other], error };
    }
  if (!best) return null;
  const { pair, error } = best;
  const [one, other] = pair;
  return {
    how: 'tapes',
    pulls: [pullOf(one), pullOf(other)],
    side: sideOf(one, other),
    angle: Math.abs(Math.atan2(cross(one.line, other.line), dot(one.line, other.line))),
    error,
    proof: proofOf(rays, pair),
  };
}

const pullOf = ({ end, line }: Ray): RefindPull => ({ from: end, expected: length(line) });

/** The centre lies on the left of the walk from one to the other where the tapes turn that way. */
const sideOf = (one: Ray, other: Ray): 'left' | 'right' =>
  cross(subtract(one.line, other.line), one.line) > 0 ? 'left' : 'right';

/**
 * The third tape that shows best that one of two is misread: the one whose own line hangs on both of them alike, and that
 * is sure itself.
 */
function proofOf(rays: readonly Ray[], pair: readonly [Ray, Ray]): RefindPull | null {
  let best: { readonly ray: Ray; readonly worth: number } | null = null;
  for (const ray of rays) {
    if (pair.includes(ray)) continue;
    const worth = Math.min(...pair.map((each) => shareSeen(ray, each, pair)));
    if (worth > (best?.worth ?? LEAST_SEEN)) best = { ray, worth };
  }
  return best && pullOf(best.ray);
}

/** A tape along one of the two sees nothing of the other: a tenth of a misreading must show. */
const LEAST_SEEN = 0.1;

/** What of a misreading of one of the two tapes shows in a third: the place goes along the other tape's arc. */
function shareSeen(third: Ray, misread: Ray, [one, other]: readonly [Ray, Ray]): number {
  const kept = misread === one ? other : one;
  const along = { x: -kept.line.y, y: kept.line.x };
  return (
    Math.abs(dot(along, third.line)) /
    (length(along) * length(third.line) * sineBetween(one.line, other.line))
  );
}

/** A centre farther off a string is better found by tapes: a foot, which a square still holds. */
const MOST_OFF = 0.3;
/** Nearer than this the string lies over the centre: half the thickness of a pencil. */
const ON_STRING = 0.003;

/** The best string between two stakes or nails that passes over the centre, or by it within a foot. */
function bestString(
  target: Vec,
  standing: readonly StandingThing[],
  instruments: RefindAsked['instruments'],
): StringBack | null {
  const ends = standing.filter(
    ({ thing, place }) => thing.kind !== 'post' && distance(place, target) <= instruments.tapeLength.m,
  );
  let best: StringBack | null = null;
  for (const [i, one] of ends.entries())
    for (const other of ends.slice(i + 1)) {
      const back = stringBack(target, one, other, instruments);
      if (back && (!best || back.error < best.error)) best = back;
    }
  return best;
}

function stringBack(
  target: Vec,
  from: StandingThing,
  to: StandingThing,
  instruments: RefindAsked['instruments'],
): StringBack | null {
  const line = subtract(to.place, from.place);
  const run = length(line);
  if (run < SHORTEST) return null;
  const along = scale(line, 1 / run);
  const reach = subtract(target, from.place);
  const [station, offset] = [dot(along, reach), cross(along, reach)];
  if (station <= 0 || station >= run || Math.abs(offset) > MOST_OFF) return null;
  const square = { x: -along.y, y: along.x };
  const share = station / run;
  return {
    how: 'string',
    from: from.thing,
    to: to.thing,
    station,
    offset: Math.abs(offset),
    side: Math.abs(offset) < ON_STRING ? 'on' : offset > 0 ? 'left' : 'right',
    error: Math.hypot(
      tapeSigma(station, instruments),
      sigmaAlong(from.covariance, along),
      (1 - share) * sigmaAlong(from.covariance, square),
      share * sigmaAlong(to.covariance, square),
      Math.abs(offset) < ON_STRING ? 0 : instruments.tapeError.m,
    ),
  };
}
