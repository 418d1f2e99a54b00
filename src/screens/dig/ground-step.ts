import type { HeightPoint } from '../../job/entry-schema.ts';
import type { JobView } from '../../judge/view.ts';
import { heightKey } from '../../measure/index.ts';

/**
 * What the level is to read before a hole is dug: A, B, then the lowest ground at its edge, which digging takes away. Nothing
 * while no height was read in this job: it may do without.
 */
export function groundToRead(view: JobView, hole: string): HeightPoint | null {
  if (view.levelled.size === 0) return null;
  const points: HeightPoint[] = [
    { point: 'stake', label: 'A' },
    { point: 'stake', label: 'B' },
    { point: 'ground', hole },
  ];
  return points.find((on) => !view.heights.has(heightKey(on))) ?? null;
}
