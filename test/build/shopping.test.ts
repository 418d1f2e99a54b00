import { describe, expect, it } from 'vitest';
import { readStock } from '../../src/build/read-stock.ts';
import { type PostToBuy, postLengths, shoppingLines } from '../../src/build/shopping.ts';
import { stockFor, stockName, usualSpare, usualStock } from '../../src/build/stock.ts';

const FOOT = 0.3048;
const ground = (height: number, assumed = false) => ({ height, sigma: assumed ? 0 : 0.002, assumed });
const post = (hole: string, more: Partial<PostToBuy> = {}): PostToBuy => ({
  hole,
  top: 3 * FOOT,
  ground: ground(0),
  depth: 4.5 * FOOT,
  gravel: 0.5 * FOOT,
  bottom: null,
  bought: null,
  ...more,
});
const lengths = (...posts: PostToBuy[]) => postLengths(posts, 0.25 * FOOT, usualStock('ft-in-16'));

describe('length of a post', () => {
  it('runs from the gravel to its top, and is bought with its spare in the next stock length', () => {
    const [found] = lengths(post('1'));
    expect(found!.length! / FOOT).toBeCloseTo(7, 9);
    expect(found!.needed! / FOOT).toBeCloseTo(7.25, 9);
    expect(stockName(found!.stock!, 'ft-in-16')).toBe('8 ft');
    expect(found!.short).toBeNull();
  });

  it('is longer where the ground is lower', () => {
    const [found] = lengths(post('1', { ground: ground(-2 * FOOT) }));
    expect(found!.length! / FOOT).toBeCloseTo(9, 9);
    expect(stockName(found!.stock!, 'ft-in-16')).toBe('10 ft');
  });

  it('goes by the bottom where that is read', () => {
    const [found] = lengths(post('1', { bottom: ground(-5 * FOOT), ground: ground(0, true) }));
    expect(found!.length! / FOOT).toBeCloseTo(7.5, 9);
    expect(found!.assumed).toBe(false);
  });

  it('says of level ground that it is assumed', () => {
    expect(lengths(post('1', { ground: ground(0, true) }))[0]!.assumed).toBe(true);
  });

  it('is not made up where no depth is known', () => {
    const [found] = lengths(post('1', { depth: null }));
    expect(found).toMatchObject({ length: null, needed: null, stock: null, short: null });
    expect(found!.why).toBe('How deep the hole goes is not known.');
  });

  it('is not made up for a top below what the post stands on', () => {
    const [found] = lengths(post('1', { top: -5 * FOOT }));
    expect(found!.length).toBeNull();
    expect(found!.why).toMatch(/not above the bottom/);
  });

  it('may be longer than any stock', () => {
    const [found] = lengths(post('1', { top: 30 * FOOT }));
    expect(found!.needed! / FOOT).toBeCloseTo(34.25, 9);
    expect(found!.stock).toBeNull();
  });
});

describe('a bought post', () => {
  it.each([
    [8, null],
    [7.25, null],
    [7.1, { of: 'spare', by: 0.15 }],
    [6, { of: 'top', by: 1 }],
  ] as const)('of %f ft for 7 ft and 3 in of spare', (feet, short) => {
    const [found] = lengths(post('1', { bought: feet * FOOT }));
    if (short === null) expect(found!.short).toBeNull();
    else {
      expect(found!.short!.of).toBe(short.of);
      expect(found!.short!.by / FOOT).toBeCloseTo(short.by, 9);
    }
  });
});

describe('the shopping list', () => {
  it('counts posts by stock length, shortest first', () => {
    const found = lengths(
      post('1', { ground: ground(-2 * FOOT) }),
      post('2'),
      post('3'),
      post('4', { depth: null }),
      post('5', { top: 40 * FOOT }),
    );
    const lines = shoppingLines(found).map(({ stock, holes }) => [stockName(stock, 'ft-in-16'), ...holes]);
    expect(lines).toEqual([
      ['8 ft', '2', '3'],
      ['10 ft', '1'],
    ]);
  });

  it('takes the shortest that is long enough, an exact one too', () => {
    const stock = usualStock('m');
    expect(stockFor(2.4, stock)!.m).toBe(2.4);
    expect(stockFor(2.4 + 1e-9, stock)!.m).toBe(2.4);
    expect(stockFor(2.401, stock)!.m).toBe(2.7);
    expect(stockFor(6.1, stock)).toBeNull();
  });

  it('names what yards keep', () => {
    expect(usualStock('m').map((length) => stockName(length, 'm'))).toContain('3.6 m');
    expect(usualStock('mm').map((length) => stockName(length, 'mm'))).toContain('3.6 m');
    expect(usualStock('ft').map((length) => stockName(length, 'ft'))).toContain('12 ft');
    expect(usualSpare('ft-in-16').m).toBeCloseTo(0.0762, 9);
    const odd = readStock('7′ 6″', 'ft-in-16', 'Stock');
    expect(odd.ok && stockName(odd.value[0]!, 'ft-in-16')).toBe('7′ 6″');
  });
});

describe('stock lengths as they are typed', () => {
  it.each([
    ['8, 10, 12', 'ft-in-16', [8 * FOOT, 10 * FOOT, 12 * FOOT]],
    ['12 ft; 8 ft; 10 ft', 'ft-in-16', [8 * FOOT, 10 * FOOT, 12 * FOOT]],
    ['8', 'ft', [8 * FOOT]],
    ['2.4; 3', 'm', [2.4, 3]],
    ['2,4; 3', 'm', [2.4, 3]],
    ['2400 mm; 3', 'mm', [2.4, 3]],
  ] as const)('%s in %s', (text, units, metres) => {
    const read = readStock(text, units, 'Stock');
    expect(read.ok && read.value.map(({ m }) => Number(m.toFixed(6)))).toEqual(
      metres.map((m) => Number(m.toFixed(6))),
    );
  });

  it.each([
    ['', /^Stock is empty: type one length or more, such as 8; 10; 12\.$/],
    [' ; ,', /^Stock is empty/],
    ['eight', /^Stock: “eight” is not a length/],
    ['-8', /must be more than zero/],
    ['0', /must be more than zero/],
    [Array.from({ length: 21 }, (_, i) => i + 1).join(';'), /more than 20 lengths/],
  ])('refuses %j in words', (text, words) => {
    expect(readStock(text, 'ft-in-16', 'Stock')).toMatchObject({
      ok: false,
      problem: { field: 'Stock', text: expect.stringMatching(words) },
    });
  });
});
