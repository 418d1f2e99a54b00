import type { Plan } from '../../src/job/plan-schema.ts';
import { holesOf } from '../../src/plan/index.ts';
import type { StringsAsked } from '../../src/stakeout/string-types.ts';
import type { Units } from '../../src/units/index.ts';
import { pointsPlan } from '../plan/plans.ts';
import { laidOn } from './laid.ts';

/** A plan on stakes before its front or back, where both tapes cross well at every hole, as strings and ties are asked for. */
export function stringsOn(plan: Plan, units: Units = plan.units): { readonly asked: StringsAsked } {
  const places = holesOf(plan).map(({ place }) => place);
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  const [x, y] = [xs, ys].map((all) => (Math.min(...all) + Math.max(...all)) / 2) as [number, number];
  const half = Math.max(...places.map((place) => Math.hypot(place.x - x, place.y - y)));
  const [beside, behind] = [1.2 * half + 1, 1.4 * half + 2];
  const laid = laidOn(plan, [x - beside, y - behind], [x + beside, y - behind]);
  return {
    asked: {
      shape: plan.shape,
      holes: laid.holes,
      a: { x: 0, y: 0 },
      b: { x: laid.baseline, y: 0 },
      instruments: plan.instruments,
      units,
    },
  };
}

/** Nearer than this no two holes are dug: their edges would meet. */
const LEAST_SPACING = 0.9;

/** Scattered holes, the same for the same seed (Park and Miller's generator, from memory). */
export function scatteredPlan(seed: number, count: number): Plan {
  let state = seed * 7919 + 1;
  const next = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const side = 2 * Math.sqrt(count);
  const points: [string, number, number][] = [];
  while (points.length < count) {
    const [x, y] = [next() * side, next() * side];
    if (points.every(([, u, v]) => Math.hypot(u - x, v - y) > LEAST_SPACING))
      points.push([`${points.length + 1}`, x, y]);
  }
  return pointsPlan(points);
}
