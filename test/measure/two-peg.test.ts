import { describe, expect, it } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import { collimationOf, heights } from '../../src/measure/index.ts';
import { apart, Book, INSTRUMENTS, metres } from './build.ts';

type TwoPeg = Extract<Body, { kind: 'two-peg' }>;

/** A test of a level that looks up by `slope`, pegs 30 m apart, peg b `rise` metres below peg a. */
function twoPeg(slope: number, rise = 0.2): TwoPeg {
  const sights = { a: 2, b: 32 };
  const near = { a: 1.4 + slope * sights.a, b: 1.4 + rise + slope * sights.b };
  const middle = { a: 1.3 + slope * 15, b: 1.3 + rise + slope * 15 };
  const pair = ({ a, b }: { a: number; b: number }) => ({ a: metres(a), b: metres(b) });
  return { kind: 'two-peg', middle: pair(middle), near: pair(near), sights: pair(sights) };
}

const read = (body: TwoPeg) => collimationOf({ id: 'test', body }, INSTRUMENTS);
const top = (hole: string) => ({ point: 'top', hole }) as const;
const benchmark = { point: 'benchmark' } as const;

describe('collimationOf', () => {
  it('gives the slope back, with the sigma of four readings over the unequal part of the sights', () => {
    const found = read(twoPeg(0.0008))!;
    expect(apart(found.slope, 0.0008)).toBeLessThan(1e-9);
    expect(apart(found.sigma, (2 * 0.002) / 30)).toBeLessThan(1e-12);
    expect(found.says).toBe('off');
  });

  it('takes a level for true that is not seen to be otherwise', () => {
    expect(read(twoPeg(0.0002))!.says).toBe('true');
    expect(read(twoPeg(0))!.says).toBe('true');
  });

  it('does not believe a test by which no level could be used', () => {
    expect(read(twoPeg(0.03))!.says).toBe('unbelievable');
  });

  it.each([
    ['from the middle both times', { a: 15, b: 15 }],
    ['from nowhere', { a: 0, b: 0 }],
  ])('tells nothing %s', (_, sights) => {
    const body = { ...twoPeg(0.001), sights: { a: metres(sights.a), b: metres(sights.b) } };
    expect(read(body)).toBeNull();
  });
});

describe('readings after a test of the level', () => {
  const SLOPE = 0.001;
  const rod = (book: Book, on: Extract<Body, { kind: 'rod' }>['on'], reading: number, sight?: number) =>
    book.write({
      kind: 'rod',
      setup: '1',
      on,
      reading: metres(reading),
      ...(sight === undefined ? {} : { sight: metres(sight) }),
    });
  /** The top stands 0.8 m above the benchmark; the line of sight at 1.5 m rises. */
  function levelled(test: TwoPeg | null, sights: readonly [number?, number?]) {
    const book = new Book();
    if (test) book.write(test);
    rod(book, benchmark, 1.5 + SLOPE * 4, sights[0]);
    rod(book, top('1'), 0.7 + SLOPE * 24, sights[1]);
    return heights(book.entries, INSTRUMENTS).heights.find(({ key }) => key === 'top:1')!;
  }

  it('are put right where both sights are known, and carry the doubt of the test', () => {
    const found = levelled(twoPeg(SLOPE), [4, 24]);
    expect(apart(found.height, 0.8)).toBeLessThan(1e-6);
    const doubt = 20 * ((2 * 0.002) / 30);
    expect(apart(found.sigma, Math.hypot(0.002 * Math.SQRT2, doubt))).toBeLessThan(1e-6);
  });

  it('are doubted by ten metres of slope each where a sight is not known', () => {
    const found = levelled(twoPeg(SLOPE), []);
    expect(apart(found.height, 0.78)).toBeLessThan(1e-6);
    expect(apart(found.sigma, Math.SQRT2 * Math.hypot(0.002, 0.01))).toBeLessThan(1e-6);
  });

  it('are left alone by a test that found nothing, by one not believed, and without any', () => {
    for (const test of [twoPeg(0), twoPeg(0.03), null]) {
      const found = levelled(test, [4, 24]);
      expect(apart(found.height, 0.78)).toBeLessThan(1e-6);
      expect(apart(found.sigma, 0.002 * Math.SQRT2)).toBeLessThan(1e-9);
    }
  });

  it('hang on the last test before them: an adjusted level is corrected no more', () => {
    const book = new Book();
    book.write(twoPeg(SLOPE));
    book.write(twoPeg(0));
    rod(book, benchmark, 1.5, 4);
    rod(book, top('1'), 0.7, 24);
    const found = heights(book.entries, INSTRUMENTS).heights.find(({ key }) => key === 'top:1')!;
    expect(apart(found.height, 0.8)).toBeLessThan(1e-9);
  });

  it('before the first test hang on it: the level was found as it had been', () => {
    const book = new Book();
    rod(book, benchmark, 1.5 + SLOPE * 4, 4);
    rod(book, top('1'), 0.7 + SLOPE * 24, 24);
    book.write(twoPeg(SLOPE));
    const found = heights(book.entries, INSTRUMENTS).heights.find(({ key }) => key === 'top:1')!;
    expect(apart(found.height, 0.8)).toBeLessThan(1e-6);
  });
});
