import { describe, expect, it } from 'vitest';
import { chanceAtLeast, chanceWithin, chanceWithinDisc } from '../../src/judge/chance.ts';
import { erfc, HALF_WIDTH_95, normalCdf, ONE_SIDED_95 } from '../../src/judge/normal.ts';

const round = (sigma: number) => ({ xx: sigma * sigma, xy: 0, yy: sigma * sigma });
const apart = (a: number, b: number) => Math.abs(a - b);

describe('JCGM 106:2012, examples of conformance probability (from memory; the arithmetic agrees)', () => {
  it('Zener diode, clause 7.3: at most −5.40 V, measured −5.47 V, u 0.05 V: 0.92', () => {
    // "At most" is "at least" with both signs turned.
    expect(apart(chanceAtLeast(5.47, 0.05, 5.4), 0.92)).toBeLessThan(0.005);
    expect(apart(chanceAtLeast(5.47, 0.05, 5.4), 0.9192433407662)).toBeLessThan(1e-10);
  });
  it('burst strength: at least 490 kPa, measured 509.7 kPa, u 8.6 kPa: 0.99', () => {
    expect(apart(chanceAtLeast(509.7, 8.6, 490), 0.99)).toBeLessThan(0.005);
  });
});

describe('error ellipse factors (Ghilani, "Adjustment Computations", ch. 19; from memory)', () => {
  const published = [
    [1, 0.3935],
    [1.1774, 0.5],
    [2.4477, 0.95],
    [3.0349, 0.99],
  ] as const;
  for (const [factor, chance] of published) {
    it(`a circle of ${factor} sigma holds ${chance}`, () => {
      expect(apart(chanceWithinDisc({ x: 0, y: 0 }, round(1), factor), chance)).toBeLessThan(5e-5);
    });
  }
});

describe('Rayleigh: 1 − exp(−R²/2σ²), the closed form for a round covariance and no offset', () => {
  for (const ratio of [0.1, 0.5, 1, 2, 4, 6]) {
    it(`R = ${ratio} σ`, () => {
      const sigma = 0.0023;
      const chance = chanceWithinDisc({ x: 0, y: 0 }, round(sigma), ratio * sigma);
      expect(apart(chance, -Math.expm1((-ratio * ratio) / 2))).toBeLessThan(1e-12);
    });
  }
});

describe('offset disc: non-central chi-squared, 2 degrees of freedom (scipy 1.17; derived, not published)', () => {
  const cases = [
    [1, 0.5, 0.3572857697274562],
    [2, 1, 0.73098793996409],
    [3, 3, 0.4325202377091385],
    [2, 3, 0.11327924559760769],
    [5, 4, 0.8125952832812158],
    [6, 6.5, 0.2808248057495277],
  ] as const;
  for (const [radius, offset, chance] of cases) {
    it(`radius ${radius} σ, offset ${offset} σ`, () => {
      const at = { x: offset * Math.cos(0.7), y: offset * Math.sin(0.7) };
      expect(apart(chanceWithinDisc(at, round(1), radius), chance)).toBeLessThan(1e-10);
    });
  }
});

describe('offset ellipse: double integral by mpmath to 14 digits (derived, not published)', () => {
  const cases = [
    [0, 0, 2, 1, 3, 0.83508159974978],
    [1, 2, 2, 1, 3, 0.55814418282142],
    [3, 4, 2, 0.1, 5, 0.49768406639973],
    [0, 5, 2, 0.1, 5, 0.15649527206222],
    [10, 0, 3, 1.5, 12, 0.73709507617566],
    [4, 12, 5, 2, 10, 0.068812678554585],
    [2, 1, 30, 0.5, 5, 0.1287280919489],
  ] as const;
  for (const [x, y, s1, s2, radius, chance] of cases) {
    it(`offset (${x}, ${y}), sigmas ${s1} and ${s2}, radius ${radius}`, () => {
      const found = chanceWithinDisc({ x, y }, { xx: s1 * s1, xy: 0, yy: s2 * s2 }, radius);
      expect(apart(found, chance)).toBeLessThan(1e-9);
    });
  }
});

describe('normal distribution', () => {
  // Abramowitz & Stegun, table 7.1 (erf) and 26.1 (normal), extended with mpmath to 15 digits (derived).
  const erfcs = [
    [0.1, 0.887537083981715],
    [0.5, 0.479500122186953],
    [1, 0.157299207050285],
    [1.9999, 0.00467980209297061],
    [2, 0.00467773498104727],
    [2.0001, 0.00467566869580334],
    [3, 2.20904969985854e-5],
    [5, 1.53745979442803e-12],
    [10, 2.08848758376254e-45],
    [26, 5.66319240885614e-296],
  ] as const;
  for (const [x, value] of erfcs) {
    it(`erfc(${x})`, () => {
      expect(apart(erfc(x) / value, 1)).toBeLessThan(1e-12);
      expect(apart(erfc(-x), 2 - value)).toBeLessThan(1e-14);
    });
  }
  it('has the familiar quantiles: 95 % two-sided 1.960, one-sided 1.645, 99.9 % 3.2905', () => {
    expect(apart(normalCdf(HALF_WIDTH_95), 0.975)).toBeLessThan(1e-15);
    expect(apart(normalCdf(ONE_SIDED_95), 0.95)).toBeLessThan(1e-15);
    expect(apart(chanceWithin(0, 1, 3.2905), 0.999)).toBeLessThan(1e-6);
  });
  it('guard bands: a tail of 0.02275 at two sigmas and 0.05 at 1.645 (ILAC-G8 arithmetic)', () => {
    expect(apart(chanceAtLeast(-2, 1, 0), 0.02275)).toBeLessThan(5e-6);
    expect(apart(chanceAtLeast(1.645, 1, 0), 0.95)).toBeLessThan(5e-5);
  });
});
