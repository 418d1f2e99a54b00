import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import { type Measured, measure } from '../../src/measure/index.ts';
import { A, apart, B, Book, end, face, hole, holeStake, INSTRUMENTS, nail, post, stake } from './build.ts';

const EXACT = 1e-9;

const pointOf = (measured: Measured, kind: string, name: string, standNo?: number) => {
  const found = measured.points.filter(
    ({ thing, stand, current }) =>
      thing.kind === kind &&
      ('hole' in thing ? thing.hole : thing.label) === name &&
      (standNo === undefined ? current : stand === standNo),
  );
  expect(found).toHaveLength(1);
  return found[0]!;
};

const placeOf = (measured: Measured, kind: string, name: string, standNo?: number) => {
  const { fix } = pointOf(measured, kind, name, standNo);
  expect(fix).not.toBeNull();
  return fix!.place;
};

describe('two tapes', () => {
  it('puts a stake where they meet, on the planned side', () => {
    for (const side of [1, -1]) {
      const book = new Book();
      book.pull(A, B, 8);
      book.pull(A, holeStake('1'), 5);
      book.pull(B, holeStake('1'), 5);
      const measured = measure(book.entries, [hole('1', 4.1, 2.8 * side)], 8, INSTRUMENTS);
      const place = placeOf(measured, 'hole-stake', '1');
      expect(distance(place, { x: 4, y: 3 * side })).toBeLessThan(EXACT);
      expect(measured.settled).toBe(true);
      expect(measured.globalTest.degreesOfFreedom).toBe(0);
      expect(pointOf(measured, 'hole-stake', '1').fix!.unseenShift).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it('says which pulls nothing guards', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    const measured = measure(book.entries, [hole('1', 4, 3)], 8, INSTRUMENTS);
    for (const pull of measured.pulls) {
      expect(pull.redundancy).toBe(0);
      expect(pull.smallestCaught).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it('touches faces, corners and near sides at their planned offsets', () => {
    // The post stands at (4, 3), 140 × 200, its front looks along +y.
    const rectangular = hole('1', 4, 3, { section: { kind: 'post', width: 0.14, depth: 0.2 } });
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, end(post('1'), face('back')), Math.hypot(4, 2.9));
    book.pull(B, end(post('1'), face('right')), Math.hypot(4 - 0.07, 3));
    book.pull(A, end(post('1'), { at: 'corner', side: 'front' }), Math.hypot(4 - 0.07, 3.1));
    book.pull(B, end(post('1'), { at: 'corner', side: 'back' }), Math.hypot(4 - 0.07, 2.9));
    const pier = hole('P', 2, 5, { section: { kind: 'pier', diameter: 0.3 } });
    book.pull(A, end(post('P'), { at: 'near-side' }), Math.hypot(2, 5) - 0.15);
    book.pull(B, end(post('P'), { at: 'near-side' }), Math.hypot(6, 5) - 0.15);
    const measured = measure(book.entries, [rectangular, pier], 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'post', '1'), { x: 4, y: 3 })).toBeLessThan(EXACT);
    expect(distance(placeOf(measured, 'post', 'P'), { x: 2, y: 5 })).toBeLessThan(EXACT);
    expect(measured.globalTest.chiSquare).toBeLessThan(1e-9);
  });

  it('takes a pull along the slope by its rise, written or from heights', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), Math.hypot(4, 3, 1), 1);
    book.pull(B, holeStake('1'), Math.hypot(4, 3, 1.5), 'unknown');
    book.rod('S1', { point: 'benchmark' }, 1.2);
    book.rod('S1', { point: 'stake', label: 'B' }, 2.0);
    book.rod('S1', { point: 'ground', hole: '1' }, 0.5);
    const measured = measure(book.entries, [hole('1', 4.1, 2.8)], 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'hole-stake', '1'), { x: 4, y: 3 })).toBeLessThan(EXACT);
  });

  it('takes a dug hole at its foot: its bottom is read, or the slope is in doubt', () => {
    const dug = end({ kind: 'dug-hole', hole: '1' }, { at: 'centre' });
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, dug, Math.hypot(4, 3, 1), 'unknown');
    book.pull(B, dug, 5);
    book.rod('S1', { point: 'benchmark' }, 1.2);
    book.rod('S1', { point: 'stake', label: 'A' }, 0.5);
    book.rod('S1', { point: 'ground', hole: '1' }, 0.6);
    const plan = [hole('1', 4, 3)];
    expect(measure(book.entries, plan, 8, INSTRUMENTS).pulls[1]!.sigma).toBeGreaterThan(0.04);
    book.rod('S1', { point: 'bottom', hole: '1' }, 1.5);
    const measured = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'dug-hole', '1'), { x: 4, y: 3 })).toBeLessThan(EXACT);
  });

  it('carries the doubt of a slope that nobody measured', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5, 'unknown');
    book.pull(B, holeStake('1'), 5);
    const measured = measure(book.entries, [hole('1', 4, 3)], 8, INSTRUMENTS);
    // 0.1² × 5 m × √3/2 = 43 mm
    expect(apart(measured.pulls[1]!.sigma, 0.0433)).toBeLessThan(0.0002);
    expect(pointOf(measured, 'hole-stake', '1').fix!.ellipse.semiMajor).toBeGreaterThan(0.04);
  });
});

describe('stands', () => {
  const plan = [hole('1', 4, 3), hole('2', 2, 4)];
  const book = new Book();
  book.pull(A, B, 8);
  book.stand(holeStake('1'), 'driven');
  book.pull(A, holeStake('1'), 5);
  book.pull(B, holeStake('1'), 5);
  book.stand(post('1'), 'set');
  book.pull(A, post('1'), Math.hypot(4.02, 3));
  book.pull(B, post('1'), Math.hypot(3.98, 3));
  book.stand(post('1'), 'nudged');
  book.pull(A, post('1'), Math.hypot(4.004, 3));
  book.pull(B, post('1'), Math.hypot(3.996, 3));

  it('keeps as-staked, as-set and after a nudge apart', () => {
    const measured = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'hole-stake', '1'), { x: 4, y: 3 })).toBeLessThan(EXACT);
    expect(distance(placeOf(measured, 'post', '1', 1), { x: 4.02, y: 3 })).toBeLessThan(EXACT);
    expect(distance(placeOf(measured, 'post', '1', 2), { x: 4.004, y: 3 })).toBeLessThan(EXACT);
    expect(measured.pulls.map(({ current }) => current)).toEqual([
      true,
      true,
      true,
      false,
      false,
      true,
      true,
    ]);
  });

  it('finds a stake that was knocked and driven again from what stood still', () => {
    const moved = new Book();
    moved.entries.push(...book.entries);
    moved.pull(A, holeStake('2'), Math.hypot(2, 4));
    moved.pull(B, holeStake('2'), Math.hypot(6, 4));
    moved.stand(A, 'moved');
    const truth = { x: 0.03, y: -0.02 };
    moved.pull(A, B, distance(truth, { x: 8, y: 0 }));
    moved.pull(A, holeStake('2'), distance(truth, { x: 2, y: 4 }));
    moved.pull(A, post('1'), distance(truth, { x: 4.004, y: 3 }));
    const measured = measure(moved.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'stake', 'A', 1), { x: 0, y: 0 })).toBe(0);
    expect(distance(placeOf(measured, 'stake', 'A', 2), truth)).toBeLessThan(EXACT);
    expect(distance(placeOf(measured, 'post', '1', 2), { x: 4.004, y: 3 })).toBeLessThan(EXACT);
  });

  it('takes the stakes as they stand now when nothing ties them to where they stood', () => {
    const again = new Book();
    again.entries.push(...book.entries);
    again.stand(A, 'moved');
    again.pull(A, B, 7.9);
    again.stand(post('2'), 'set');
    again.pull(A, post('2'), Math.hypot(2, 4));
    again.pull(B, post('2'), Math.hypot(5.9, 4));
    const measured = measure(again.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'post', '2'), { x: 2, y: 4 })).toBeLessThan(EXACT);
    expect(apart(measured.baseline!.length, 7.9)).toBeLessThan(EXACT);
    expect(pointOf(measured, 'post', '1').fix).toBeNull();
  });
});

describe('lean', () => {
  it('makes a pull at the top and a pull at the ground agree', () => {
    const book = new Book();
    const lean = { x: 0.01, y: -0.006 };
    const top = { x: 4 + 2 * lean.x, y: 3 + 2 * lean.y };
    book.pull(A, B, 8);
    book.pull(A, end(post('1'), undefined, 2), Math.hypot(top.x, top.y));
    book.pull(B, end(post('1'), undefined, 2), Math.hypot(8 - top.x, top.y));
    book.pull(A, post('1'), 5);
    book.plumb('1', 'front', lean.y);
    book.plumb('1', 'right', lean.x);
    const measured = measure(book.entries, [hole('1', 4, 3)], 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'post', '1'), { x: 4, y: 3 })).toBeLessThan(EXACT);
    const { perMetre } = pointOf(measured, 'post', '1').lean!;
    expect(distance(perMetre, lean)).toBeLessThan(EXACT);
  });

  it('carries the guess when plumb was not read, and calls no guess a lean', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, end(post('1'), undefined, 1), 5);
    book.pull(B, end(post('1'), undefined, 1), 5);
    const measured = measure(book.entries, [hole('1', 4, 3)], 8, INSTRUMENTS);
    const point = pointOf(measured, 'post', '1');
    expect(point.lean).toBeNull();
    expect(point.fix!.ellipse.semiMinor).toBeGreaterThan(0.019);
  });
});

describe('what is not determined', () => {
  const plan = [hole('1', 4, 3), hole('2', 5, 4), hole('3', 6, 3), hole('4', 4, 0)];
  const lackOf = (measured: Measured, name: string) => {
    const { fix, lack } = pointOf(measured, 'hole-stake', name);
    expect(fix).toBeNull();
    return lack!;
  };

  it('is no place with one pull, and says what would settle it', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    const lack = lackOf(measure(book.entries, plan, 8, INSTRUMENTS), '1');
    expect(lack.reason).toBe('one-pull');
    expect(lack.pullFrom[0]).toEqual(B);
  });

  it('is no place without pulls', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.stand(holeStake('1'), 'driven');
    const lack = lackOf(measure(book.entries, plan, 8, INSTRUMENTS), '1');
    expect(lack.reason).toBe('no-pulls');
    expect(lack.pullFrom).toEqual([A, B]);
  });

  it('is no place on the line A–B', () => {
    for (const reading of [3.999, 4, 4.001]) {
      const book = new Book();
      book.pull(A, B, 8);
      book.pull(A, holeStake('4'), reading);
      book.pull(B, holeStake('4'), reading);
      book.pull(A, holeStake('1'), 5);
      book.pull(B, holeStake('1'), 5);
      const lack = lackOf(measure(book.entries, plan, 8, INSTRUMENTS), '4');
      expect(lack.reason).toBe('in-line');
      expect(lack.pullFrom[0]).toEqual(holeStake('1'));
    }
  });

  it('is not the rest: a floating cluster leaves what is tied down right', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    book.pull(holeStake('2'), holeStake('3'), Math.SQRT2);
    const measured = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'hole-stake', '1'), { x: 4, y: 3 })).toBeLessThan(EXACT);
    expect(lackOf(measured, '2').reason).toBe('one-pull');
  });

  it('is everything when A–B was never pulled', () => {
    const book = new Book();
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    const measured = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(measured.baseline).toBeNull();
    expect(lackOf(measured, '1').reason).toBe('not-connected');
    expect(pointOf(measured, 'stake', 'B').lack!.pullFrom).toEqual([A]);
  });

  it('is not a hole stake that only its neighbours hold', () => {
    const book = new Book();
    book.pull(A, B, 8);
    for (const [name, x, y] of [
      ['1', 4, 3],
      ['2', 5, 4],
    ] as const) {
      book.pull(A, holeStake(name), Math.hypot(x, y));
      book.pull(B, holeStake(name), Math.hypot(8 - x, y));
    }
    book.pull(holeStake('1'), holeStake('3'), 2);
    book.pull(holeStake('2'), holeStake('3'), Math.SQRT2);
    const measured = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(measured, 'hole-stake', '3'), { x: 6, y: 3 })).toBeLessThan(EXACT);
  });

  it('is a nail that may lie on either side of A–B, until a third pull tells', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    book.pull(A, nail('N1'), 5);
    book.pull(B, nail('N1'), 5);
    const open = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(pointOf(open, 'nail', 'N1').lack!.reason).toBe('in-line');
    book.pull(holeStake('1'), nail('N1'), 6);
    const told = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(distance(placeOf(told, 'nail', 'N1'), { x: 4, y: -3 })).toBeLessThan(EXACT);
  });
});

describe('what cannot be used', () => {
  it('is named, and changes nothing else', () => {
    const book = new Book();
    book.pull(A, B, 8);
    const same = book.pull(A, A, 3);
    const unknown = book.pull(A, holeStake('99'), 3);
    const faced = book.pull(A, end(stake('C'), face('left')), 3);
    const nothing = book.pull(A, stake('C'), 0);
    const measured = measure(book.entries, [hole('1', 4, 3)], 8, INSTRUMENTS);
    expect(measured.unused).toEqual([
      { entry: same, reason: 'same-thing' },
      { entry: unknown, reason: 'not-in-plan' },
      { entry: faced, reason: 'no-size' },
      { entry: nothing, reason: 'no-length' },
    ]);
    expect(apart(measured.baseline!.length, 8)).toBeLessThan(EXACT);
  });
});
