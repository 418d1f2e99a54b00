import { describe, expect, it } from 'vitest';
import type { Vec } from '../../src/geometry/point.ts';
import { CheckNetwork } from '../../src/stakeout/check-network.ts';
import { checkSet, type PlannedPull } from '../../src/stakeout/index.ts';
import { rightTriangle } from '../../src/stakeout/right-triangle.ts';
import { diagonalsOf, squareUp } from '../../src/stakeout/square-up.ts';
import { metres, ringPlan } from '../plan/plans.ts';
import { laidOn } from '../stakeout/laid.ts';

const FOOT = 0.3048;
const INCH = FOOT / 12;
const DEGREE = Math.PI / 180;

describe('square by the diagonals', () => {
  /** Sides of 12 and 16 ft that meet at this angle: front left, front right, back right, back left. */
  function leaning(angle: number): Vec[] {
    const up = { x: 12 * FOOT * Math.cos(angle), y: 12 * FOOT * Math.sin(angle) };
    return [up, { x: up.x + 16 * FOOT, y: up.y }, { x: 16 * FOOT, y: 0 }, { x: 0, y: 0 }];
  }
  const drawn = leaning(90 * DEGREE);

  it('12, 16, 20 ft within half an inch (performance standards for carpentry, faq.constructionplace.com) is 0.249° (derived)', () => {
    const [shorter, longer] = diagonalsOf(leaning((90 + 0.249) * DEGREE)).toSorted((p, q) => p - q);
    expect((longer! - 20 * FOOT) / INCH).toBeCloseTo(0.5, 2);
    expect((20 * FOOT - shorter!) / INCH).toBeCloseTo(0.5, 2);
  });

  it('and a 16 ft side slid along itself by 5/8 in squares it: (d1² − d2²) / 4a (derived, not published)', () => {
    const { moves } = squareUp({ now: leaning((90 + 0.249) * DEGREE), drawn }, INCH / 16);
    expect(moves).toHaveLength(2);
    for (const { by } of moves) expect(Math.abs(by.x) / INCH).toBeCloseTo(5 / 8, 2);
  });

  it('equal diagonals alone are no rectangle: sides that differ are found out (common practice)', () => {
    const trapezium = [
      { x: 1 * FOOT, y: 12 * FOOT },
      { x: 15 * FOOT, y: 12 * FOOT },
      { x: 16 * FOOT, y: 0 },
      { x: 0, y: 0 },
    ];
    const [first, second] = diagonalsOf(trapezium);
    expect(first).toBeCloseTo(second, 12);
    expect(squareUp({ now: trapezium, drawn }, INCH / 16).moves).toHaveLength(2);
  });

  it('3-4-5 (Euclid, Elements I.47), and larger: 12 by 16 ft takes it four times', () => {
    const { legs, across } = rightTriangle([12 * FOOT, 16 * FOOT], 100 * FOOT, 'ft-in-16')!;
    expect([...legs, across].map((m) => Math.round(m / FOOT))).toEqual([12, 16, 20]);
  });
});

describe('check pulls round an octagon of R = 1 (from memory; recomputed by hand)', () => {
  const CHORDS: Partial<Record<PlannedPull['purpose'], readonly number[]>> = {
    neighbour: [0.7653668647],
    chord: [Math.SQRT2],
    across: [1.847759065, 2],
  };
  const plan = ringPlan({ count: 8, size: metres(1) });
  const { holes, baseline } = laidOn(plan, [-2, -2], [2, -2]);
  const { guarding, further } = checkSet({
    holes,
    baseline,
    instruments: plan.instruments,
    shiftAllowed: 0.0169,
  });

  it('sides of 0.7654, skip-one chords of 1.4142, across 1.8478 and 2', () => {
    for (const { purpose, expected } of [...guarding, ...further]) {
      const nearest = Math.min(...(CHORDS[purpose] ?? []).map((chord) => Math.abs(chord - expected)));
      expect(nearest, purpose).toBeLessThan(1e-9);
    }
  });
});

describe('a square with both diagonals, six pulls and one to spare (r = c² / Σ c²; derived, not published)', () => {
  // The one equation that the six lengths must satisfy weighs them as bars that pull on one another at rest: at each corner two
  // sides of 1 hold a diagonal of −√2. So a side has c² = 1, a diagonal 2, and Σ c² = 4 · 1 + 2 · 2 = 8.
  it('a side keeps an eighth of a misreading, a diagonal a quarter', () => {
    const instruments = { ...ringPlan().instruments, tapeError: metres(0.002), tapeErrorPerMetre: 0 };
    const places = [
      { x: 0, y: 2 },
      { x: 2, y: 2 },
    ];
    const network = new CheckNetwork(places, 2, instruments);
    network.put([0, 1]);
    expect(network.caughtAt(0)).toBeCloseTo((4.132 * 0.002) / Math.sqrt(1 / 8), 6);
    expect(network.caughtAt(1)).toBeCloseTo(network.caughtAt(0), 9);
  });
});
