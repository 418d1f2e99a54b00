import { add, bearingOf, length, type PlanPoint, scale, subtract } from '../../geometry/point.ts';
import type { Ellipse } from '../../measure/types.ts';
import type { Crossing } from '../../stakeout/types.ts';

/**
 * The one-sigma ellipse that two equal tapes will give a place. With the angle γ between them its half axes are
 * σ/√(1 ∓ |cos γ|); the long one lies across the tapes where they run nearly together, so square to the bisector of
 * their sharper angle.
 *
 * @returns null where the tapes lie in one line and fix nothing sideways
 */
export function expectedEllipse(
  at: PlanPoint,
  a: PlanPoint,
  b: PlanPoint,
  crossing: Crossing,
): Ellipse | null {
  const { angle, worstAxis } = crossing;
  if (!Number.isFinite(worstAxis)) return null;
  const cosine = Math.cos(angle);
  const toA = unitFrom(at, a);
  const toB = unitFrom(at, b);
  const weak = cosine >= 0 ? subtract(toA, toB) : add(toA, toB);
  const ratio = Math.sqrt((1 - Math.abs(cosine)) / (1 + Math.abs(cosine)));
  return { semiMajor: worstAxis, semiMinor: worstAxis * ratio, bearing: bearingOf(weak) };
}

function unitFrom(at: PlanPoint, to: PlanPoint): PlanPoint {
  const line = subtract(to, at);
  return scale(line, 1 / length(line));
}
