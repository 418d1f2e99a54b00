import type { Vec } from '../../src/geometry/point.ts';
import type { Thing } from '../../src/job/entry-schema.ts';
import { currentPlan, ofKind, standing } from '../../src/job/log.ts';
import { type JobView, viewOf } from '../../src/judge/view.ts';
import { heights } from '../../src/measure/index.ts';
import type { Fix, Measured, MeasuredHeight, MeasuredPoint } from '../../src/measure/types.ts';
import { holesOf } from '../../src/plan/holes.ts';
import { layPlan } from '../../src/plan/lay.ts';
import type { Field } from './field.ts';

/** A place known equally well both ways. Metres. */
export function fixAt(place: Vec, sigma = 0.002, unseenShift = 0.008): Fix {
  const variance = sigma * sigma;
  return {
    place,
    covariance: { xx: variance, xy: 0, yy: variance },
    ellipse: { semiMajor: sigma, semiMinor: sigma, bearing: 0 },
    unseenShift,
  };
}

/** A point of a current stand, fixed unless `fix` is null. */
export function pointAt(thing: Thing, fix: Fix | null, more: Partial<MeasuredPoint> = {}): MeasuredPoint {
  const lack = fix ? null : { reason: 'no-pulls' as const, pullFrom: [] };
  return { thing, stand: 1, current: true, fix, lack, lean: null, ...more };
}

/** A lean towards the site's +x and +y, metres per metre, known to a thousandth. */
export const leanOf = (x: number, y: number, sigma = 0.0007) => ({
  perMetre: { x, y },
  covariance: { xx: sigma * sigma, xy: 0, yy: sigma * sigma },
});

type FakeHeight = Pick<MeasuredHeight, 'key' | 'height' | 'sigma'>;
export type FakeMeasured = Partial<Omit<Measured, 'heights'>> & { readonly heights?: readonly FakeHeight[] };

/**
 * A view of a field book with results of the measurement put in by hand. Heights put in stand in the place of what the
 * rod readings of the book give, and are guarded as those are.
 */
export function fakeView(field: Field, { heights: put = [], ...measured }: FakeMeasured = {}): JobView {
  const entries = standing(field.log);
  const plan = currentPlan(entries)!;
  const levels = heights(entries, plan.instruments);
  const holes = holesOf(plan);
  const site = ofKind(entries, 'site').at(-1)?.body ?? null;
  const laid = site ? layPlan(site, holes) : null;
  if (laid && !laid.ok) throw new Error(laid.problem.text);
  const none = { chiSquare: 0, degreesOfFreedom: 0, chance: 1 };
  const view = viewOf({
    entries,
    plan,
    holes,
    site,
    laid: laid?.value ?? null,
    inHand: null,
    measuredWithout: [],
    measured: {
      points: [],
      pulls: [],
      offsets: [],
      suspicions: [],
      globalTest: none,
      baseline: null,
      frameBaseline: null,
      designedBaseline: null,
      heights: levels.heights.flatMap((found) => {
        const instead = put.find(({ key }) => key === found.key);
        return instead ? [{ ...found, ...instead }] : [];
      }),
      heightsTest: none,
      levelling: levels.levelling,
      moves: null,
      unused: [],
      settled: true,
      ...measured,
    },
    problems: [],
  });
  if (!view) throw new Error('no plan');
  return view;
}
