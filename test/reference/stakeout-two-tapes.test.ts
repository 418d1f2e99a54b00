import { describe, expect, it } from 'vitest';
import { defaultPlan, type SitedHole } from '../../src/plan/index.ts';
import { crossingAt, holePulls } from '../../src/stakeout/index.ts';
import { metres } from '../plan/plans.ts';

/** One millimetre in every pull, however long: the tables below are multiples of sigma. */
const instruments = { ...defaultPlan('m').instruments, tapeError: metres(0.001), tapeErrorPerMetre: 0 };
const DEGREE = Math.PI / 180;

/**
 * Error of a place from two tapes against their crossing angle, in multiples of one tape's error: DRMS = √2 / sin γ,
 * worst axis = 1/√(1 − |cos γ|). Derived, not published.
 */
describe('DRMS and worst axis against the crossing angle', () => {
  it.each([
    [90, Math.SQRT2, 1.0],
    [60, 1.633, Math.SQRT2],
    [120, 1.633, Math.SQRT2],
    [45, 2.0, 1.848],
    [30, 2.828, 2.732],
    [150, 2.828, 2.732],
    [20, 4.135, 4.072],
    [15, 5.464, 5.417],
  ])('%i°', (degrees, drms, worst) => {
    const far = { x: 7 * Math.cos(degrees * DEGREE), y: 7 * Math.sin(degrees * DEGREE) };
    const crossing = crossingAt({ x: 0, y: 0 }, { x: 5, y: 0 }, far, instruments);
    expect(crossing.angle / DEGREE).toBeCloseTo(degrees, 9);
    expect(crossing.drms * 1000).toBeCloseTo(drms, 3);
    expect(crossing.worstAxis * 1000).toBeCloseTo(worst, 3);
  });
});

/**
 * Limits of the crossing: 60° to 120° for a good one (thecivilengineer.org, on intersections), 30° to 150° for a usable
 * one (common rule of surveying texts, from memory).
 */
describe('grades of the crossing', () => {
  it.each([
    [61, 'good'],
    [119, 'good'],
    [59, 'fair'],
    [121, 'fair'],
    [31, 'fair'],
    [149, 'fair'],
    [29, 'poor'],
    [151, 'poor'],
  ])('%i° is %s', (degrees, grade) => {
    const b = { x: Math.cos(degrees * DEGREE), y: Math.sin(degrees * DEGREE) };
    expect(crossingAt({ x: 0, y: 0 }, { x: 1, y: 0 }, b, instruments).grade).toBe(grade);
  });
});

const holeAt = (x: number, y: number): SitedHole => ({
  label: '1',
  site: { x, y },
  section: { kind: 'pier', diameter: 0.3 },
  facing: 0,
  top: 0,
  holeDiameter: 0.5,
  neighbours: [],
});

/**
 * J. Squire, UMBC, printed output of circle_circle_c: circles about (−0.1, −0.2) with r = 2.0 and about (2.0, 1.0) with
 * r = 2.1 lie 2.418677 apart and meet 1.124582 along that line and 1.653879 off it.
 */
it('two tapes of 2.0 and 2.1 on a baseline of 2.418677: station 1.124582, offset 1.653879', () => {
  const [pull] = holePulls([holeAt(1.124582, 1.653879)], 2.418677, instruments);
  expect(pull!.fromA).toBeCloseTo(2.0, 5);
  expect(pull!.fromB).toBeCloseTo(2.1, 5);
  expect(pull!.side).toBe('left');
  const [mirrored] = holePulls([holeAt(1.124582, -1.653879)], 2.418677, instruments);
  expect(mirrored).toMatchObject({ fromA: pull!.fromA, fromB: pull!.fromB, side: 'right' });
});

/** 3-4-5: common practice. */
it('a hole square off B by 4 on a baseline of 3 is 5 from A', () => {
  const [pull] = holePulls([holeAt(3, 4)], 3, instruments);
  expect([pull!.fromA, pull!.fromB, pull!.station, pull!.offset]).toEqual([5, 4, 3, 4]);
});
