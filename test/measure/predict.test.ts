import { describe, expect, it } from 'vitest';
import type { Hold } from '../../src/job/entry-schema.ts';
import { DRIVEN_WITHIN_M, measure, predict, tapeSigma } from '../../src/measure/index.ts';
import { A, apart, B, Book, end, face, hole, holeStake, INSTRUMENTS, metres, nail, post } from './build.ts';

const LEVEL: Hold = { how: 'level' };
const plan = [hole('1', 4, 3), hole('2', 2, 4)];

function known() {
  const book = new Book();
  book.pull(A, B, 8);
  book.pull(A, holeStake('1'), 5);
  book.pull(B, holeStake('1'), 5);
  book.pull(A, post('1'), Math.hypot(4.01, 3));
  book.pull(B, post('1'), Math.hypot(3.99, 3));
  book.plumb('1', 'right', 0.01);
  book.plumb('1', 'front', 0);
  return book;
}
const measured = measure(known().entries, plan, 8, INSTRUMENTS);

describe('predict', () => {
  it('gives a measured pull back, no better known than the tape', () => {
    const { reading, sigma } = predict(end(A), end(holeStake('1')), LEVEL, measured, plan)!;
    expect(apart(reading, 5)).toBeLessThan(1e-9);
    expect(apart(sigma, tapeSigma(5, INSTRUMENTS))).toBeLessThan(1e-9);
  });

  it('adds the tape’s own error when told of it', () => {
    const args = [end(A), end(holeStake('1')), LEVEL, measured, plan] as const;
    const expected = Math.hypot(predict(...args)!.sigma, tapeSigma(5, INSTRUMENTS));
    expect(apart(predict(...args, INSTRUMENTS)!.sigma, expected)).toBeLessThan(1e-9);
  });

  it('knows faces, heights on a leaning post, and slopes', () => {
    const faced = predict(end(A), end(post('1'), face('back')), LEVEL, measured, plan)!;
    expect(apart(faced.reading, Math.hypot(4.01, 2.93))).toBeLessThan(1e-9);
    const high = predict(end(A), end(post('1'), undefined, 2), LEVEL, measured, plan)!;
    expect(apart(high.reading, Math.hypot(4.03, 3))).toBeLessThan(1e-9);
    expect(high.sigma).toBeGreaterThan(predict(end(A), end(post('1')), LEVEL, measured, plan)!.sigma);
    const sloped = predict(end(A), end(holeStake('1')), { how: 'slope', rise: metres(1) }, measured, plan)!;
    expect(apart(sloped.reading, Math.hypot(5, 1))).toBeLessThan(1e-9);
    const doubtful = predict(end(A), end(holeStake('1')), { how: 'slope' }, measured, plan)!;
    expect(doubtful.sigma).toBeGreaterThan(0.04);
  });

  it('falls back on the plan for a stake not yet measured, and says how little that is worth', () => {
    const { reading, sigma } = predict(end(A), end(holeStake('2')), LEVEL, measured, plan)!;
    expect(apart(reading, Math.hypot(2, 4))).toBeLessThan(1e-9);
    expect(apart(sigma, DRIVEN_WITHIN_M)).toBeLessThan(1e-9);
    const first = predict(end(A), end(B), LEVEL, measure([], plan, 8, INSTRUMENTS), plan)!;
    expect(first).toEqual({ reading: 8, sigma: DRIVEN_WITHIN_M });
  });

  it('predicts nothing of what it knows nothing about', () => {
    expect(predict(end(A), end(post('2')), LEVEL, measured, plan)).toBeNull();
    expect(predict(end(A), end(nail('N1')), LEVEL, measured, plan)).toBeNull();
    expect(predict(end(A), end(holeStake('99')), LEVEL, measured, plan)).toBeNull();
    expect(predict(end(A), end(A), LEVEL, measured, plan)).toBeNull();
    expect(predict(end(A), end(holeStake('1'), face('front')), LEVEL, measured, plan)).toBeNull();
    expect(predict(end(A), end(B), LEVEL, measure([], plan, null, INSTRUMENTS), plan)).toBeNull();
  });
});
