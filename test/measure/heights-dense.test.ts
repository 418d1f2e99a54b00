import { expect, it } from 'vitest';
import type { HeightPoint } from '../../src/job/entry-schema.ts';
import { variancesAgainstMean } from '../../src/measure/height-tops.ts';
import { heights } from '../../src/measure/index.ts';
import { apart, Book, INSTRUMENTS, metres, normal, random } from './build.ts';
import { invert, normalMatrix } from './dense.ts';

const POINTS: readonly HeightPoint[] = [
  { point: 'benchmark' },
  { point: 'top', hole: '1' },
  { point: 'top', hole: '2' },
  { point: 'stake', label: 'A' },
];
const KEYS = ['benchmark', 'top:1', 'top:2', 'stake:A'];
const TRUTH = [0, 0.8, 0.79, -0.35];
const SETUPS = 3;
const ROD = INSTRUMENTS.rodError.m;
const SLOPE = 0.001;
/** Unknowns: the heights but the benchmark’s, the heights of instrument, the slope of the line of sight. */
const UNKNOWNS = POINTS.length - 1 + SETUPS + 1;
const C = UNKNOWNS - 1;

interface Dense {
  readonly rows: number[][];
  readonly readings: number[];
  readonly sigmas: number[];
}

/** A job with a level that looks up, and its equations written out by hand. */
function levelled(seed: number): { readonly book: Book; readonly dense: Dense } {
  const uniform = random(seed);
  const noise = normal(uniform);
  const book = new Book();
  const dense: Dense = { rows: [], readings: [], sigmas: [] };
  const equation = (terms: readonly (readonly [number, number])[], reading: number, sigma: number) => {
    const row = new Array<number>(UNKNOWNS).fill(0);
    for (const [at, factor] of terms) if (at >= 0) row[at] = factor;
    dense.rows.push(row);
    dense.readings.push(reading);
    dense.sigmas.push(sigma);
  };
  const far = 30 * SLOPE + ROD * noise();
  book.write({
    kind: 'two-peg',
    middle: { a: metres(1.3), b: metres(1.5) },
    near: { a: metres(1.4), b: metres(1.6 + far) },
    sights: { a: metres(0), b: metres(30) },
  });
  equation([[C, 1]], far / 30, (2 * ROD) / 30);
  for (let setup = 0; setup < SETUPS; setup++)
    POINTS.forEach((on, i) => {
      const sight = 5 + 20 * uniform();
      const reading = 1.5 + 0.1 * setup - TRUTH[i]! + SLOPE * sight + ROD * noise();
      book.write({ kind: 'rod', setup: String(setup), on, reading: metres(reading), sight: metres(sight) });
      const terms = [
        [POINTS.length - 1 + setup, 1],
        [i - 1, -1],
        [C, sight],
      ] as const;
      equation(terms, reading, ROD);
    });
  const rise = TRUTH[2]! - TRUTH[1]! + ROD * noise();
  book.write({
    kind: 'difference',
    by: 'laser',
    from: POINTS[1]!,
    to: POINTS[2]!,
    height: metres(Math.abs(rise)),
    higher: rise > 0 ? 'to' : 'from',
  });
  equation(
    [
      [1, 1],
      [0, -1],
    ],
    rise,
    Math.SQRT2 * ROD,
  );
  return { book, dense };
}

function solved({ rows, readings, sigmas }: Dense): { readonly x: number[]; readonly q: number[][] } {
  const q = invert(normalMatrix(rows, sigmas));
  const right = q.map((_, j) =>
    rows.reduce((sum, row, k) => sum + (row[j]! * readings[k]!) / sigmas[k]! ** 2, 0),
  );
  return { q, x: q.map((row) => row.reduce((sum, value, j) => sum + value * right[j]!, 0)) };
}

it('heights, sigmas and covariances are those of the normal equations written out and inverted', () => {
  for (let seed = 1; seed <= 50; seed++) {
    const { book, dense } = levelled(seed);
    const { x, q } = solved(dense);
    const { heights: list, levelling, test } = heights(book.entries, INSTRUMENTS);
    expect(test.degreesOfFreedom).toBe(dense.rows.length - UNKNOWNS);
    for (const { key, height, sigma } of list.filter((each) => each.key !== 'benchmark')) {
      const at = KEYS.indexOf(key) - 1;
      expect(apart(height, x[at]!)).toBeLessThan(1e-8);
      expect(apart(sigma, Math.sqrt(q[at]![at]!))).toBeLessThan(1e-8);
    }
    const against = variancesAgainstMean(levelling.tops, ['top:2']).get('top:1')!;
    expect(apart(against, q[0]![0]! + q[1]![1]! - 2 * q[0]![1]!)).toBeLessThan(1e-10);
  }
});
