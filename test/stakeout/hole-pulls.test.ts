import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultPlan } from '../../src/plan/index.ts';
import { crossingAt, gradeOf, holePulls } from '../../src/stakeout/index.ts';
import { metres, pointsPlan, ringPlan } from '../plan/plans.ts';
import { laidOn } from './laid.ts';

const { instruments } = defaultPlan('m');
const DEGREE = Math.PI / 180;

describe('pulls for the hole stakes', () => {
  it('are the lengths from A and from B, with side, station and offset', () => {
    // 3-4-5 twice over: A and B six apart, the hole four off the middle.
    const { holes, baseline } = laidOn(pointsPlan([['1', 0, 4]]), [-3, 0], [3, 0]);
    const [pull] = holePulls(holes, baseline, instruments);
    expect(pull).toMatchObject({ hole: '1', side: 'left', withinTape: true });
    expect(pull!.fromA).toBeCloseTo(5, 12);
    expect(pull!.fromB).toBeCloseTo(5, 12);
    expect(pull!.station).toBeCloseTo(3, 12);
    expect(pull!.offset).toBeCloseTo(4, 12);
  });

  it('name the side as walked from A to B, and the line itself', () => {
    const plan = pointsPlan([
      ['l', 0, 4],
      ['r', 0, -4],
      ['o', 1, 0.005],
      ['n', 1, 0.007],
    ]);
    const { holes, baseline } = laidOn(plan, [-3, 0], [3, 0]);
    const sides = holePulls(holes, baseline, instruments).map(({ side }) => side);
    expect(sides).toEqual(['left', 'right', 'on-line', 'left']);
  });

  it('say when the tape does not reach', () => {
    const { holes, baseline } = laidOn(
      pointsPlan([
        ['1', 0, 5],
        ['2', 2, 5],
      ]),
      [-3, 0],
      [3, 0],
    );
    const short = { ...instruments, tapeLength: metres(6) };
    expect(holePulls(holes, baseline, short).map(({ withinTape }) => withinTape)).toEqual([true, false]);
  });

  it('meet again at the planned place, whatever the plan and the stakes', () => {
    const number = fc.integer({ min: -15000, max: 15000 }).map((mm) => mm / 1000);
    const stakes = fc.tuple(number, number, number, number);
    const ring = fc.record({ count: fc.integer({ min: 3, max: 24 }), pier: fc.boolean() });
    fc.assert(
      fc.property(ring, stakes, (shape, [ax, ay, bx, by]) => {
        fc.pre(Math.hypot(ax - bx, ay - by) >= 0.5);
        const { holes, baseline } = laidOn(ringPlan(shape), [ax, ay], [bx, by]);
        holePulls(holes, baseline, instruments).forEach(({ fromA, fromB, side }, i) => {
          // Two circles: along A–B from A, and square off it on the side that is told.
          const along = (fromA ** 2 - fromB ** 2 + baseline ** 2) / (2 * baseline);
          const off = Math.sqrt(Math.max(0, fromA ** 2 - along ** 2)) * (side === 'right' ? -1 : 1);
          expect(along).toBeCloseTo(holes[i]!.site.x, 6);
          if (side !== 'on-line') expect(Math.abs(off - holes[i]!.site.y)).toBeLessThan(1e-6);
        });
      }),
    );
  });

  it('follow a baseline that was pulled longer: only B has moved', () => {
    const { holes, baseline } = laidOn(pointsPlan([['1', 0, 4]]), [-3, 0], [3, 0]);
    const [pull] = holePulls(holes, baseline + 0.1, instruments);
    expect(pull!.fromA).toBeCloseTo(5, 12);
    expect(pull!.fromB).toBeCloseTo(Math.hypot(3.1, 4), 12);
  });
});

describe('how sharply two tapes cross', () => {
  const equal = { ...instruments, tapeError: metres(0.002), tapeErrorPerMetre: 0 };

  it('is worse along one axis than DRMS over root two, and never better than one tape', () => {
    const number = fc.integer({ min: -9000, max: 9000 }).map((mm) => mm / 1000);
    const vec = fc.record({ x: number, y: number });
    fc.assert(
      fc.property(vec, vec, (a, b) => {
        fc.pre(Math.abs(a.x * b.y - a.y * b.x) > 0.01);
        const { drms, worstAxis, angle } = crossingAt({ x: 0, y: 0 }, a, b, instruments);
        expect(worstAxis).toBeLessThanOrEqual(drms * (1 + 1e-12));
        expect(worstAxis).toBeGreaterThanOrEqual((drms / Math.SQRT2) * (1 - 1e-12));
        expect(angle).toBeGreaterThan(0);
        expect(angle).toBeLessThan(Math.PI);
      }),
    );
  });

  it('agrees with the inverse of the normal matrix for unequal tapes', () => {
    // sigma 3 mm along x, 4 mm along y, square: the covariance is diagonal.
    const perMetre = { ...instruments, tapeError: metres(0.001), tapeErrorPerMetre: 0.001 };
    const c = crossingAt({ x: 0, y: 0 }, { x: Math.sqrt(8), y: 0 }, { x: 0, y: Math.sqrt(15) }, perMetre);
    expect(c.worstAxis).toBeCloseTo(0.004, 12);
    expect(c.drms).toBeCloseTo(0.005, 12);
  });

  it.each([
    ['in line, beyond B', { x: -1, y: 0 }, { x: -3, y: 0 }],
    ['in line, between A and B', { x: -1, y: 0 }, { x: 3, y: 0 }],
    ['at A', { x: 0, y: 0 }, { x: 3, y: 0 }],
  ])('fixes nothing %s', (_, a, b) => {
    const { drms, worstAxis, grade } = crossingAt({ x: 0, y: 0 }, a, b, equal);
    expect([drms, worstAxis, grade]).toEqual([Infinity, Infinity, 'poor']);
  });

  it.each([
    [90, 'good'],
    [60, 'good'],
    [120, 'good'],
    [59.9, 'fair'],
    [120.1, 'fair'],
    [30, 'fair'],
    [150, 'fair'],
    [29.9, 'poor'],
    [150.1, 'poor'],
    [0, 'poor'],
    [180, 'poor'],
  ])('at %f degrees is %s', (degrees, grade) => {
    expect(gradeOf(degrees * DEGREE)).toBe(grade);
  });
});
