import { describe, expect, it } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { collimationOf, heights } from '../../src/measure/index.ts';
import { apart, Book, INSTRUMENTS, metres } from '../measure/build.ts';

/** Readings on two pegs, and sights from the second set-up; peg a is the nearer one. Metres. */
interface Test {
  readonly middle: readonly [a: number, b: number];
  readonly near: readonly [a: number, b: number];
  readonly sights: readonly [a: number, b: number];
}

const pair = ([a, b]: readonly [number, number]) => ({ a: metres(a), b: metres(b) });
const bodyOf = ({ middle, near, sights }: Test): Extract<Body, { kind: 'two-peg' }> => ({
  kind: 'two-peg',
  middle: pair(middle),
  near: pair(near),
  sights: pair(sights),
});
const slopeOf = (test: Test): number => collimationOf({ id: 'test', body: bodyOf(test) }, INSTRUMENTS)!.slope;

/** What the tool makes of the readings of the second set-up: the height of peg a above peg b, both corrected. */
function correctedRise(test: Test): number {
  const book = new Book();
  book.write(bodyOf(test));
  const rod = (on: Extract<Body, { kind: 'rod' }>['on'], i: 0 | 1) =>
    book.write({ kind: 'rod', setup: '1', on, reading: metres(test.near[i]), sight: metres(test.sights[i]) });
  rod({ point: 'benchmark' }, 1);
  rod({ point: 'turning-point', label: 'a' }, 0);
  return heightOf(book.entries, 'turning-point:a');
}

const heightOf = (entries: readonly Entry[], key: string): number =>
  heights(entries, INSTRUMENTS).heights.find((each) => each.key === key)!.height;

const UREN: Test = { middle: [0.86, 1.283], near: [1.219, 1.612], sights: [5, 55] };

describe('two-peg test', () => {
  it('0.860, 1.283; 1.219, 1.612 from 5 m and 55 m: −0.030 m in 50 m (Uren & Price, "Surveying for Engineers", from memory; worked at unipeppa.com)', () => {
    expect(apart(slopeOf(UREN) * 50, -0.03)).toBeLessThan(1e-9);
    // A level line of sight reads 1.645 on the far peg and 1.222 on the near one.
    expect(apart(1.612 - slopeOf(UREN) * 55, 1.645)).toBeLessThan(1e-9);
    expect(apart(1.219 - slopeOf(UREN) * 5, 1.222)).toBeLessThan(1e-9);
  });

  it('1.432, 1.476; 1.472, 1.556 from 10 m and 50 m: 0.001 in 1 (transtutors.com, a question from a textbook)', () => {
    const test: Test = { middle: [1.432, 1.476], near: [1.472, 1.556], sights: [10, 50] };
    expect(apart(slopeOf(test), 0.001)).toBeLessThan(1e-9);
    expect(apart(correctedRise(test), 1.476 - 1.432)).toBeLessThan(1e-5);
  });

  it('0.630 midway is read as 0.615 from 25 m and 50 m: 0.060 m in 100 m (curioustab.com)', () => {
    // Only the differences are published, and the reading 2.847 on the further peg.
    const test: Test = { middle: [1, 1.63], near: [2.232, 2.847], sights: [25, 50] };
    expect(apart(Math.abs(slopeOf(test)) * 100, 0.06)).toBeLessThan(1e-9);
  });

  it('3.0, 2.0; 2.75, 1.50 from 20 m and 120 m: down, and level sights read 2.80 and 1.80 (question published at watch-this.online, answers derived)', () => {
    const slope = slopeOf({ middle: [3, 2], near: [2.75, 1.5], sights: [20, 120] });
    expect(slope).toBeLessThan(0);
    expect(apart(2.75 - slope * 20, 2.8)).toBeLessThan(1e-9);
    expect(apart(1.5 - slope * 120, 1.8)).toBeLessThan(1e-9);
  });

  it('corrects readings whose sights are known: the pegs differ as from midway', () => {
    expect(apart(correctedRise(UREN), 1.283 - 0.86)).toBeLessThan(1e-5);
  });
});
