import { add, cross, dot, scale, subtract, type Vec } from './point.ts';
import { type RigidMotion, toSite } from './rigid.ts';

/** A planned point and where it was found. */
export interface Pair {
  readonly planned: Vec;
  readonly found: Vec;
  /** How much it counts, 1/σ² of the found place; 1 when not given. */
  readonly weight?: number;
}

export interface RigidFit {
  /** Carries the planned points onto the found ones as nearly as can be. */
  readonly motion: RigidMotion;
  /** Found less moved plan, in the order of the pairs, metres. */
  readonly residuals: readonly Vec[];
  /** Root of the weighted mean square of the residuals' lengths, metres. */
  readonly rms: number;
}

/** Planned or found points this near to one place, metres, do not tell a turn. */
const ONE_PLACE_M = 1e-9;

/**
 * The turn and shift, never a scale nor a mirror image, that bring planned points nearest to found ones in least squares:
 * with both about their centroids, tan θ = Σ w p×q / Σ w p·q (the plane case of Umeyama, IEEE PAMI 13(4), 1991, with the
 * scale held at 1).
 *
 * @returns null when there are not two places to tell a turn by
 */
export function fitRigid(pairs: readonly Pair[]): RigidFit | null {
  const total = pairs.reduce((sum, { weight = 1 }) => sum + weight, 0);
  if (pairs.length < 2 || !(total > 0)) return null;
  const planned = centroid(pairs, total, (pair) => pair.planned);
  const found = centroid(pairs, total, (pair) => pair.found);
  let along = 0;
  let across = 0;
  for (const { planned: p, found: q, weight = 1 } of pairs) {
    const from = subtract(p, planned);
    const to = subtract(q, found);
    along += weight * dot(from, to);
    across += weight * cross(from, to);
  }
  if (!(Math.hypot(along, across) > total * ONE_PLACE_M * ONE_PLACE_M)) return null;
  const turn = Math.atan2(across, along);
  const turned = toSite({ turn, shift: { x: 0, y: 0 } }, planned);
  const motion = { turn, shift: subtract(found, turned) };
  const residuals = pairs.map((pair) => subtract(pair.found, toSite(motion, pair.planned)));
  const squares = residuals.reduce((sum, v, i) => sum + (pairs[i]!.weight ?? 1) * dot(v, v), 0);
  return { motion, residuals, rms: Math.sqrt(squares / total) };
}

function centroid(pairs: readonly Pair[], total: number, of: (pair: Pair) => Vec): Vec {
  const sum = pairs.reduce((at, pair) => add(at, scale(of(pair), pair.weight ?? 1)), { x: 0, y: 0 });
  return scale(sum, 1 / total);
}
