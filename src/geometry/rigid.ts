import type { PlanPoint, SitePoint, Vec } from './point.ts';

/**
 * A rigid motion from the plan frame to the site frame: turn by `turn` radians anticlockwise, then shift by `shift`
 * metres. Never a scale: a scale would hide a bad tape.
 */
export interface RigidMotion {
  readonly turn: number;
  readonly shift: Vec;
}

export function toSite(motion: RigidMotion, p: PlanPoint): SitePoint {
  const c = Math.cos(motion.turn);
  const s = Math.sin(motion.turn);
  return { x: c * p.x - s * p.y + motion.shift.x, y: s * p.x + c * p.y + motion.shift.y };
}

export function toPlan(motion: RigidMotion, p: SitePoint): PlanPoint {
  const c = Math.cos(motion.turn);
  const s = Math.sin(motion.turn);
  const dx = p.x - motion.shift.x;
  const dy = p.y - motion.shift.y;
  return { x: c * dx + s * dy, y: -s * dx + c * dy };
}
