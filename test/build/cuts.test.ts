import { describe, expect, it } from 'vitest';
import { cutsFor, type MeasuredTop } from '../../src/build/cuts.ts';
import { cutMarks } from '../../src/judge/cut-marks.ts';
import { situate } from '../../src/judge/situation.ts';
import { viewOf } from '../../src/judge/view.ts';
import { Field } from '../judge/field.ts';

const top = (hole: string, height: number, target = 1): MeasuredTop => ({
  hole,
  key: `top:${hole}`,
  height,
  sigma: 0.003,
  target,
});
/** Heights that share nearly all of their doubt, as those from one set-up do. */
const covariance = (keys: readonly string[], shared = 8e-6, own = 1e-6) => ({
  keys,
  covariance: keys.map((_, i) => Float64Array.from(keys, (__, j) => (i === j ? shared + own : shared))),
});

describe('cut marks', () => {
  const tops = [top('1', 1.05), top('2', 1.02), top('3', 1.11, 1.04)];
  const together = covariance(['top:1', 'top:2', 'top:3']);

  it('to the plan lie below each top by what it stands too high, as sure as the top itself', () => {
    const { cuts, governs, shift } = cutsFor(tops, together, 'plan');
    expect(cuts.map(({ off }) => off.toFixed(6))).toEqual(['0.050000', '0.020000', '0.070000']);
    expect(cuts.map(({ height }) => height)).toEqual([1, 1, 1.04]);
    expect(cuts.every(({ sigma }) => sigma === 0.003)).toBe(true);
    expect(governs).toBe('2');
    expect(shift).toBe(0);
  });

  it('to the shortest leave it whole, and are as sure as two tops against each other', () => {
    const { cuts, shift } = cutsFor(tops, together, 'shortest');
    expect(shift).toBeCloseTo(0.02, 12);
    expect(cuts.map(({ off }) => off.toFixed(6))).toEqual(['0.030000', '0.000000', '0.050000']);
    expect(cuts[1]).toMatchObject({ off: 0, sigma: 0 });
    expect(cuts[0]!.sigma).toBeCloseTo(Math.sqrt(2e-6), 12);
    expect(cuts[2]!.height).toBeCloseTo(1.06, 12);
  });

  it('of a post below its height are negative by how short it is', () => {
    const { cuts, governs } = cutsFor(
      [top('1', 1.05), top('2', 0.98)],
      covariance(['top:1', 'top:2']),
      'plan',
    );
    expect(governs).toBe('2');
    expect(cuts[1]!.off).toBeCloseTo(-0.02, 12);
  });

  it('of nothing measured are none', () => {
    expect(cutsFor([], covariance([]), 'shortest')).toEqual({ cuts: [], governs: null, shift: 0 });
  });

  it('are of posts only, from the rod', () => {
    const book = new Field().site();
    book.benchmark();
    book.top('1', 850);
    book.top('4', 810);
    book.top('P', 400);
    const marks = cutMarks(viewOf(situate(book.log))!, 'shortest');
    expect(marks.governs).toBe('4');
    expect(marks.cuts.map(({ hole, off }) => [hole, Number(off.toFixed(6))])).toEqual([
      ['1', 0.04],
      ['4', 0],
    ]);
    // Two readings of 1 mm each: the set-up falls out.
    expect(marks.cuts[0]!.sigma).toBeCloseTo(0.001 * Math.SQRT2, 6);
  });
});
