import { describe, expect, it } from 'vitest';
import { rodSlips } from '../../src/measure/index.ts';

const about = (reading: number, expected: number, more = {}) => ({
  reading,
  expected,
  sigma: 0.003,
  units: 'mm' as const,
  sightLine: 1.5,
  inverted: false,
  ...more,
});
const first = (...args: Parameters<typeof about>) => rodSlips(about(...args))[0]?.text ?? null;

describe('rodSlips', () => {
  it('says nothing of a reading that is believable', () => {
    expect(rodSlips(about(0.7, 0.703))).toEqual([]);
  });
  it('a rod that stood on its head reads its length less the reading', () => {
    expect(first(2.304, 0.7, { rodLength: 3.004 })).toBe('The rod stood on its head: is it 700 mm?');
    expect(rodSlips(about(2.304, 0.7, { rodLength: 3.004 }))[0]!.instead).toBeCloseTo(0.7, 9);
  });
  it('is not blamed on a rod whose length nobody gave, or that was held so on purpose', () => {
    expect(first(2.304, 0.7)).not.toMatch(/head/);
    expect(first(2.304, 0.7, { rodLength: 3.004, inverted: true }) ?? '').not.toMatch(/head/);
  });
  it('a height told the wrong way: as far below the benchmark as it should be above', () => {
    expect(first(2.3, 0.7)).toBe(
      'That puts it lower than the benchmark, and a larger reading is a lower point: is it 700 mm?',
    );
    expect(first(0.7, 2.3)).toBe(
      'That puts it higher than the benchmark, and a larger reading is a lower point: is it 2300 mm?',
    );
  });
  it('what happens with any scale: a decimetre, digits swapped', () => {
    expect(first(0.823, 0.723)).toBe('Ten centimetres too much: is it 723 mm?');
    expect(first(0.732, 0.723, { sigma: 0.001 })).toMatch(/^Two digits swapped/);
  });
  it('never proposes a reading below the foot of the rod', () => {
    expect(rodSlips(about(3.5, -0.2, { sightLine: 1.5 })).every(({ instead }) => instead > 0)).toBe(true);
  });
  it('names nothing where nothing fits', () => {
    expect(rodSlips(about(1.1, 0.7471))).toEqual([]);
  });
});
