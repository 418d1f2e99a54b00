import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { measure } from '../../src/measure/index.ts';
import { holesOf } from '../../src/plan/index.ts';
import { holePulls, type PlannedPull, proposeStakes, setPulls } from '../../src/stakeout/index.ts';
import { formatLength, parseLength, stepOf, UNITS } from '../../src/units/index.ts';
import { metres, postTurned, ringPlan, rowsPlan } from '../plan/plans.ts';
import { laidOn } from './laid.ts';

const rings = fc
  .record({ count: fc.integer({ min: 3, max: 24 }), pier: fc.boolean() })
  .map((ring) => ringPlan({ ...ring, size: metres(3.6) }));
const grids = fc
  .record({ columns: fc.integer({ min: 1, max: 5 }), rows: fc.integer({ min: 1, max: 5 }) })
  .map((rows) => rowsPlan(rows));

describe('driving every stake by the readings as they are shown', () => {
  it.each(UNITS)('finds the planned places within the rounding’s own effect, in %s', (units) => {
    fc.assert(
      fc.property(fc.oneof(rings, grids), (plan) => {
        const choice = proposeStakes(holesOf(plan), plan.instruments, { units })!;
        const { holes, baseline } = laidOn(plan, [choice.a.x, choice.a.y], [choice.b.x, choice.b.y]);
        const shown = (m: number) => {
          const read = parseLength(formatLength(m, units), units, 'Shown', { min: 0 });
          if (!read.ok) throw new Error(read.problem.text);
          return read.value;
        };
        const c = baseline;
        holePulls(holes, baseline, plan.instruments).forEach(({ fromA, fromB, crossing }, i) => {
          const [a, b] = [shown(fromA), shown(fromB)];
          const x = (a ** 2 - b ** 2 + c ** 2) / (2 * c);
          const y = Math.sqrt(a ** 2 - x ** 2);
          const { site } = holes[i]!;
          // Each tape is off by half a step at most: together half a step over sin or cos of half the crossing.
          const worst =
            stepOf(units) / 2 / Math.min(Math.sin(crossing.angle / 2), Math.cos(crossing.angle / 2));
          expect(Math.hypot(x - site.x, y - site.y)).toBeLessThan(worst * 1.01);
        });
      }),
      { numRuns: 15 },
    );
  });
});

/** A log in which every planned pull was read exactly as expected. */
function logOf(pulls: readonly PlannedPull[]): Entry[] {
  return pulls.map(({ from, to, expected }, i) => {
    const reading = { m: expected, typed: String(expected), units: 'm' } as const;
    const body: Body = { kind: 'pull', from, to, reading, hold: { how: 'level' } };
    return { id: `pull-${String(i).padStart(5, '0')}`, seq: i + 1, at: '2026-05-02T14:03:07.000Z', body };
  });
}

describe('posts that read just what setPulls expects', () => {
  it.each([
    ['turned to the centre', ringPlan({ count: 7, pier: true }, { each: postTurned('centre', 0.09, 0.14) })],
    ['turned to the grid', ringPlan({ count: 8, pier: true }, { each: postTurned('grid', 0.09, 0.14) })],
    ['in rows', rowsPlan({ columns: 3, rows: 3 }, { each: postTurned('grid') })],
  ])('are measured to stand on their marks: %s', (_, plan) => {
    const { holes, baseline } = laidOn(plan, [-5, -7], [5, -7]);
    const set = new Set(holes.map(({ label }) => label));
    const line: PlannedPull = {
      purpose: 'baseline',
      from: { thing: { kind: 'stake', label: 'A' }, touch: { at: 'nail' } },
      to: { thing: { kind: 'stake', label: 'B' }, touch: { at: 'nail' } },
      expected: baseline,
    };
    const pulls = holes.flatMap((hole) =>
      setPulls({ hole, holes, set, baseline, instruments: plan.instruments }),
    );
    const measured = measure(logOf([line, ...pulls]), holes, baseline, plan.instruments);
    for (const hole of holes) {
      const point = measured.points.find(({ thing }) => thing.kind === 'post' && thing.hole === hole.label);
      // A hundredth of a millimetre: the adjustment stops there.
      expect(Math.hypot(point!.fix!.place.x - hole.site.x, point!.fix!.place.y - hole.site.y)).toBeLessThan(
        1e-5,
      );
    }
    for (const { residual } of measured.pulls) expect(Math.abs(residual)).toBeLessThan(1e-5);
  });
});
