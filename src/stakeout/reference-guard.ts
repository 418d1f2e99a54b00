import { cross, dot, type PlanPoint, subtract, type Vec } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { type Hole, type LaidLine, tapeSigma } from '../plan/index.ts';
import type { Units } from '../units/index.ts';
import { wallBetween } from './ground.ts';

/** What is known when a further stake or nail is to be placed. Plan frame, metres. */
export interface ReferenceAsked {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
  /** Further stakes and nails that have their places already. */
  readonly others: readonly PlanPoint[];
  readonly holes: readonly Hole[];
  readonly instruments: Instruments;
  readonly units: Units;
  /** Lines on the ground that bar stakes and tapes; none when absent. */
  readonly lines?: readonly LaidLine[];
}

/** Corners of the triangle of A, B and a third stake, radians. */
export interface Triangle {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** The least redundancy of three tapes to a hole from A, B and a third place; 0 where the third does not see it. */
export function guardFrom({ a, b, instruments, lines = [] }: ReferenceAsked, at: Vec, hole: Vec): number {
  return wallBetween(lines, at, hole) ? 0 : leastGuard(hole, [a, b, at], instruments);
}

/** The least redundancy of the pulls to a place, 0 to 1: 1 − nᵀN⁻¹n/σ², N the sum of all nnᵀ/σ². */
function leastGuard(place: Vec, from: readonly Vec[], instruments: Instruments): number {
  const rays = from
    .map((stake) => subtract(place, stake))
    .map(({ x, y }) => ({ x, y, away: Math.hypot(x, y) }))
    .filter(({ away }) => away > 0 && away <= instruments.tapeLength.m)
    .map(({ x, y, away }) => {
      const scaled = away * tapeSigma(away, instruments);
      return { x: x / scaled, y: y / scaled };
    });
  const xx = rays.reduce((sum, { x }) => sum + x * x, 0);
  const xy = rays.reduce((sum, { x, y }) => sum + x * y, 0);
  const yy = rays.reduce((sum, { y }) => sum + y * y, 0);
  const determinant = xx * yy - xy * xy;
  if (rays.length < from.length || !(determinant > FLAT * (xx + yy) ** 2)) return 0;
  return Math.min(...rays.map(({ x, y }) => 1 - (yy * x * x - 2 * xy * x * y + xx * y * y) / determinant));
}

/** Pulls in one line guard nothing: sin² of 0.6°. */
const FLAT = 1e-4;

/** The corners of the triangle A, B, C; each 0 where it has none. */
export function triangleOf(a: Vec, b: Vec, c: Vec): Triangle {
  return { a: angleAt(a, b, c), b: angleAt(b, c, a), c: angleAt(c, a, b) };
}

function angleAt(corner: Vec, one: Vec, other: Vec): number {
  const [u, v] = [subtract(one, corner), subtract(other, corner)];
  return Math.abs(Math.atan2(cross(u, v), dot(u, v)));
}
