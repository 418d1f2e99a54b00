import { length, type PlanPoint, subtract } from '../../geometry/point.ts';
import type { Instruments } from '../../job/plan-schema.ts';
import { ellipseOf } from '../../measure/ellipse.ts';
import type { Ellipse } from '../../measure/types.ts';
import { tapeSigma } from '../../plan/index.ts';

/** Tapes that make less of an angle lie in one line: 10 nanoradians are rounding, not geometry. */
const FLAT = 1e-8;

/**
 * The one-sigma ellipse that two tapes will give a place, each with the error of its own length: of the inverse of
 * Σ nnᵀ/σ², n along each tape. For equal tapes that cross at γ its half axes are σ/√(1 ∓ |cos γ|).
 *
 * @returns null where the tapes lie in one line and fix nothing sideways, or a stake stands there
 */
export function expectedEllipse(
  at: PlanPoint,
  a: PlanPoint,
  b: PlanPoint,
  instruments: Instruments,
): Ellipse | null {
  const [u, v] = [subtract(a, at), subtract(b, at)].map((line) => {
    const away = length(line);
    const scaled = away * tapeSigma(away, instruments);
    return { x: line.x / scaled, y: line.y / scaled };
  }) as [PlanPoint, PlanPoint];
  const [xx, xy, yy] = [u.x * u.x + v.x * v.x, u.x * u.y + v.x * v.y, u.y * u.y + v.y * v.y];
  // The determinant of a sum of two such products is the square of their cross product: no difference of near equals.
  const determinant = (u.x * v.y - u.y * v.x) ** 2;
  if (!(determinant > (FLAT * length(u) * length(v)) ** 2)) return null;
  return ellipseOf({ xx: yy / determinant, xy: -xy / determinant, yy: xx / determinant });
}
