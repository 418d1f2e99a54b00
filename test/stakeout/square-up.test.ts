import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, distance, length, unit, type Vec } from '../../src/geometry/point.ts';
import { toSite } from '../../src/geometry/rigid.ts';
import { fitRigid } from '../../src/geometry/rigid-fit.ts';
import { rightTriangle } from '../../src/stakeout/right-triangle.ts';
import { diagonalsOf, type SquareUp, squareUp } from '../../src/stakeout/square-up.ts';

const FOOT = 0.3048;
const INCH = FOOT / 12;
const WITHIN = 0.002;

const rectangle = (wide: number, deep: number): Vec[] => [
  { x: 0, y: deep },
  { x: wide, y: deep },
  { x: wide, y: 0 },
  { x: 0, y: 0 },
];
const moved = (now: readonly Vec[], { moves }: SquareUp): Vec[] =>
  now.map((at, i) => add(at, moves.find(({ corner }) => corner === i)?.by ?? { x: 0, y: 0 }));

describe('the shift that squares four stakes', () => {
  it('slides a longer side along itself by (d1² − d2²) / 4a: 5/16″ for 1/2″ between the diagonals of 12 by 16 ft', () => {
    // Derived, not published. A side slid by s makes the diagonals √((a ± s)² + b²).
    const drawn = rectangle(16 * FOOT, 12 * FOOT);
    const s = (5 / 16) * INCH;
    const now = drawn.map((at, i) => (i < 2 ? { x: at.x + s, y: at.y } : at));
    const [first, second] = diagonalsOf(now);
    expect(Math.abs(first - second)).toBeCloseTo(INCH / 2, 5);
    expect(Math.abs(first ** 2 - second ** 2) / (4 * 16 * FOOT)).toBeCloseTo(s, 9);
    const found = squareUp({ now, drawn }, WITHIN);
    expect(found.moves).toHaveLength(2);
    for (const { by } of found.moves) {
      expect(Math.abs(by.x)).toBeCloseTo(s, 5);
      expect(Math.abs(by.y)).toBeLessThan(1e-5);
    }
    const [one, other] = diagonalsOf(moved(now, found));
    expect(one).toBeCloseTo(other, 5);
    // Common practice: a 12 by 16 ft rectangle is square at 20 ft.
    expect(one).toBeCloseTo(20 * FOOT, 5);
  });

  it('moves none of four that are square, wherever they lie', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (wide, deep, turn) => {
          const drawn = rectangle(wide, deep);
          const now = drawn.map((at) => toSite({ turn, shift: { x: 7, y: -3 } }, at));
          expect(squareUp({ now, drawn }, WITHIN)).toEqual({ held: [0, 1, 2, 3], moves: [] });
        },
      ),
    );
  });

  it('moves one stake back where the other three are right', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3 }),
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        (corner, off, way) => {
          const drawn = rectangle(4, 3);
          const by = { x: unit(way).x * off, y: unit(way).y * off };
          const now = drawn.map((at, i) => (i === corner ? add(at, by) : at));
          const { moves } = squareUp({ now, drawn }, WITHIN);
          expect(moves.map((move) => move.corner)).toEqual([corner]);
          expect(distance(moves[0]!.by, { x: -by.x, y: -by.y })).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('makes the drawn rectangle of any four, held ones as near as the tapes tell', () => {
    const off = fc.record({
      x: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
      y: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(off, { minLength: 4, maxLength: 4 }), (offs) => {
        const drawn = rectangle(5, 3.5);
        const now = drawn.map((at, i) => add(at, offs[i]!));
        const found = squareUp({ now, drawn }, WITHIN);
        expect(found.held.length + found.moves.length).toBe(4);
        const then = moved(now, found);
        const fit = fitRigid(drawn.map((planned, i) => ({ planned, found: then[i]! })))!;
        for (const residual of fit.residuals) expect(length(residual)).toBeLessThanOrEqual(2 * WITHIN);
        const [one, other] = diagonalsOf(then);
        expect(Math.abs(one - other)).toBeLessThanOrEqual(4 * WITHIN);
      }),
    );
  });

  it('never makes anything of four stakes at one place', () => {
    const drawn = rectangle(4, 3);
    const now = drawn.map(() => ({ x: 1, y: 1 }));
    const { moves } = squareUp({ now, drawn }, WITHIN);
    for (const { by } of moves) expect(Number.isFinite(length(by))).toBe(true);
  });
});

describe('a right angle by three tapes', () => {
  it('is 3-4-5 as often as fits, and a right angle', () => {
    // Common practice: 12 ft, 16 ft, 20 ft.
    expect(rightTriangle([12 * FOOT, 16 * FOOT], 30, 'ft-in-16')!.across / FOOT).toBeCloseTo(20, 9);
    const { legs, across } = rightTriangle([3.6, 4.8], 30, 'mm')!;
    expect([...legs, across].map((m) => Math.round(m * 1000))).toEqual([3600, 4800, 6000]);
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 25, noNaN: true }),
        fc.double({ min: 0.6, max: 25, noNaN: true }),
        fc.constantFrom('m' as const, 'ft-in-16' as const),
        (first, second, units) => {
          const found = rightTriangle([first, second], 20, units);
          if (!found) return;
          const [p, q] = found.legs;
          expect(Math.hypot(p, q)).toBeCloseTo(found.across, 9);
          expect(p).toBeLessThanOrEqual(first + 1e-6);
          expect(q).toBeLessThanOrEqual(second + 1e-6);
          expect(found.across).toBeLessThanOrEqual(20 + 1e-6);
        },
      ),
    );
  });

  it('is a slim one along a long narrow figure', () => {
    // 5-12-13 spans more of 5 by 13 ft than 3-4-5, which goes but once.
    const { legs, across } = rightTriangle([5 * FOOT, 13 * FOOT], 30, 'ft-in-16')!;
    expect([...legs, across].map((m) => Math.round(m / FOOT))).toEqual([5, 12, 13]);
  });

  it('is none where the sides are too short', () => {
    expect(rightTriangle([0.5, 0.5], 30, 'ft-in-16')).toBeNull();
  });
});
