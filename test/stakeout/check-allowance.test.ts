import { describe, expect, test } from 'vitest';
import { CRITICAL } from '../../src/measure/index.ts';
import { defaultPlan } from '../../src/plan/index.ts';
import { checkAllowance } from '../../src/stakeout/check-allowance.ts';
import { metres } from '../plan/plans.ts';

/** One millimetre in every pull, however long. */
const instruments = { ...defaultPlan('m').instruments, tapeError: metres(0.001), tapeErrorPerMetre: 0 };
const A = { x: 0, y: 0 };

/** Derived, not published: the inverse of the normal matrix of two distances, by hand. */
describe('what a check pull may be off by', () => {
  test('tapes that cross square: one error of each stake, and the pull’s own', () => {
    // Each stake is square off A and B: half a circle over A–B.
    const b = { x: 10, y: 0 };
    const [p, q] = [
      { x: 5, y: 5 },
      { x: 2, y: 4 },
    ];
    expect(checkAllowance(p, q, { a: A, b, instruments })).toBeCloseTo(CRITICAL * 0.001 * Math.sqrt(3), 12);
  });

  test('along the line that halves flat tapes little, across it much', () => {
    const b = { x: 2, y: 0 };
    // Far off the middle of A–B: the tapes run nearly together, straight away from the line.
    const p = { x: 1, y: 10 };
    const away = checkAllowance(p, { x: 1, y: 20 }, { a: A, b, instruments });
    const across = checkAllowance(p, { x: 11, y: 10 }, { a: A, b, instruments });
    expect(across).toBeGreaterThan(5 * away);
  });

  test('is the same either way round', () => {
    const asked = { a: A, b: { x: 9, y: 0 }, instruments };
    const [p, q] = [
      { x: 1, y: 7 },
      { x: 6, y: 3 },
    ];
    expect(checkAllowance(p, q, asked)).toBeCloseTo(checkAllowance(q, p, asked), 15);
  });

  test('has no bound where a stake lies in line with A and B', () => {
    expect(checkAllowance({ x: 4, y: 0 }, { x: 4, y: 3 }, { a: A, b: { x: 9, y: 0 }, instruments })).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});
