import { dot, subtract, unit } from '../../src/geometry/point.ts';
import type { Fix, Measured } from '../../src/measure/index.ts';
import type { StudyJob } from './job.ts';
import { Share } from './share.ts';

/** Half axes of the ellipse that holds 95 %, in one-sigma half axes: √χ² with 2 degrees of freedom, sigma known. */
export const FACTOR_95 = 2.4477;

/** How many true places of stakes and posts the 95 % ellipses hold. */
export class Places {
  readonly inside = new Share();

  addJob({ yard }: StudyJob, { points }: Measured): void {
    const placed = points.filter(({ thing }) => thing.kind === 'hole-stake' || thing.kind === 'post');
    const held = placed.filter(({ thing, fix }) => {
      if (!fix) throw new Error(`the place of ${JSON.stringify(thing)} was not determined`);
      return holds(fix, yard.placeOf(thing));
    });
    this.inside.addJob(held.length, placed.length);
  }
}

function holds({ place, ellipse }: Fix, truth: { x: number; y: number }): boolean {
  const off = subtract(truth, place);
  const along = dot(off, unit(ellipse.bearing)) / ellipse.semiMajor;
  const across = dot(off, unit(ellipse.bearing + Math.PI / 2)) / ellipse.semiMinor;
  return Math.hypot(along, across) <= FACTOR_95;
}
