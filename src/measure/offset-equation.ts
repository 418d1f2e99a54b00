import type { Vec } from '../geometry/point.ts';
import type { OffsetReading } from './offset-rows.ts';

/** A string shorter than this has no direction that means anything: a thousandth of a millimetre. */
const NO_STRING_M = 1e-6;

/** What a reading off a string would be, and how it changes with the place of each of the three. */
export interface OffsetEquation {
  readonly predicted: number;
  readonly byOf: Vec;
  readonly byFrom: Vec;
  readonly byTo: Vec;
}

/**
 * Station and offset of a place X off the string from F to T, with e the unit vector from F to T and n square to it on the
 * left: the station is e·(X − F), the offset n·(X − F). As T moves by δ, e turns by (n·δ)/L towards n and n as much away
 * from e, L being the string's length; so each changes by the other over L. The near side of a round lies its radius
 * nearer to the string.
 *
 * @param place of what was touched: the thing's place raised to the height, and the touch's reach from there
 */
export function offsetEquation(
  { part, gap }: Pick<OffsetReading, 'part' | 'gap'>,
  place: Vec,
  from: Vec,
  to: Vec,
): OffsetEquation {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.sqrt(dx * dx + dy * dy);
  const known = length > NO_STRING_M;
  // Without a direction a string tells nothing of any place.
  const e = known ? { x: dx / length, y: dy / length } : { x: 0, y: 0 };
  const n = { x: 0 - e.y, y: e.x };
  const rx = place.x - from.x;
  const ry = place.y - from.y;
  const station = e.x * rx + e.y * ry;
  const offset = n.x * rx + n.y * ry;
  const along = part === 'station';
  const byOf = along ? e : n;
  const turn = known ? (along ? offset : -station) / length : 0;
  const byTo = { x: turn * n.x, y: turn * n.y };
  return {
    predicted: along ? station : offset - gap,
    byOf,
    byTo,
    byFrom: { x: -byOf.x - byTo.x, y: -byOf.y - byTo.y },
  };
}
