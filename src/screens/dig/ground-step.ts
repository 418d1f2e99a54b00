import type { HeightPoint } from '../../job/entry-schema.ts';
import type { JobView } from '../../judge/view.ts';
import { heightKey } from '../../measure/index.ts';
import { setupIn } from '../heights/level-setup.ts';
import { sightLine } from '../heights/rod-belief.ts';

/**
 * What the level is to read before a hole is dug: A, B, then the lowest ground at its edge, which digging takes away. Nothing
 * while no height was read in this job: it may do without.
 */
function groundToRead(view: JobView, hole: string): HeightPoint | null {
  if (view.levelled.size === 0) return null;
  const points: HeightPoint[] = [
    { point: 'stake', label: 'A' },
    { point: 'stake', label: 'B' },
    { point: 'ground', hole },
  ];
  return points.find((on) => !view.heights.has(heightKey(on))) ?? null;
}

/** What the button names and the rod is read on. */
export interface GroundSight {
  readonly on: HeightPoint;
  /** The level's set-up. */
  readonly setup: string;
}

/** A set-up that hangs on no benchmark yet is tied to it first: else what it reads has no height. */
export function groundSight(view: JobView, jobId: string, hole: string): GroundSight | null {
  const ground = groundToRead(view, hole);
  if (ground === null) return null;
  const setup = setupIn(view, jobId);
  return { on: sightLine(view, setup) === null ? { point: 'benchmark' } : ground, setup };
}
