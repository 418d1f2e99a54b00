import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceAtLeast,
  chanceWithin,
  chanceWithinDisc,
  principalAxes,
  sigmaAlong,
} from '../../src/judge/chance.ts';
import { normalCdf } from '../../src/judge/normal.ts';
import { IN_FROM, OUT_TO, verdictOf, worstOf } from '../../src/judge/verdict.ts';

const metres = (max: number) => fc.double({ min: 0, max, noNaN: true });
const signed = (max: number) => fc.double({ min: -max, max, noNaN: true });
const sigma = fc.double({ min: 0.0002, max: 0.02, noNaN: true });
const bearing = signed(Math.PI);
const spread = fc.record({ s1: sigma, s2: sigma, turn: bearing });

function covariance({ s1, s2, turn }: { s1: number; s2: number; turn: number }) {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return {
    xx: c * c * s1 * s1 + s * s * s2 * s2,
    xy: c * s * (s1 * s1 - s2 * s2),
    yy: s * s * s1 * s1 + c * c * s2 * s2,
  };
}

const RADIUS = 0.012;

describe('chanceWithinDisc', () => {
  it('lies between 0 and 1 and never falls as the tolerance grows', () => {
    fc.assert(
      fc.property(signed(0.05), signed(0.05), spread, metres(0.03), (x, y, s, more) => {
        const c = covariance(s);
        const tight = chanceWithinDisc({ x, y }, c, RADIUS);
        const loose = chanceWithinDisc({ x, y }, c, RADIUS + more);
        expect(tight).toBeGreaterThanOrEqual(0);
        expect(loose).toBeLessThanOrEqual(1);
        expect(loose).toBeGreaterThanOrEqual(tight - 2e-9);
      }),
    );
  });

  it('does not depend on how the axes are turned', () => {
    fc.assert(
      fc.property(metres(0.03), bearing, spread, bearing, (far, at, s, by) => {
        const here = { x: far * Math.cos(at), y: far * Math.sin(at) };
        const there = { x: far * Math.cos(at + by), y: far * Math.sin(at + by) };
        const turned = covariance({ ...s, turn: s.turn + by });
        const apart = chanceWithinDisc(here, covariance(s), RADIUS) - chanceWithinDisc(there, turned, RADIUS);
        expect(Math.abs(apart)).toBeLessThan(1e-9);
      }),
    );
  });

  it('does not depend on the unit of length', () => {
    fc.assert(
      fc.property(signed(0.03), signed(0.03), spread, (x, y, s) => {
        const c = covariance(s);
        const inMillimetres = { xx: c.xx * 1e6, xy: c.xy * 1e6, yy: c.yy * 1e6 };
        const apart =
          chanceWithinDisc({ x, y }, c, RADIUS) -
          chanceWithinDisc({ x: x * 1000, y: y * 1000 }, inMillimetres, RADIUS * 1000);
        expect(Math.abs(apart)).toBeLessThan(1e-9);
      }),
    );
  });

  it('agrees with strips of the disc summed one by one', () => {
    fc.assert(
      fc.property(signed(0.02), signed(0.02), sigma, sigma, (x, y, s1, s2) => {
        fc.pre(Math.min(s1, s2) > 0.001);
        const found = chanceWithinDisc({ x, y }, { xx: s1 * s1, xy: 0, yy: s2 * s2 }, RADIUS);
        expect(Math.abs(found - byStrips(x, y, s1, s2, RADIUS))).toBeLessThan(1e-6);
      }),
      { numRuns: 50 },
    );
  });

  it('is never above the chance for a thing on its mark with the same readings', () => {
    fc.assert(
      fc.property(signed(0.05), signed(0.05), spread, (x, y, s) => {
        const c = covariance(s);
        const best = chanceWithinDisc({ x: 0, y: 0 }, c, RADIUS);
        expect(chanceWithinDisc({ x, y }, c, RADIUS)).toBeLessThanOrEqual(best + 1e-9);
      }),
    );
  });

  const none = { xx: 0, xy: 0, yy: 0 };
  it('takes a place known exactly as simply inside or outside', () => {
    expect(chanceWithinDisc({ x: 0.0118, y: 0 }, none, RADIUS)).toBe(1);
    expect(chanceWithinDisc({ x: 0.0122, y: 0 }, none, RADIUS)).toBe(0);
  });
  it('takes a place known exactly in one direction as the chance along the other', () => {
    const line = covariance({ s1: 0.005, s2: 0, turn: 0.6 });
    const found = chanceWithinDisc({ x: 0, y: 0 }, line, RADIUS);
    expect(Math.abs(found - chanceWithin(0, 0.005, RADIUS))).toBeLessThan(1e-6);
  });
  it('is near nothing where nothing is known', () => {
    expect(chanceWithinDisc({ x: 0, y: 0 }, covariance({ s1: 10, s2: 10, turn: 0 }), RADIUS)).toBeLessThan(
      1e-6,
    );
  });
});

/** A second road to the same number: strips parallel to y, each an exact 1-D normal chance. */
function byStrips(x: number, y: number, s1: number, s2: number, radius: number): number {
  const strips = 2000;
  let sum = 0;
  for (let i = 0; i < strips; i++) {
    // Equal steps of the angle keep the strip ends smooth.
    const angle = (Math.PI * (i + 0.5)) / strips - Math.PI / 2;
    const at = radius * Math.sin(angle);
    const half = radius * Math.cos(angle);
    const density = Math.exp(-(((at - x) / s1) ** 2) / 2) / (s1 * Math.sqrt(2 * Math.PI));
    sum += density * (normalCdf((half - y) / s2) - normalCdf((-half - y) / s2)) * half;
  }
  return (sum * Math.PI) / strips;
}

describe('one-dimensional chances', () => {
  it('two-sided: one half on the limit when the other limit is far', () => {
    expect(chanceWithin(0.01, 0.001, 0.01)).toBeCloseTo(0.5, 12);
    expect(chanceWithin(-0.01, 0.001, 0.01)).toBeCloseTo(0.5, 12);
  });
  it('two-sided: keeps a tiny chance far out instead of losing it to cancellation', () => {
    expect(chanceWithin(0.02, 0.001, 0.01)).toBeGreaterThan(0);
    expect(chanceWithin(0.02, 0.001, 0.01)).toBeLessThan(1e-22);
  });
  it('grows with the tolerance', () => {
    fc.assert(
      fc.property(signed(0.05), sigma, metres(0.03), metres(0.03), (e, s, tolerance, more) => {
        expect(chanceWithin(e, s, tolerance + more)).toBeGreaterThanOrEqual(chanceWithin(e, s, tolerance));
      }),
    );
  });
  it('no doubt at all means simply within or not', () => {
    expect(chanceWithin(0.01, 0, 0.01)).toBe(1);
    expect(chanceWithin(0.011, 0, 0.01)).toBe(0);
    expect(chanceAtLeast(1.2, 0, 1.2)).toBe(1);
    expect(chanceAtLeast(1.19, 0, 1.2)).toBe(0);
  });
});

describe('principalAxes and sigmaAlong', () => {
  it('gives back the axes that made the covariance', () => {
    fc.assert(
      fc.property(spread, (s) => {
        const axes = principalAxes(covariance(s));
        expect(Math.abs(axes.major - Math.max(s.s1, s.s2))).toBeLessThan(1e-9);
        expect(Math.abs(axes.minor - Math.min(s.s1, s.s2))).toBeLessThan(1e-7);
        expect(Math.abs(sigmaAlong(covariance(s), axes.along) - axes.major)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('verdictOf', () => {
  it('parts every chance into in, out and unsure at 0.95 and 0.05', () => {
    expect(verdictOf(IN_FROM)).toBe('in');
    expect(verdictOf(IN_FROM - 1e-12)).toBe('unsure');
    expect(verdictOf(OUT_TO + 1e-12)).toBe('unsure');
    expect(verdictOf(OUT_TO)).toBe('out');
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (p) => {
        const expected = p >= 0.95 ? 'in' : p <= 0.05 ? 'out' : 'unsure';
        expect(verdictOf(p)).toBe(expected);
      }),
    );
  });
  it('does not hold weak readings against a thing: on its mark but known to 100 mm is unsure', () => {
    const weak = { xx: 0.01, xy: 0, yy: 0.01 };
    const best = chanceWithinDisc({ x: 0, y: 0 }, weak, RADIUS);
    expect(best).toBeLessThan(OUT_TO);
    expect(verdictOf(best, best)).toBe('unsure');
    expect(verdictOf(chanceWithinDisc({ x: 1, y: 0 }, weak, RADIUS), best)).toBe('out');
  });
});

describe('worstOf', () => {
  it('lets out win, then unmeasured, then unsure', () => {
    expect(worstOf(['in', 'unmeasured', 'out', 'unsure'])).toBe('out');
    expect(worstOf(['in', 'unsure', 'unmeasured'])).toBe('unmeasured');
    expect(worstOf(['in', 'unsure'])).toBe('unsure');
    expect(worstOf(['in', 'in'])).toBe('in');
  });
});
