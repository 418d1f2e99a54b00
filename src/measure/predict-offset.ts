import type { Vec } from '../geometry/point.ts';
import type { PullEnd, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/hole.ts';
import { offsetEquation } from './offset-equation.ts';
import { offsetSigma, stationSigma } from './offset-rows.ts';
import { type Prediction, type Touched, touched } from './predict.ts';
import type { Covariance, Measured } from './types.ts';

/** What would be read off a string; an offset is positive on the left. */
export interface PredictedOffset {
  readonly station: Prediction;
  readonly offset: Prediction;
}

/**
 * What would be measured off a string now, as `predict` says it of a pull: the three places are taken as independent, so sigma
 * is if anything too large. A round is measured at its near side where that was touched.
 *
 * @param from where the string begins
 * @returns null when one of the three is neither measured nor planned, or two of them are one
 */
export function predictOffset(
  from: Thing,
  to: Thing,
  of: PullEnd,
  measured: Measured,
  holes: readonly SitedHole[],
  instruments: Instruments,
): PredictedOffset | null {
  const keys = [from, to, of.thing].map(thingKey);
  if (new Set(keys).size < keys.length) return null;
  const end = (thing: Thing) => touched({ thing, touch: { at: 'centre' } }, measured, holes);
  const [f, t, x] = [end(from), end(to), touched(of, measured, holes)];
  if (!f || !t || !x) return null;
  const equation = (part: 'station' | 'offset', gap: number) =>
    offsetEquation({ part, gap }, x.place, f.place, t.place);
  const square = equation('offset', 0);
  const off = Math.abs(square.predicted);
  const offset = equation('offset', square.predicted < 0 ? -x.gap : x.gap);
  const station = equation('station', 0);
  const sigma = (one: typeof station, reading: number) => Math.hypot(placesSigma(one, [x, f, t]), reading);
  return {
    station: {
      reading: station.predicted,
      sigma: sigma(station, stationSigma(station.predicted, off, instruments)),
    },
    offset: { reading: offset.predicted, sigma: sigma(offset, offsetSigma(off, instruments)) },
  };
}

function placesSigma(
  { byOf, byFrom, byTo }: Record<'byOf' | 'byFrom' | 'byTo', Vec>,
  [x, f, t]: readonly [Touched, Touched, Touched],
): number {
  const variance = along(x.covariance, byOf) + along(f.covariance, byFrom) + along(t.covariance, byTo);
  return Math.sqrt(Math.max(variance, 0));
}

const along = ({ xx, xy, yy }: Covariance, g: Vec): number =>
  xx * g.x * g.x + 2 * xy * g.x * g.y + yy * g.y * g.y;
