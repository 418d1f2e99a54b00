import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import { thingKey } from '../../src/job/log.ts';
import { measure, measureWays } from '../../src/measure/index.ts';
import { A, apart, B, Book, hole, holeStake, INSTRUMENTS } from './build.ts';

const MM = 0.001;

describe('misreadings', () => {
  const square = [
    ['1', 2, 3],
    ['2', 6, 3],
    ['3', 6, 7],
    ['4', 2, 7],
  ] as const;
  const plan = square.map(([name, x, y]) => hole(name, x, y));
  const bookOf = (wrong: string | null, by: number) => {
    const book = new Book();
    const ids: Record<string, string> = {};
    const read = (name: string, reading: number) => reading + (name === wrong ? by : 0);
    ids['AB'] = book.pull(A, B, read('AB', 8));
    for (const [name, x, y] of square) {
      ids[`A${name}`] = book.pull(A, holeStake(name), read(`A${name}`, Math.hypot(x, y)));
      ids[`B${name}`] = book.pull(B, holeStake(name), read(`B${name}`, Math.hypot(8 - x, y)));
    }
    square.forEach(([name, x, y], i) => {
      for (const [other, u, v] of square.slice(0, i)) {
        ids[`${other}${name}`] = book.pull(
          holeStake(other),
          holeStake(name),
          read(`${other}${name}`, Math.hypot(x - u, y - v)),
        );
      }
    });
    return { entries: book.entries, ids };
  };

  it('finds none where there is none', () => {
    expect(measure(bookOf(null, 0).entries, plan, 8, INSTRUMENTS).suspicions).toEqual([]);
  });

  for (const wrong of ['A1', 'B3', '13', '24', '12']) {
    it(`traces an inch on ${wrong}`, () => {
      const { entries, ids } = bookOf(wrong, 0.0254);
      const { suspicions, globalTest } = measure(entries, plan, 8, INSTRUMENTS);
      expect(suspicions[0]!.entries[0]).toBe(ids[wrong]);
      expect(apart(suspicions[0]!.misreading, 0.0254)).toBeLessThan(MM);
      expect(suspicions).toHaveLength(1);
      expect(globalTest.chance).toBeLessThan(0.01);
    });
  }

  it.each(['A1', 'B3', '13', '24', '12', 'AB'])(
    'without %s, left out in thought, is as if it had never been logged',
    (left) => {
      const { entries, ids } = bookOf('13', 0.0254);
      const out = ids[left]!;
      const thought = measureWays(entries, plan, 8, INSTRUMENTS).without([out]);
      const never = measure(
        entries.filter(({ id }) => id !== out),
        plan,
        8,
        INSTRUMENTS,
      );
      expect(thought.pulls.map(({ entry }) => entry)).toEqual(never.pulls.map(({ entry }) => entry));
      for (const [i, pull] of never.pulls.entries()) {
        expect(apart(thought.pulls[i]!.redundancy, pull.redundancy)).toBeLessThan(1e-6);
        expect(apart(thought.pulls[i]!.predicted, pull.predicted)).toBeLessThan(1e-9);
      }
      for (const { thing, fix, lack } of never.points) {
        const same = thought.points.find((point) => thingKey(point.thing) === thingKey(thing))!;
        expect(same.lack?.reason).toBe(lack?.reason);
        if (!fix || !same.fix) continue;
        expect(distance(same.fix.place, fix.place)).toBeLessThan(1e-9);
        expect(apart(same.fix.ellipse.semiMajor, fix.ellipse.semiMajor)).toBeLessThan(1e-9);
        expect(apart(same.fix.unseenShift, fix.unseenShift)).toBeLessThan(1e-6);
      }
    },
  );

  it('names every suspect when one spare pull cannot tell', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), Math.hypot(2, 3));
    book.pull(B, holeStake('1'), Math.hypot(6, 3));
    book.pull(A, holeStake('2'), Math.hypot(6, 3));
    book.pull(B, holeStake('2'), Math.hypot(2, 3));
    book.pull(holeStake('1'), holeStake('2'), 4.1);
    const { suspicions } = measure(book.entries, plan, 8, INSTRUMENTS);
    expect(suspicions).toHaveLength(1);
    expect(suspicions[0]!.entries).toHaveLength(6);
  });
});
