import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { workOrder } from '../../src/stakeout/index.ts';
import { pointsPlan, ringPlan, rowsPlan } from '../plan/plans.ts';
import { laidOn } from './laid.ts';

const stops = (plan: Plan) =>
  laidOn(plan, [-6, -6], [6, -6]).holes.map(({ label, site }) => ({ label, at: site }));
const walked = (plan: Plan, order: readonly string[]) => {
  const at = new Map(stops(plan).map((stop) => [stop.label, stop.at]));
  return order.slice(1).reduce((sum, label, i) => sum + distance(at.get(order[i]!)!, at.get(label)!), 0);
};

describe('order of work', () => {
  it('goes once round a ring', () => {
    expect(workOrder(stops(ringPlan({ count: 7 }))).join('')).toBe('1234567');
  });

  it('goes to and fro through rows', () => {
    const plan = rowsPlan({ columns: 3, rows: 3 });
    expect(workOrder(stops(plan)).join('')).toBe('123654789');
  });

  it('takes in the pier without walking back for it', () => {
    for (const count of [3, 5, 8, 12]) {
      const plan = ringPlan({ count, pier: true });
      const side = 6 * Math.sin(Math.PI / count);
      const order = workOrder(stops(plan));
      expect(walked(plan, order)).toBeLessThanOrEqual(side * (count - 1) + 3 + 1e-6);
    }
  });

  it('names every hole once, starts at the first, and never walks farther than the plan’s own order', () => {
    const place = fc.record({ x: fc.integer({ min: -30, max: 30 }), y: fc.integer({ min: -30, max: 30 }) });
    const places = fc.uniqueArray(place, {
      minLength: 1,
      maxLength: 25,
      selector: ({ x, y }) => `${x},${y}`,
    });
    fc.assert(
      fc.property(places, (list) => {
        const plan = pointsPlan(list.map(({ x, y }, i) => [String(i + 1), x, y]));
        const own = stops(plan).map(({ label }) => label);
        const order = workOrder(stops(plan));
        expect([...order].sort()).toEqual([...own].sort());
        expect(order[0]).toBe('1');
        expect(walked(plan, order)).toBeLessThanOrEqual(walked(plan, own) + 0.01);
      }),
    );
  });

  it('of nothing is nothing', () => {
    expect(workOrder([])).toEqual([]);
  });
});
