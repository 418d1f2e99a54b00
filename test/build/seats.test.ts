import { describe, expect, it } from 'vitest';
import type { MeasuredTop } from '../../src/build/cuts.ts';
import { seatsFor } from '../../src/build/seats.ts';

const top = (hole: string, height: number, target = 0.6): MeasuredTop => ({
  hole,
  key: `top:${hole}`,
  height,
  sigma: 0.002,
  target,
});

/** Tops that share a sigma of 1.8 mm, so that between two of them there are 1.2 mm. */
const together = {
  keys: ['top:1', 'top:2', 'top:3'],
  covariance: [0, 1, 2].map((i) => new Float64Array([0, 1, 2].map((j) => (i === j ? 4e-6 : 3.28e-6)))),
};

describe('seats of beams', () => {
  const tops = [top('1', 0.601), top('2', 0.604), top('3', 0.698, 0.7)];
  const { seats, falls, highest } = seatsFor(tops, together, 0.05, [
    ['1', '2'],
    ['2', '3'],
    ['3', '4'],
  ]);

  it('lie so far below the tops, as sure as these', () => {
    expect(seats.map(({ height, sigma }) => [height, sigma])).toEqual([
      [expect.closeTo(0.551, 12), 0.002],
      [expect.closeTo(0.554, 12), 0.002],
      [expect.closeTo(0.648, 12), 0.002],
    ]);
  });
  it('are packed up to the one that stands furthest above its height in the plan, each from its own', () => {
    expect(highest).toBe('2');
    expect(seats.map(({ pack }) => Math.round(pack.is * 10000) / 10)).toEqual([3, 0, 6]);
    expect(seats[0]!.pack.sigma).toBeCloseTo(0.0012, 12);
    expect(seats[1]!.pack.sigma).toBe(0);
  });
  it('fall from post to post, against the drawing; a beam without both tops is left out', () => {
    expect(falls.map(({ from, to }) => `${from}${to}`)).toEqual(['12', '23']);
    expect(falls[0]!.fall).toEqual({
      is: expect.closeTo(-0.003, 12),
      sigma: expect.closeTo(0.0012, 12),
      drawn: 0,
    });
    expect(falls[1]!.fall.drawn).toBeCloseTo(-0.1, 12);
  });
  it('are none without a top', () => {
    expect(seatsFor([], { keys: [], covariance: [] }, 0, [['1', '2']])).toEqual({
      seats: [],
      falls: [],
      highest: null,
    });
  });
});
