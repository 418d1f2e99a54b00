import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body, Entry, EntryOf, HeightPoint } from '../../src/job/entry-schema.ts';
import { variancesAgainstMean } from '../../src/measure/height-tops.ts';
import { heights } from '../../src/measure/index.ts';
import { apart, Book, INSTRUMENTS, metres, post, stake } from './build.ts';

const benchmark = { point: 'benchmark' } as const;
const top = (hole: string) => ({ point: 'top', hole }) as const;
const ground = (hole: string) => ({ point: 'ground', hole }) as const;
const turning = (label: string) => ({ point: 'turning-point', label }) as const;
const atStake = (label: string) => ({ point: 'stake', label }) as const;
const ROD = INSTRUMENTS.rodError.m;

const difference = (from: HeightPoint, to: HeightPoint, rise: number): EntryOf<'difference'>['body'] => ({
  kind: 'difference',
  by: 'laser',
  from,
  to,
  height: metres(Math.abs(rise)),
  higher: rise === 0 ? 'none' : rise > 0 ? 'to' : 'from',
});

function found(entries: readonly Entry[]) {
  const { heights: list, ...rest } = heights(entries, INSTRUMENTS);
  return { ...rest, at: new Map(list.map((each) => [each.key, each])) };
}

describe('one network of heights', () => {
  it('a difference carries a height on, either way round, and is worth two rod readings', () => {
    const book = new Book();
    book.write(difference(benchmark, atStake('A'), -0.4));
    book.write(difference(top('1'), atStake('A'), -1.2));
    book.write(difference(top('1'), top('2'), 0));
    const { at } = found(book.entries);
    expect(apart(at.get('stake:A')!.height, -0.4)).toBeLessThan(1e-9);
    expect(apart(at.get('top:1')!.height, 0.8)).toBeLessThan(1e-9);
    expect(apart(at.get('top:2')!.height, 0.8)).toBeLessThan(1e-9);
    expect(apart(at.get('top:2')!.sigma, ROD * Math.sqrt(6))).toBeLessThan(1e-9);
  });

  it('a difference counts no more once one of its points was moved', () => {
    const book = new Book();
    book.write(difference(benchmark, top('1'), 0.8));
    book.write(difference(benchmark, atStake('A'), 0.1));
    book.stand(post('1'), 'nudged');
    book.stand(stake('A'), 'moved');
    expect([...found(book.entries).at.keys()]).toEqual(['benchmark']);
  });

  it('a rod held upside down reads a point above the level', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    book.write({ kind: 'rod', setup: '1', on: top('1'), reading: metres(0.9), inverted: true });
    expect(apart(found(book.entries).at.get('top:1')!.height, 2.4)).toBeLessThan(1e-9);
  });

  it('heights of instrument are found, and what no benchmark reaches is named', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    const lost = book.rod('7', top('1'), 0.7);
    const hose = book.write(difference(top('2'), top('3'), 0.1));
    const { levelling, at } = found(book.entries);
    expect(levelling.setups).toHaveLength(1);
    expect(levelling.setups[0]!.key).toBe('1');
    expect(apart(levelling.setups[0]!.height, 1.5)).toBeLessThan(1e-9);
    expect(levelling.adrift).toEqual([lost, hose]);
    expect(at.size).toBe(1);
  });

  it('what cannot be a reading is said not to be used', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    const far = book.rod('1', top('1'), 5000);
    const same = book.write(difference(top('2'), top('2'), 0.3));
    const torn = book.write({ ...difference(top('1'), top('2'), 0.05), higher: 'none' });
    const level = book.write({ ...difference(top('1'), top('3'), 0), higher: 'none' });
    const { unused } = found(book.entries);
    expect(unused).toEqual([
      { entry: far, reason: 'no-length' },
      { entry: same, reason: 'same-thing' },
      { entry: torn, reason: 'level-and-not' },
    ]);
    expect(unused.map(({ entry }) => entry)).not.toContain(level);
  });

  it('contradictions of metres are found out, and nothing is NaN', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    for (const reading of [0.7, 0.7, 4.7]) book.rod('1', top('1'), reading);
    book.rod('1', benchmark, 1.5);
    const { suspicions, at } = found(book.entries);
    expect(suspicions.map(({ entries }) => entries)).toEqual([['entry-000004']]);
    expect(Number.isFinite(at.get('top:1')!.height)).toBe(true);
  });
});

describe('what guards a height', () => {
  const guardOf = (book: Book, key: string) => found(book.entries).at.get(key)!;

  it('nothing, read once: every reading it hangs on is named', () => {
    const book = new Book();
    const back = book.rod('1', benchmark, 1.5);
    const fore = book.rod('1', top('1'), 0.7);
    book.rod('1', top('2'), 0.7);
    expect(guardOf(book, 'top:1')).toMatchObject({
      unguarded: [back, fore],
      unseenShift: Number.POSITIVE_INFINITY,
    });
  });

  it('a repeat of each: half of what is just not noticed (Baarda 1968)', () => {
    const book = new Book();
    for (let i = 0; i < 2; i++) {
      book.rod('1', benchmark, 1.5);
      book.rod('1', top('1'), 0.7);
    }
    const { unguarded, unseenShift } = guardOf(book, 'top:1');
    expect(unguarded).toEqual([]);
    expect(apart(unseenShift, (4.132 * ROD) / Math.sqrt(0.5) / 2)).toBeLessThan(1e-9);
  });

  it('a way back over other points guards it as well', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    book.rod('1', turning('1'), 1.2);
    book.rod('2', turning('1'), 1.4);
    book.rod('2', benchmark, 1.7);
    expect(guardOf(book, 'turning-point:1').unguarded).toEqual([]);
  });
});

describe('heights among themselves', () => {
  it('from one set-up the benchmark falls out: two tops differ by two readings, whatever the benchmark', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    book.rod('1', top('1'), 0.7);
    book.rod('1', top('2'), 0.7);
    const { levelling, at } = found(book.entries);
    expect(apart(at.get('top:1')!.sigma ** 2, 2 * ROD ** 2)).toBeLessThan(1e-12);
    expect(apart(variancesAgainstMean(levelling.tops, ['top:2']).get('top:1')!, 2 * ROD ** 2)).toBeLessThan(
      1e-12,
    );
    // A top less the mean of it and another: half their difference.
    expect(
      apart(variancesAgainstMean(levelling.tops, ['top:1', 'top:2']).get('top:1')!, ROD ** 2 / 2),
    ).toBeLessThan(1e-12);
  });

  it('from two set-ups what they hang on counts too', () => {
    const book = new Book();
    for (const setup of ['1', '2']) {
      book.rod(setup, benchmark, 1.5);
      book.rod(setup, top(setup), 0.7);
    }
    const { levelling } = found(book.entries);
    expect(apart(variancesAgainstMean(levelling.tops, ['top:2']).get('top:1')!, 4 * ROD ** 2)).toBeLessThan(
      1e-12,
    );
  });

  it('nothing is known against tops that are not measured', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.5);
    expect(variancesAgainstMean(found(book.entries).levelling.tops, ['top:1']).size).toBe(0);
    expect(variancesAgainstMean(found([]).levelling.tops, []).size).toBe(0);
  });
});

/** Readings of a few points from a few set-ups, and some differences, each a little wrong. */
const bodies: fc.Arbitrary<Body[]> = fc.array(
  fc
    .record({
      setup: fc.integer({ min: 0, max: 3 }),
      on: fc.integer({ min: 0, max: 4 }),
      to: fc.integer({ min: 0, max: 4 }),
      error: fc.integer({ min: -5, max: 5 }),
      hose: fc.boolean(),
    })
    .map(({ setup, on, to, error, hose }): Body => {
      const points = [benchmark, top('1'), top('2'), ground('1'), turning('1')] as const;
      const height = [0, 0.8, 0.81, -0.2, 0.3];
      const off = error / 1000;
      if (hose) return difference(points[on]!, points[to]!, height[to]! - height[on]! + off);
      const line = 1.5 + 0.1 * setup;
      return {
        kind: 'rod',
        setup: String(setup),
        on: points[on]!,
        reading: metres(line - height[on]! + off),
      };
    }),
  { maxLength: 25 },
);

const written = (list: readonly Body[]): Entry[] => {
  const book = new Book();
  for (const body of list) book.write(body);
  return book.entries;
};

describe('properties', () => {
  it('the order in which they were read changes no height, and no sum of squares', () => {
    fc.assert(
      fc.property(bodies, (list) => {
        const one = found(written(list));
        const other = found(written([...list].reverse()));
        expect(other.at.size).toBe(one.at.size);
        for (const [key, { height, sigma }] of one.at) {
          expect(apart(other.at.get(key)!.height, height)).toBeLessThan(1e-9);
          expect(apart(other.at.get(key)!.sigma, sigma)).toBeLessThan(1e-9);
        }
        expect(apart(other.test.chiSquare, one.test.chiSquare)).toBeLessThan(1e-6);
        expect(other.levelling.loops).toHaveLength(one.levelling.loops.length);
      }),
    );
  });

  it('every line of sight raised alike changes nothing but the heights of instrument', () => {
    fc.assert(
      fc.property(bodies, fc.integer({ min: 1, max: 900 }), (list, up) => {
        const raised = list.map((body) =>
          body.kind === 'rod' ? { ...body, reading: metres(body.reading.m + up / 1000) } : body,
        );
        const [one, other] = [found(written(list)), found(written(raised))];
        for (const [key, { height }] of one.at)
          expect(apart(other.at.get(key)!.height, height)).toBeLessThan(1e-8);
      }),
    );
  });

  it('a benchmark misread by the same every time moves every other height by that', () => {
    fc.assert(
      fc.property(bodies, (list) => {
        const rods = list.filter(({ kind }) => kind === 'rod');
        const moved = rods.map((body) =>
          body.kind === 'rod' && body.on.point === 'benchmark'
            ? { ...body, reading: metres(body.reading.m + 0.5) }
            : body,
        );
        const [one, other] = [found(written(rods)), found(written(moved))];
        for (const [key, { height }] of one.at)
          if (key !== 'benchmark') expect(apart(other.at.get(key)!.height, height + 0.5)).toBeLessThan(1e-8);
      }),
    );
  });

  it('whatever is read, no number is NaN and every sigma is one', () => {
    const wild = fc.array(
      fc.record({ on: fc.integer({ min: 0, max: 2 }), m: fc.double({ min: -2000, max: 2000, noNaN: true }) }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(wild, (list) => {
        const points = [benchmark, top('1'), turning('1')] as const;
        const entries = written(
          list.map(({ on, m }, i) => ({
            kind: 'rod',
            setup: String(i % 2),
            on: points[on]!,
            reading: metres(m),
          })),
        );
        const { heights: all, test, levelling } = heights(entries, INSTRUMENTS);
        for (const { height, sigma, unseenShift } of all) {
          expect(Number.isFinite(height) && sigma >= 0 && unseenShift >= 0).toBe(true);
        }
        expect(test.chance >= 0 && test.chance <= 1).toBe(true);
        expect(
          levelling.loops.every(({ misclosure, allowance }) => Number.isFinite(misclosure) && allowance > 0),
        ).toBe(true);
      }),
    );
  });
});
