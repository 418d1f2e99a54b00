import { distance, length } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/index.ts';
import { crossingAt } from './crossing.ts';
import type { HolePulls } from './types.ts';

/** Nearer to the line A–B than this, a place is on it: a quarter of an inch, less than a stake is thick. */
const ON_LINE = 0.006;

/**
 * What to pull for every hole's stake, centre to nail, in the order of the holes. Level lengths, metres.
 *
 * @param baseline A to B as it is, pulled where it was pulled: the site's frame has A at 0, B at (baseline, 0)
 */
export function holePulls(
  holes: readonly Pick<SitedHole, 'label' | 'site'>[],
  baseline: number,
  instruments: Instruments,
): HolePulls[] {
  const a = { x: 0, y: 0 };
  const b = { x: baseline, y: 0 };
  return holes.map(({ label, site }) => {
    const fromA = length(site);
    const fromB = distance(site, b);
    return {
      hole: label,
      fromA,
      fromB,
      side: Math.abs(site.y) < ON_LINE ? 'on-line' : site.y > 0 ? 'left' : 'right',
      station: site.x,
      offset: site.y,
      crossing: crossingAt(site, a, b, instruments),
      withinTape: Math.max(fromA, fromB) <= instruments.tapeLength.m,
    };
  });
}
