import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cross, distance, dot, subtract, type Vec } from '../../src/geometry/point.ts';
import { aloneOrder } from '../../src/stakeout/index.ts';
import { ringPlan, rowsPlan } from '../plan/plans.ts';
import { laidOn } from './laid.ts';

const A = { x: 0, y: 0 };
/** A stake and a hand: nearer than this a tape lies against it. */
const NEAR = 0.15;

/** Whether a stake that stands at `near` lies under a tape from `stake` to `far`. */
function lies(near: Vec, stake: Vec, far: Vec): boolean {
  const run = distance(stake, far);
  const [line, reach] = [subtract(far, stake), subtract(near, stake)];
  const along = dot(line, reach) / run;
  return along > 0 && along < run - NEAR && Math.abs(cross(line, reach)) / run < NEAR;
}

const holesOn = (plan: ReturnType<typeof ringPlan>) => {
  const { holes, baseline } = laidOn(plan, [-7, -8], [7, -8]);
  return { places: holes.map(({ label, site }) => ({ label, at: site })), b: { x: baseline, y: 0 } };
};

describe('the order for one person', () => {
  test('lays no tape against a stake that is driven already, and names every hole once', () => {
    const places = fc.uniqueArray(
      fc.record({ x: fc.integer({ min: -12, max: 24 }), y: fc.integer({ min: 1, max: 20 }) }),
      { minLength: 1, maxLength: 25, selector: ({ x, y }) => `${x},${y}` },
    );
    const b = { x: 12, y: 0 };
    fc.assert(
      fc.property(places, (list) => {
        const holes = list.map((at, i) => ({ label: String(i + 1), at }));
        const at = new Map(holes.map((hole) => [hole.label, hole.at]));
        const order = aloneOrder(holes, A, b);
        expect([...order].sort()).toEqual(holes.map(({ label }) => label).sort());
        order.forEach((label, k) => {
          for (const driven of order.slice(0, k))
            for (const stake of [A, b]) expect(lies(at.get(driven)!, stake, at.get(label)!)).toBe(false);
        });
      }),
    );
  });

  test('a hole behind another from A comes before it', () => {
    const holes = [
      { label: 'near', at: { x: 2, y: 2 } },
      { label: 'far', at: { x: 4, y: 4 } },
    ];
    expect(aloneOrder(holes, A, { x: 12, y: 0 })).toEqual(['far', 'near']);
    expect(aloneOrder([...holes].reverse(), A, { x: 12, y: 0 })).toEqual(['far', 'near']);
  });

  test('holes on the line itself wait for each other, and are still all named', () => {
    const holes = [3, 6, 9].map((x) => ({ label: `at ${x}`, at: { x, y: 0 } }));
    expect([...aloneOrder(holes, A, { x: 12, y: 0 })].sort()).toEqual(['at 3', 'at 6', 'at 9']);
  });

  test.each([
    ['a ring', ringPlan({ count: 8 })],
    ['rows', rowsPlan({ columns: 4, rows: 3 })],
  ])('walks little farther than twice the shortest way round %s', (_, plan) => {
    const { places, b } = holesOn(plan);
    const at = new Map(places.map((hole) => [hole.label, hole.at]));
    const order = aloneOrder(places, A, b);
    const walked = order
      .slice(1)
      .reduce((sum, label, k) => sum + distance(at.get(order[k]!)!, at.get(label)!), 0);
    const nearest = places.map((hole) =>
      Math.min(...places.filter((one) => one !== hole).map((one) => distance(one.at, hole.at))),
    );
    expect(walked).toBeLessThan(2 * nearest.reduce((sum, m) => sum + m, 0));
  });

  test('of nothing is nothing', () => {
    expect(aloneOrder([], A, { x: 12, y: 0 })).toEqual([]);
  });
});
