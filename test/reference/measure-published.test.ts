import { describe, expect, it } from 'vitest';
import { circlesMeet } from '../../src/geometry/circles.ts';
import { chiSquareChance } from '../../src/measure/chi-square.ts';
import { ellipseOf } from '../../src/measure/ellipse.ts';
import { CRITICAL, heights, measure, NONCENTRALITY } from '../../src/measure/index.ts';
import { A, apart, B, Book, hole, holeStake, INSTRUMENTS, metres } from '../measure/build.ts';

describe('two circles (J. Squire, UMBC, circle_circle_c.out)', () => {
  const meeting = circlesMeet({ x: -0.1, y: -0.2 }, 2.0, { x: 2.0, y: 1.0 }, 2.1)!;
  it('meet at (1.696964, −1.078021) and (0.055856, 1.793918)', () => {
    expect(apart(meeting.right.x, 1.696964)).toBeLessThan(5e-7);
    expect(apart(meeting.right.y, -1.078021)).toBeLessThan(5e-7);
    expect(apart(meeting.left.x, 0.055856)).toBeLessThan(5e-7);
    expect(apart(meeting.left.y, 1.793918)).toBeLessThan(5e-7);
  });
});

describe('two circles with whole numbers (derived, not published)', () => {
  it('(5,5) r 5 and (0,0) r 5 meet at (5,0) and (0,5)', () => {
    const { left, right } = circlesMeet({ x: 0, y: 0 }, 5, { x: 5, y: 5 }, 5)!;
    expect([left.x, left.y, right.x, right.y].map((n) => Math.round(n * 1e12) / 1e12)).toEqual([0, 5, 5, 0]);
  });
});

describe('the worst axis of two equal tapes: σ/√(1−|cos γ|) (derived, not published)', () => {
  // [crossing angle in degrees, DRMS/σ, semi-major/σ]
  const rows = [
    [90, Math.SQRT2, 1.0],
    [60, 1.633, Math.SQRT2],
    [120, 1.633, Math.SQRT2],
    [45, 2.0, 1.848],
    [30, 2.828, 2.732],
    [150, 2.828, 2.732],
    [20, 4.135, 4.072],
    [15, 5.464, 5.417],
  ] as const;
  // A tape that errs by 2 mm whatever its length, between stakes that are known far better.
  const instruments = { ...INSTRUMENTS, tapeErrorPerMetre: 0 };
  for (const [degrees, drms, semiMajor] of rows) {
    it(`${degrees}°`, () => {
      const half = (degrees * Math.PI) / 360;
      const reach = 6;
      const site = { x: reach * Math.sin(half), y: reach * Math.cos(half) };
      const book = new Book();
      // A hundred thousand pulls of A–B would be as good; here B is tied by many.
      for (let i = 0; i < 4000; i++) book.pull(A, B, 2 * site.x);
      book.pull(A, holeStake('1'), reach);
      book.pull(B, holeStake('1'), reach);
      const { points } = measure(book.entries, [hole('1', site.x, site.y)], 2 * site.x, instruments);
      const { ellipse } = points.find(({ thing }) => thing.kind === 'hole-stake')!.fix!;
      const sigma = instruments.tapeError.m;
      // B's own error adds its share, a hundredth of a percent in variance for a right angle and up to 0.2 % here.
      expect(apart(ellipse.semiMajor / sigma, semiMajor)).toBeLessThan(0.005 * semiMajor);
      expect(apart(Math.hypot(ellipse.semiMajor, ellipse.semiMinor) / sigma, drms)).toBeLessThan(
        0.005 * drms,
      );
    });
  }
});

describe('error ellipse (Ghilani, "Adjustment Computations", ch. 19; formulas from memory, values derived)', () => {
  it('eigenvalues and bearing', () => {
    // Axes 3 and 1 mm, the long one 30° anticlockwise from +x.
    const c = Math.cos(Math.PI / 6);
    const s = Math.sin(Math.PI / 6);
    const covariance = { xx: 9 * c * c + s * s, xy: 8 * c * s, yy: 9 * s * s + c * c };
    const { semiMajor, semiMinor, bearing } = ellipseOf(covariance);
    expect(apart(semiMajor, 3)).toBeLessThan(1e-12);
    expect(apart(semiMinor, 1)).toBeLessThan(1e-12);
    expect(apart(bearing, Math.PI / 6)).toBeLessThan(1e-12);
  });
  it('the tangent formula gives the same angle, counted clockwise from +y', () => {
    const { xx, xy, yy } = { xx: 4, xy: 1.5, yy: 2 };
    const t = Math.atan2(2 * xy, yy - xx) / 2;
    expect(apart(Math.PI / 2 - t, ellipseOf({ xx, xy, yy }).bearing)).toBeLessThan(1e-12);
  });
  it('a degenerate covariance', () => {
    expect(ellipseOf({ xx: 0, xy: 0, yy: 0 })).toEqual({ semiMajor: 0, semiMinor: 0, bearing: 0 });
    expect(ellipseOf({ xx: 4, xy: 0, yy: 0 })).toEqual({ semiMajor: 2, semiMinor: 0, bearing: 0 });
  });
});

describe('chi-square, upper tail (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4; from memory)', () => {
  const table = [
    [1, 0.1, 2.706],
    [1, 0.05, 3.841],
    [1, 0.001, 10.828],
    [2, 0.05, 5.991],
    [5, 0.05, 11.07],
    [10, 0.05, 18.307],
    [10, 0.01, 23.209],
    [30, 0.05, 43.773],
    [50, 0.001, 86.661],
    [100, 0.05, 124.342],
    [100, 0.95, 77.929],
  ] as const;
  for (const [degreesOfFreedom, chance, value] of table) {
    it(`${value} on ${degreesOfFreedom}: ${chance}`, () => {
      // The table's last digit is worth up to 0.0003 of the chance, relative.
      expect(apart(chiSquareChance(value, degreesOfFreedom), chance)).toBeLessThan(5e-4 * chance);
    });
  }
  it('closed forms: 2 degrees of freedom is exp(−x/2), 4 is (1 + x/2) exp(−x/2)', () => {
    for (const x of [0.01, 1, 4, 30, 200]) {
      expect(apart(chiSquareChance(x, 2) / Math.exp(-x / 2), 1)).toBeLessThan(1e-11);
      expect(apart(chiSquareChance(x, 4) / ((1 + x / 2) * Math.exp(-x / 2)), 1)).toBeLessThan(1e-11);
    }
  });
  it('the ends', () => {
    expect(chiSquareChance(3, 0)).toBe(1);
    expect(chiSquareChance(0, 3)).toBe(1);
    expect(chiSquareChance(Number.POSITIVE_INFINITY, 3)).toBe(0);
    expect(chiSquareChance(5000, 5000)).toBeGreaterThan(0.49);
    expect(chiSquareChance(5000, 5000)).toBeLessThan(0.5);
  });
});

describe('Baarda 1968: α₀ = 0.001, power 80 % (from memory, values derived)', () => {
  it('3.2905 and 4.132, and 17.07 squared', () => {
    expect(CRITICAL).toBe(3.2905);
    expect(NONCENTRALITY).toBe(4.132);
    expect(apart(NONCENTRALITY ** 2, 17.07)).toBeLessThan(0.01);
  });
});

describe('differential levelling', () => {
  it('BM Rock: 820.00, backsight 8.42, foresight 1.20: 827.22 ft (Ghilani & Wolf, "Elementary Surveying", second-hand)', () => {
    const book = new Book();
    const feet = 0.3048;
    book.rod('1', { point: 'benchmark' }, 8.42 * feet);
    book.rod('1', { point: 'turning-point', label: 'X' }, 1.2 * feet);
    const found = heights(book.entries, INSTRUMENTS).heights.find(({ key }) => key === 'turning-point:X')!;
    expect(apart(820 + found.height / feet, 827.22)).toBeLessThan(1e-9);
  });

  it('ACET108 example 2: A 50.165, B 49.530, C 47.545, D 48.910, E 48.640 (readings published, heights derived)', () => {
    const book = new Book();
    const ground = (name: string) => ({ point: 'ground', hole: name }) as const;
    const turning = (name: string) => ({ point: 'turning-point', label: name }) as const;
    book.rod('1', { point: 'benchmark' }, 1.4);
    book.rod('1', ground('A'), 1.235);
    book.rod('1', turning('B'), 1.87);
    book.rod('2', turning('B'), 1.355);
    book.rod('2', ground('C'), 3.34);
    book.rod('2', turning('D'), 1.975);
    book.rod('3', turning('D'), 0.585);
    book.rod('3', ground('E'), 0.855);
    const found = new Map(
      heights(book.entries, { ...INSTRUMENTS, rodError: metres(0.001) }).heights.map((one) => [one.key, one]),
    );
    for (const [key, height] of [
      ['ground:A', 50.165],
      ['turning-point:B', 49.53],
      ['ground:C', 47.545],
      ['turning-point:D', 48.91],
      ['ground:E', 48.64],
    ] as const) {
      expect(apart(50 + found.get(key)!.height, height)).toBeLessThan(1e-9);
    }
    // Two readings to each set-up: √2, √4 and √6 rods' worth.
    expect(apart(found.get('turning-point:B')!.sigma, 0.001 * Math.sqrt(2))).toBeLessThan(1e-9);
    expect(apart(found.get('ground:E')!.sigma, 0.001 * Math.sqrt(6))).toBeLessThan(1e-9);
  });
});
