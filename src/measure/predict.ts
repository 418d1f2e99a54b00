import { bearingOf, distance, subtract, type Vec } from '../geometry/point.ts';
import type { Hold, PullEnd, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/hole.ts';
import { GUESSED_LEAN, riseSigma, slopeDoubt, tapeSigma } from './sigma.ts';
import { reachOf } from './touch.ts';
import type { Covariance, Measured, MeasuredPoint } from './types.ts';

/** What a pull ought to read, metres, and one sigma of the difference to be expected. */
export interface Prediction {
  readonly reading: number;
  readonly sigma: number;
}

/**
 * One sigma of each coordinate of a stake that has been driven by the plan but not measured yet, metres: a peg wanders by
 * its own thickness as it is driven. A guess, wide enough to pass honest work and narrow enough to catch a foot.
 */
export const DRIVEN_WITHIN_M = 0.05;
/** The same of the middle of a dug hole: a bar and an auger wander by inches (common practice). */
const DUG_WITHIN_M = 0.1;

/**
 * What a new pull would read, as far as is known now: for comparing with what was read, before it is written down.
 *
 * Both ends are taken as independent. Places found from the same stakes err together, so sigma is if anything too large.
 *
 * @param instruments with them sigma includes the tape's own error; without, it is that of the places alone
 * @returns null when an end is neither measured nor, for A, B and hole stakes, planned; or has no such part to touch
 */
export function predict(
  from: PullEnd,
  to: PullEnd,
  hold: Hold,
  measured: Measured,
  holes: readonly SitedHole[],
  instruments?: Instruments,
): Prediction | null {
  if (thingKey(from.thing) === thingKey(to.thing)) return null;
  const near = touched(from, measured, holes);
  const far = touched(to, measured, holes);
  if (!near || !far) return null;
  const plan = Math.max(distance(near.place, far.place) - near.gap - far.gap, 0);
  const bearing = bearingOf(subtract(far.place, near.place));
  const rise = hold.how === 'slope' ? Math.abs(hold.rise?.m ?? 0) : 0;
  const reading = Math.hypot(plan, rise);
  const variance =
    (varianceAlong(near.covariance, bearing) + varianceAlong(far.covariance, bearing)) *
    (reading > 0 ? (plan / reading) ** 2 : 1);
  const doubt = hold.how === 'slope' && !hold.rise ? slopeDoubt(reading) : 0;
  const tape = instruments ? tapeError(reading, rise, instruments) : 0;
  return { reading, sigma: Math.hypot(Math.sqrt(variance), doubt, tape) };
}

function tapeError(reading: number, rise: number, instruments: Instruments): number {
  const fromRise = rise > 0 ? Math.min(rise / reading, 1) * riseSigma(instruments) : 0;
  return Math.hypot(tapeSigma(reading, instruments), fromRise);
}

/** A place that was touched, with its doubt. */
export interface Touched {
  readonly place: Vec;
  readonly covariance: Covariance;
  readonly gap: number;
}

export function touched(end: PullEnd, measured: Measured, holes: readonly SitedHole[]): Touched | null {
  const { thing } = end;
  const hole = 'hole' in thing ? (holes.find(({ label }) => label === thing.hole) ?? null) : null;
  if ('hole' in thing && !hole) return null;
  const reach = reachOf(end.touch, thing.kind === 'post' ? hole : null);
  const key = thingKey(thing);
  const point = measured.points.find((one) => one.current && thingKey(one.thing) === key);
  const ground = point?.fix ?? planned(thing, measured, hole);
  if (!reach || !ground) return null;
  const raised = raise(ground, thing.kind === 'post' ? (end.height?.m ?? 0) : 0, point?.lean ?? null);
  const place = { x: raised.place.x + reach.offset.x, y: raised.place.y + reach.offset.y };
  return { place, covariance: raised.covariance, gap: reach.gap };
}

type Ground = Pick<Touched, 'place' | 'covariance'>;

function planned(thing: Thing, { designedBaseline }: Measured, hole: SitedHole | null): Ground | null {
  const variance = DRIVEN_WITHIN_M * DRIVEN_WITHIN_M;
  const covariance = { xx: variance, xy: 0, yy: variance };
  if (thing.kind === 'hole-stake' && hole) return { place: hole.site, covariance };
  if (thing.kind === 'dug-hole' && hole) {
    const wandering = DUG_WITHIN_M * DUG_WITHIN_M;
    return { place: hole.site, covariance: { xx: wandering, xy: 0, yy: wandering } };
  }
  if (thing.kind !== 'stake') return null;
  if (thing.label === 'A') return { place: { x: 0, y: 0 }, covariance: { xx: 0, xy: 0, yy: 0 } };
  if (thing.label !== 'B' || designedBaseline === null) return null;
  return { place: { x: designedBaseline, y: 0 }, covariance: { xx: variance, xy: 0, yy: 0 } };
}

/** The place at a height; where plumb was not read, the guessed lean adds its doubt. */
function raise(ground: Ground, height: number, lean: MeasuredPoint['lean']): Ground {
  if (height === 0) return ground;
  const guess = GUESSED_LEAN * GUESSED_LEAN;
  const { perMetre, covariance } = lean ?? {
    perMetre: { x: 0, y: 0 },
    covariance: { xx: guess, xy: 0, yy: guess },
  };
  const square = height * height;
  return {
    place: { x: ground.place.x + perMetre.x * height, y: ground.place.y + perMetre.y * height },
    covariance: {
      xx: ground.covariance.xx + covariance.xx * square,
      xy: ground.covariance.xy + covariance.xy * square,
      yy: ground.covariance.yy + covariance.yy * square,
    },
  };
}

function varianceAlong({ xx, xy, yy }: Covariance, bearing: number): number {
  const c = Math.cos(bearing);
  const s = Math.sin(bearing);
  return Math.max(xx * c * c + 2 * xy * c * s + yy * s * s, 0);
}
