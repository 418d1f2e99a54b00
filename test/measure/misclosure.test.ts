import { describe, expect, it } from 'vitest';
import { heights } from '../../src/measure/index.ts';
import { apart, Book, INSTRUMENTS, metres } from './build.ts';

const benchmark = { point: 'benchmark' } as const;
const turning = (label: string) => ({ point: 'turning-point', label }) as const;
const top = (hole: string) => ({ point: 'top', hole }) as const;
const ROD = INSTRUMENTS.rodError.m;

const loopsOf = (book: Book) => heights(book.entries, INSTRUMENTS).levelling.loops;

/** Out over turning points and back, one set-up to a leg; the last reading on the benchmark is wrong by `slip`. */
function round(setups: number, slip = 0): Book {
  const book = new Book();
  for (let i = 0; i < setups; i++) {
    const from = i === 0 ? benchmark : turning(String(i));
    const to = i === setups - 1 ? benchmark : turning(String(i + 1));
    const height = (k: number) => (k === 0 || k === setups ? 0 : 0.3 * k);
    book.rod(String(i + 1), from, 1.5 + 0.1 * i - height(i));
    book.rod(String(i + 1), to, 1.5 + 0.1 * i - height(i + 1) + (i === setups - 1 ? slip : 0));
  }
  return book;
}

describe('levelLoops', () => {
  it.each([2, 3, 4, 9])('a round of %i set-ups is held to m √n (form: FGCS 1984, from memory)', (setups) => {
    const [loop, ...others] = loopsOf(round(setups, 0.011));
    expect(others).toEqual([]);
    expect(loop!.stations).toBe(setups);
    // Backsight less foresight sums to the fall that was misread; the way round is of no account.
    expect(apart(Math.abs(loop!.misclosure), 0.011)).toBeLessThan(1e-9);
    const perSetup = 3.2905 * ROD * Math.SQRT2;
    expect(apart(loop!.allowance, perSetup * Math.sqrt(setups))).toBeLessThan(1e-9);
    expect(loop!.entries).toHaveLength(2 * setups);
    expect(loop!.points[0]).toBe('benchmark');
    expect(loop!.points.at(-1)).toBe('benchmark');
    expect(loop!.points).toHaveLength(setups + 1);
  });

  it('is the backsights less the foresights, as they were walked', () => {
    const [loop] = loopsOf(round(3, 0.02));
    expect(loop!.points).toEqual(['benchmark', 'turning-point:1', 'turning-point:2', 'benchmark']);
    expect(apart(loop!.misclosure, -0.02)).toBeLessThan(1e-9);
  });

  it('is there for a point read from two set-ups that both see the benchmark', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    book.rod('1', top('1'), 0.7);
    book.rod('2', benchmark, 1.6);
    book.rod('2', top('1'), 0.805);
    const [loop] = loopsOf(book);
    expect(loop!.points).toEqual(['benchmark', 'top:1', 'benchmark']);
    expect(apart(Math.abs(loop!.misclosure), 0.005)).toBeLessThan(1e-9);
  });

  it('repeats from one set-up are no loop; they make its readings surer', () => {
    const book = new Book();
    for (let i = 0; i < 2; i++) {
      book.rod('1', benchmark, 1.5);
      book.rod('1', top('1'), 0.7);
    }
    expect(loopsOf(book)).toEqual([]);
    book.rod('2', benchmark, 1.6);
    book.rod('2', top('1'), 0.8);
    const [loop] = loopsOf(book);
    expect(apart(loop!.allowance, 3.2905 * ROD * Math.sqrt(2 + 0.5 + 0.5))).toBeLessThan(1e-9);
  });

  it('closes over a hose too', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    book.rod('1', top('1'), 0.7);
    book.write({
      kind: 'difference',
      by: 'water-level',
      from: top('1'),
      to: benchmark,
      height: metres(0.81),
      higher: 'from',
    });
    const [loop] = loopsOf(book);
    expect(loop!.stations).toBe(2);
    expect(apart(Math.abs(loop!.misclosure), 0.01)).toBeLessThan(1e-9);
    expect(apart(loop!.allowance, 3.2905 * ROD * 2)).toBeLessThan(1e-9);
  });

  it('loops of nothing: an empty log, one reading, a line that never comes back', () => {
    const book = new Book();
    expect(loopsOf(book)).toEqual([]);
    book.rod('1', benchmark, 1.5);
    expect(loopsOf(book)).toEqual([]);
    book.rod('1', turning('1'), 1.2);
    book.rod('2', turning('1'), 1.4);
    book.rod('2', top('1'), 0.4);
    expect(loopsOf(book)).toEqual([]);
  });
});
