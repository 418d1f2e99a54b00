import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/job/entry-schema.ts';
import { type Measured, measure } from '../../src/measure/index.ts';
import type { SitedHole } from '../../src/plan/hole.ts';
import { A, B, Book, end, hole, holeStake, INSTRUMENTS, nail, normal, post, random, stake } from './build.ts';

/** Every number in the answer, by its path. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

/** What may be infinite: how far something could go unseen, and the smallest misreading that nothing would catch. */
const MAY_BE_INFINITE = /unseenShift|smallestCaught/;

function measured(
  entries: readonly Entry[],
  holes: readonly SitedHole[],
  baseline: number | null = 8,
): Measured {
  const answer = measure(entries, holes, baseline, INSTRUMENTS);
  for (const [path, value] of numbersIn(answer)) {
    if (value === Number.POSITIVE_INFINITY && MAY_BE_INFINITE.test(path)) continue;
    expect(Number.isFinite(value), `${path} is ${value}`).toBe(true);
  }
  return answer;
}

const plan = [hole('1', 4, 3), hole('2', 5, 4), hole('3', 6, 3), hole('4', 4, 0)];

describe('degenerate input ends in numbers that can be trusted, or in a lack', () => {
  it('nothing at all', () => {
    const answer = measured([], []);
    expect(answer.pulls).toEqual([]);
    expect(answer.points.map(({ fix }) => fix !== null)).toEqual([true, false]);
    expect(answer.globalTest).toEqual({ chiSquare: 0, degreesOfFreedom: 0, chance: 1 });
  });

  it('one pull only', () => {
    for (const [from, to] of [
      [A, B],
      [A, holeStake('1')],
      [holeStake('1'), holeStake('2')],
      [post('1'), nail('N')],
    ] as const) {
      const book = new Book();
      book.pull(from, to, 3);
      measured(book.entries, plan);
      measured(book.entries, plan, null);
    }
  });

  it('all on one line', () => {
    const line = Array.from({ length: 6 }, (_, i) => hole(String(i + 1), 1 + i, 0));
    const book = new Book();
    book.pull(A, B, 8);
    for (const { label, site } of line) {
      book.pull(A, holeStake(label), site.x);
      book.pull(B, holeStake(label), 8 - site.x);
      if (label !== '1') book.pull(holeStake(String(Number(label) - 1)), holeStake(label), 1);
    }
    const answer = measured(book.entries, line);
    for (const point of answer.points) {
      if (point.thing.kind === 'hole-stake') expect(point.lack?.reason).toBe('in-line');
    }
  });

  it('stakes in one place', () => {
    const book = new Book();
    book.pull(A, B, 8);
    for (const name of ['1', '2']) {
      book.pull(A, holeStake(name), 5);
      book.pull(B, holeStake(name), 5);
    }
    book.pull(holeStake('1'), holeStake('2'), 0.0005);
    const same = [hole('1', 4, 3), hole('2', 4, 3)];
    const answer = measured(book.entries, same);
    expect(answer.settled).toBe(true);
    for (const { thing, fix } of answer.points) {
      if (thing.kind === 'hole-stake')
        expect(Math.hypot(fix!.place.x - 4, fix!.place.y - 3)).toBeLessThan(0.001);
    }
  });

  it('A and B in one place', () => {
    const book = new Book();
    book.pull(A, B, 1e-7);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    const answer = measured(book.entries, plan);
    expect(answer.points.find(({ thing }) => thing.kind === 'hole-stake')!.fix).toBeNull();
  });

  it('lengths of zero, below zero, and beyond all bounds', () => {
    const book = new Book();
    book.pull(A, B, 8);
    for (const reading of [0, -3, 1e12, 1e308]) book.pull(A, holeStake('1'), reading);
    book.plumb('1', 'front', 0, 0);
    book.plumb('1', 'front', 1e300, 1e-300);
    const answer = measured(book.entries, plan);
    expect(answer.unused.map(({ reason }) => reason)).toEqual(new Array(6).fill('no-length'));
  });

  it('a rise greater than the reading, and a height and a plan of zero', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5, 9);
    book.pull(B, end(post('1'), undefined, 0), 5, 0);
    measured(book.entries, plan);
  });

  it('pulls that no triangle fits', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 2);
    book.pull(B, holeStake('1'), 3);
    const answer = measured(book.entries, plan);
    const point = answer.points.find(({ thing }) => thing.kind === 'hole-stake')!;
    expect(point.lack?.reason).toBe('in-line');
    expect(answer.suspicions[0]?.entries).toHaveLength(3);
  });

  it('pulls that contradict each other by metres settle, and are found out', () => {
    const uniform = random(11);
    for (let round = 0; round < 60; round++) {
      const book = new Book();
      const gauss = normal(uniform);
      const wild = () => (uniform() < 0.3 ? 3 * gauss() : 0);
      const read = (plain: number) => Math.max(plain + wild(), 0.01);
      book.pull(A, B, read(8));
      for (const { label, site } of plan) {
        book.pull(A, holeStake(label), read(Math.hypot(site.x, site.y)));
        book.pull(B, holeStake(label), read(Math.hypot(8 - site.x, site.y)));
        for (const other of plan) {
          if (other.label >= label) continue;
          const plain = Math.hypot(site.x - other.site.x, site.y - other.site.y);
          book.pull(holeStake(label), holeStake(other.label), read(plain));
        }
      }
      expect(measured(book.entries, plan).settled).toBe(true);
    }
  });

  it('nails that hang on each other and on nothing else', () => {
    const book = new Book();
    book.pull(A, B, 8);
    for (let i = 1; i < 8; i++) book.pull(nail(`N${i}`), nail(`N${i + 1}`), i);
    book.pull(stake('C'), stake('D'), 4);
    const answer = measured(book.entries, []);
    expect(answer.points.filter(({ fix }) => fix !== null)).toHaveLength(2);
  });

  it('10,000 strikes', () => {
    const book = new Book();
    book.pull(A, B, 8);
    for (let i = 0; i < 10_000; i++) book.strike(book.pull(A, holeStake('1'), 1 + (i % 7)));
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    const answer = measured(book.entries, plan);
    expect(answer.pulls).toHaveLength(3);
    expect(answer.suspicions).toEqual([]);
  });

  it('1,000 pulls of one length', () => {
    const book = new Book();
    const gauss = normal(random(3));
    for (let i = 0; i < 1000; i++) book.pull(A, B, 8 + 0.002 * gauss());
    const { baseline, globalTest } = measured(book.entries, []);
    expect(Math.abs(baseline!.length - 8)).toBeLessThan(0.0003);
    expect(globalTest.degreesOfFreedom).toBe(999);
  });
});
