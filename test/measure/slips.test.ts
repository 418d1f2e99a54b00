import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isBeyondBelief, type Reading, type SlipCode, slips } from '../../src/measure/index.ts';
import { METRES_PER_FOOT as FOOT, METRES_PER_INCH as INCH } from '../../src/units/index.ts';

const SIGMA = 0.003;
const about = (reading: number, expected: number, more: Partial<Reading> = {}): Reading => ({
  reading,
  expected,
  sigma: SIGMA,
  units: 'ft-in-16',
  ...more,
});
const codes = (one: Reading): SlipCode[] => slips(one).map(({ code }) => code);

describe('a reading that fits', () => {
  it('is believed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3.2, max: 3.2, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (z, expected) => {
          const one = about(expected + z * SIGMA, expected);
          expect(isBeyondBelief(one)).toBe(false);
          expect(slips(one)).toEqual([]);
        },
      ),
    );
  });
  it('is not believed when it is no number', () => {
    expect(isBeyondBelief(about(Number.NaN, 5))).toBe(true);
    expect(slips(about(Number.NaN, 5))).toEqual([]);
  });
});

describe('named slips', () => {
  const expected = 12 * FOOT + 7.5 * INCH;
  const cases: readonly (readonly [string, SlipCode, Reading])[] = [
    ['a foot too much', 'foot', about(expected + FOOT + 0.001, expected)],
    ['a foot too little', 'foot', about(expected - FOOT, expected)],
    ['an inch too much', 'inch', about(expected + INCH, expected)],
    ['ten inches too little', 'ten-marks', about(expected - 10 * INCH, expected)],
    ['a metre too much', 'metre', about(4.825, 3.825, { units: 'm' })],
    ['ten centimetres too little', 'ten-marks', about(3.727, 3.827, { units: 'm' })],
    ['a centimetre, with a fine tape', 'inch', about(3.837, 3.827, { units: 'm', sigma: 0.001 })],
    ['a tenth of a foot', 'ten-marks', about(5.4 * FOOT, 5.3 * FOOT, { units: 'ft' })],
    ['tenths of a foot read as inches', 'tenths-for-inches', about(12 * FOOT + 7 * INCH, 12.7 * FOOT)],
    [
      'inches typed as tenths',
      'inches-for-tenths',
      about(12.7 * FOOT, 12 * FOOT + 7 * INCH, { units: 'ft' }),
    ],
    [
      'eleven inches typed as hundredths',
      'inches-for-tenths',
      about(12.11 * FOOT, 12 * FOOT + 11 * INCH, { units: 'ft' }),
    ],
    ['the hook', 'hook', about(3.6 + 0.09, 3.6, { units: 'm', hook: 0.09 })],
    ['digits swapped', 'swapped-digits', about(3.285, 3.825, { units: 'm', typed: '3.285' })],
    ['digits swapped over the point', 'swapped-digits', about(5.3, 3.5, { units: 'm', typed: '5.3' })],
    ['a 6 for a 9', 'six-nine', about(3.625, 3.925, { units: 'm', typed: '3.625' })],
    ['centre for face', 'centre-for-face', about(4.07, 4, { units: 'm', halfSections: [0.07] })],
    ['face for centre', 'centre-for-face', about(3.93, 4, { units: 'm', halfSections: [0.07] })],
    [
      'along the slope, not level',
      'level-for-slope',
      about(Math.hypot(5, 0.9), 5, { units: 'm', rise: 0.9 }),
    ],
  ];
  for (const [name, code, one] of cases) {
    it(name, () => {
      const found = slips(one);
      expect(found[0]?.code).toBe(code);
      expect(Math.abs(found[0]!.instead - one.expected)).toBeLessThan(3.3 * one.sigma);
      expect(found[0]!.text).toMatch(/[a-z].*: is it .*\?$/i);
    });
  }

  it('no slip is named where none fits', () => {
    expect(codes(about(expected + 0.171, expected))).toEqual([]);
  });

  it('a slip that nobody could have made here is not named', () => {
    expect(codes(about(4.07, 4, { units: 'm' }))).not.toContain('centre-for-face');
    expect(codes(about(3.69, 3.6, { units: 'm' }))).not.toContain('hook');
  });

  it('each slip is named once, and none gives a length of nothing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ft-in-16' as const, 'ft-in-32' as const, 'ft' as const, 'm' as const, 'mm' as const),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        fc.double({ min: 0.0005, max: 0.5, noNaN: true }),
        (units, reading, expected, sigma) => {
          const found = slips(
            about(reading, expected, { units, sigma, halfSections: [0.07], rise: 0.5, hook: 0.1 }),
          );
          expect(new Set(found.map(({ code }) => code)).size).toBe(found.length);
          for (const { instead } of found) {
            expect(instead).toBeGreaterThan(0);
            expect(Math.abs(instead - expected)).toBeLessThan(3.3 * sigma);
          }
        },
      ),
    );
  });
});
