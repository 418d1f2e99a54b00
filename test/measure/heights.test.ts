import { describe, expect, it } from 'vitest';
import { heights } from '../../src/measure/index.ts';
import { apart, Book, INSTRUMENTS, post, stake } from './build.ts';

const benchmark = { point: 'benchmark' } as const;
const top = (hole: string) => ({ point: 'top', hole }) as const;
const ground = (hole: string) => ({ point: 'ground', hole }) as const;
const bottom = (hole: string) => ({ point: 'bottom', hole }) as const;
const turning = (label: string) => ({ point: 'turning-point', label }) as const;

const found = (book: Book) => {
  const { heights: list, ...rest } = heights(book.entries, INSTRUMENTS);
  return { ...rest, at: new Map(list.map(({ key, height, sigma }) => [key, { height, sigma }])) };
};

describe('heights', () => {
  it('the benchmark is 0, known exactly, even in an empty log', () => {
    expect(heights([], INSTRUMENTS).heights).toEqual([
      { key: 'benchmark', height: 0, sigma: 0, unseenShift: 0, unguarded: [] },
    ]);
  });

  it('a larger reading is lower', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.2);
    book.rod('1', top('1'), 0.4);
    book.rod('1', ground('1'), 1.5);
    const { at } = found(book);
    expect(apart(at.get('top:1')!.height, 0.8)).toBeLessThan(1e-9);
    expect(apart(at.get('ground:1')!.height, -0.3)).toBeLessThan(1e-9);
    expect(apart(at.get('top:1')!.sigma, 0.002 * Math.SQRT2)).toBeLessThan(1e-9);
  });

  it('leaves out what nothing ties to the benchmark', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.2);
    book.rod('1', top('1'), 0.4);
    book.rod('2', top('2'), 0.4);
    book.rod('2', ground('2'), 1.4);
    expect([...found(book).at.keys()]).toEqual(['benchmark', 'top:1']);
  });

  it('a top counts from its post’s last stand', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.2);
    book.stand(post('1'), 'set');
    book.rod('1', top('1'), 0.4);
    book.stand(post('1'), 'nudged');
    expect(found(book).at.has('top:1')).toBe(false);
    book.rod('1', top('1'), 0.41);
    expect(apart(found(book).at.get('top:1')!.height, 0.79)).toBeLessThan(1e-9);
  });

  it('a stake likewise', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.2);
    book.rod('1', { point: 'stake', label: 'A' }, 1);
    expect(found(book).at.has('stake:A')).toBe(true);
    book.stand(stake('A'), 'moved');
    expect(found(book).at.has('stake:A')).toBe(false);
  });

  it('a bottom counts as last read', () => {
    const book = new Book();
    book.rod('1', benchmark, 1.2);
    book.rod('1', bottom('1'), 2.0);
    book.rod('1', bottom('1'), 2.4);
    expect(apart(found(book).at.get('bottom:1')!.height, -1.2)).toBeLessThan(1e-9);
  });

  it('a closed line of levels tells a misclosure, and names all it may lie in', () => {
    const line = (slip: number) => {
      const book = new Book();
      book.rod('1', benchmark, 1.2);
      book.rod('1', turning('a'), 0.7 + slip);
      book.rod('2', turning('a'), 1.6);
      book.rod('2', turning('b'), 1.1);
      book.rod('3', turning('b'), 0.9);
      book.rod('3', benchmark, 1.9);
      return found(book);
    };
    const clean = line(0);
    expect(clean.test.degreesOfFreedom).toBe(1);
    expect(clean.test.chance).toBeGreaterThan(0.99);
    expect(clean.suspicions).toEqual([]);
    const wrong = line(0.05);
    expect(wrong.test.chance).toBeLessThan(0.001);
    expect(wrong.suspicions).toHaveLength(1);
    expect(wrong.suspicions[0]!.entries).toHaveLength(6);
  });

  it('a second set-up traces a misread rod', () => {
    const book = new Book();
    const names = ['1', '2', '3', '4'];
    const truth = [0.5, 0.52, 0.48, 0.5];
    let wrong = '';
    for (const [setup, instrument] of [
      ['1', 1.2],
      ['2', 1.45],
      ['3', 1.31],
    ] as const) {
      book.rod(setup, benchmark, instrument);
      names.forEach((name, i) => {
        const misread = setup === '2' && name === '3' ? 0.1 : 0;
        const id = book.rod(setup, top(name), instrument - truth[i]! + misread);
        if (misread !== 0) wrong = id;
      });
    }
    const { suspicions } = found(book);
    expect(suspicions).toHaveLength(1);
    expect(suspicions[0]!.entries).toEqual([wrong]);
    expect(apart(suspicions[0]!.misreading, 0.1)).toBeLessThan(1e-6);
  });
});
