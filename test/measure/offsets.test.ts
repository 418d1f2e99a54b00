import { describe, expect, it } from 'vitest';
import type { Body, Entry, PullEnd, Thing } from '../../src/job/entry-schema.ts';
import { standing } from '../../src/job/log.ts';
import { firstDatum } from '../../src/measure/datum.ts';
import { type Measured, measure, predictOffset } from '../../src/measure/index.ts';
import { emptyEvaluation, evaluate, modelOf } from '../../src/measure/model.ts';
import { networkOf } from '../../src/measure/network.ts';
import { startState } from '../../src/measure/start.ts';
import type { SitedHole } from '../../src/plan/hole.ts';
import {
  A,
  apart,
  B,
  Book,
  end,
  face,
  hole,
  holeStake,
  INSTRUMENTS,
  metres,
  nail,
  post,
  stake,
} from './build.ts';
import { madeJob } from './networks.ts';

type Off = Extract<Body, { kind: 'offset' }>;

/** Writes what was measured off a string: a station, or null; an offset with its side, or null. */
function offString(
  book: Book,
  [from, to]: readonly [Thing, Thing],
  of: Thing | PullEnd,
  station: number | null,
  offset: number | null,
  side: Off['side'] = (offset ?? 0) < 0 ? 'right' : 'left',
): string {
  return book.write({
    kind: 'offset',
    from,
    to,
    of: 'thing' in of ? of : end(of),
    ...(station === null ? {} : { station: metres(station) }),
    ...(offset === null ? {} : { offset: metres(Math.abs(offset)) }),
    side,
  });
}

const PLAN = [hole('1', 4, 3), hole('2', 5, 4)];
const run = (entries: readonly Entry[], holes: readonly SitedHole[] = PLAN): Measured =>
  measure(entries, holes, 8, INSTRUMENTS);
const pointOf = ({ points }: Measured, thing: Thing) =>
  points.find((point) => JSON.stringify(point.thing) === JSON.stringify(thing) && point.current)!;

describe('the equations of every row', () => {
  for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
    it(`change as central differences say: network ${seed}`, () => {
      const job = madeJob(seed);
      const network = networkOf(standing(job.entries), job.holes, [], job.instruments);
      const model = modelOf(network, firstDatum(network));
      const state = startState(network, model.datum, job.baseline);
      network.nodes.forEach(({ leans, index }) => {
        if (leans) state.set([0.013, -0.008], index * 4 + 2);
      });
      const at = emptyEvaluation(model);
      evaluate(model, state, at);
      const [up, down] = [emptyEvaluation(model), emptyEvaluation(model)];
      const { starts, columns } = model.symbolic.pattern;
      const step = 1e-6;
      let compared = 0;
      model.unknownOf.forEach((unknown, place) => {
        if (unknown === -1) return;
        const moved = (by: number) => state.map((value, i) => (i === place ? value + by : value));
        evaluate(model, moved(step), up);
        evaluate(model, moved(-step), down);
        for (let k = 0; k < model.rows; k++) {
          const slope = (up.predicted[k]! - down.predicted[k]!) / (2 * step);
          let stated = 0;
          for (let p = starts[k]!; p < starts[k + 1]!; p++)
            if (columns[p] === unknown) stated += at.jacobian[p]!;
          // The difference is good to 1e-16 · 10 m / 1e-6 m.
          expect(apart(stated, slope)).toBeLessThan(1e-8);
          compared++;
        }
      });
      expect(network.offsets.length).toBeGreaterThan(10);
      expect(compared).toBeGreaterThan(1000);
    });
  }
});

describe('a thing measured off a string', () => {
  it('is fixed by a station and an offset, on the side that was said', () => {
    for (const side of ['left', 'right'] as const) {
      const book = new Book();
      book.pull(A, B, 8);
      offString(book, [A, B], nail('N'), 5, 2, side);
      const { place } = pointOf(run(book.entries), nail('N')).fix!;
      expect(Math.hypot(place.x - 5, place.y - (side === 'left' ? 2 : -2))).toBeLessThan(1e-9);
    }
  });

  it('is as long as its tape says: what a long tape reads short is put right', () => {
    const red = { label: 'Red', nominal: metres(30), actual: metres(30.3), zero: metres(0.01) };
    const taped = { ...INSTRUMENTS, tapes: [red] };
    for (const station of [5, -1.5]) {
      const book = new Book();
      book.pull(A, B, 8);
      // 30.3 m of it are marked 30, and its end is bent by 10 mm.
      const readOf = (m: number) => (Math.sign(m) * (Math.abs(m) - 0.01)) / 1.01;
      book.write({
        kind: 'offset',
        from: A,
        to: B,
        of: end(nail('N')),
        station: metres(readOf(station)),
        offset: metres(readOf(2)),
        side: 'left',
        tape: 'Red',
      });
      const measured = measure(book.entries, PLAN, 8, taped);
      const { place } = pointOf(measured, nail('N')).fix!;
      expect(Math.hypot(place.x - station, place.y - 2)).toBeLessThan(1e-9);
      const unknown = measure(book.entries, PLAN, 8, INSTRUMENTS);
      expect(unknown.unused).toMatchObject([{ reason: 'no-tape' }]);
    }
  });

  it('is fixed by one of them and a pull, on the side that was said', () => {
    const sides = { left: 1, right: -1 } as const;
    for (const side of ['left', 'right'] as const) {
      const book = new Book();
      book.pull(A, B, 8);
      offString(book, [A, B], nail('N'), 4, null, side);
      book.pull(A, nail('N'), 5);
      const { place } = pointOf(run(book.entries), nail('N')).fix!;
      expect(Math.hypot(place.x - 4, place.y - 3 * sides[side])).toBeLessThan(1e-6);
    }
  });

  it('is not known from one of them alone, nor from an offset and a pull that meet twice as well', () => {
    const book = new Book();
    book.pull(A, B, 8);
    offString(book, [A, B], nail('N'), 4, null);
    expect(pointOf(run(book.entries), nail('N')).lack?.reason).toBe('one-pull');
    const other = new Book();
    other.pull(A, B, 8);
    offString(other, [A, B], nail('N'), null, 3);
    other.pull(A, nail('N'), 5);
    // At 4 m along, or 4 m behind A.
    expect(pointOf(run(other.entries), nail('N')).fix).toBeNull();
    other.pull(B, nail('N'), 5);
    expect(pointOf(run(other.entries), nail('N')).fix!.place.x).toBeCloseTo(4, 6);
  });

  it('may be a face, the near side of a round, or a height on a leaning post', () => {
    const pier = hole('2', 5, 4, { section: { kind: 'pier', diameter: 0.3 } });
    const book = new Book();
    book.pull(A, B, 8);
    // The front face looks along +y, half a section of 0.14 from the centre.
    offString(book, [A, B], end(post('1'), face('front')), 4, 3.07);
    offString(book, [A, B], end(post('2'), { at: 'near-side' }), 5, 3.85);
    const measured = run(book.entries, [PLAN[0]!, pier]);
    for (const [label, x, y] of [
      ['1', 4, 3],
      ['2', 5, 4],
    ] as const) {
      const { place } = pointOf(measured, post(label)).fix!;
      expect(Math.hypot(place.x - x, place.y - y)).toBeLessThan(1e-9);
    }
    book.plumb('1', 'front', 0.01);
    book.plumb('1', 'left', 0);
    // At a height of 2 m the top is 20 mm farther out.
    offString(book, [A, B], end(post('1'), { at: 'centre' }, 2), 4, 3.02);
    const again = run(book.entries, [PLAN[0]!, pier]);
    expect(Math.max(...again.offsets.map(({ standardised }) => standardised))).toBeLessThan(1e-6);
    expect(again.offsets).toHaveLength(6);
  });

  it('tells what each part reads, and that a misread one is wrong, by its entry', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    const wrong = offString(book, [A, B], holeStake('1'), 4, 3.1);
    book.pull(A, nail('C'), 5);
    book.pull(B, nail('C'), Math.hypot(5, 4));
    // At 3, 4.
    book.pull(nail('C'), holeStake('1'), Math.SQRT2);
    const { offsets, suspicions } = run(book.entries);
    expect(offsets.map(({ part }) => part)).toEqual(['station', 'offset']);
    expect(offsets[1]!.predicted + offsets[1]!.residual).toBeCloseTo(3.1, 12);
    expect(suspicions[0]!.entries).toEqual([wrong]);
    expect(suspicions[0]!.misreading).toBeCloseTo(0.1, 2);
  });

  it('guards a place as a third pull does', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    expect(pointOf(run(book.entries), holeStake('1')).fix!.unseenShift).toBe(Number.POSITIVE_INFINITY);
    offString(book, [A, B], holeStake('1'), 4, 3);
    expect(pointOf(run(book.entries), holeStake('1')).fix!.unseenShift).toBeLessThan(0.25);
  });
});

describe('a string that is none', () => {
  const unusedOf = (write: (book: Book) => void) => {
    const book = new Book();
    book.pull(A, B, 8);
    write(book);
    return run(book.entries).unused.map(({ reason }) => reason);
  };

  it('from a thing to itself, or to what is measured', () => {
    expect(unusedOf((book) => offString(book, [A, A], holeStake('1'), 1, 1))).toEqual(['same-thing']);
    expect(unusedOf((book) => offString(book, [A, B], A, 1, 1))).toEqual(['same-thing']);
    expect(unusedOf((book) => offString(book, [A, holeStake('1')], holeStake('1'), 1, 1))).toEqual([
      'same-thing',
    ]);
  });

  it('with nothing read, an offset of what is on it, or a length beyond all bounds', () => {
    expect(unusedOf((book) => offString(book, [A, B], holeStake('1'), null, null))).toEqual(['no-length']);
    expect(unusedOf((book) => offString(book, [A, B], holeStake('1'), 4, 1, 'on'))).toEqual(['no-length']);
    expect(unusedOf((book) => offString(book, [A, B], holeStake('1'), 1e9, 1))).toEqual(['no-length']);
  });

  it('of a hole that the plan has not, or a face that a stake has not', () => {
    expect(unusedOf((book) => offString(book, [A, B], holeStake('9'), 1, 1))).toEqual(['not-in-plan']);
    expect(unusedOf((book) => offString(book, [A, post('9')], holeStake('1'), 1, 1))).toEqual([
      'not-in-plan',
    ]);
    expect(unusedOf((book) => offString(book, [A, B], end(holeStake('1'), face('front')), 1, 1))).toEqual([
      'no-size',
    ]);
  });

  it('of no length ends in numbers', () => {
    const book = new Book();
    book.pull(A, B, 1e-9);
    offString(book, [A, B], holeStake('1'), 4, 3);
    const measured = run(book.entries);
    expect(measured.offsets).toHaveLength(2);
    for (const { predicted, standardised } of measured.offsets) {
      expect(Number.isFinite(predicted) && Number.isFinite(standardised)).toBe(true);
    }
    expect(pointOf(measured, holeStake('1')).fix).toBeNull();
  });

  it('strings that contradict each other by a foot settle, and by metres end in numbers', () => {
    const wild = (by: number) => {
      const book = new Book();
      book.pull(A, B, 8);
      for (const [dx, dy] of [
        [0, 0],
        [-by, by],
        [by, by],
      ] as const) {
        offString(book, [A, B], holeStake('1'), 4 + dx, 3 + dy);
        offString(book, [holeStake('1'), B], stake('C'), 2 + dx, 1 + dy);
        offString(book, [stake('C'), A], holeStake('1'), 2 + dy, -1 + dx);
      }
      return run(book.entries);
    };
    expect(wild(0.3).settled).toBe(true);
    for (const { predicted } of wild(3).offsets) expect(Number.isFinite(predicted)).toBe(true);
  });
});

describe('a guessed lean is no reading', () => {
  it('counts for nothing where only it tells of the lean', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, post('1'), 5);
    book.pull(B, post('1'), 5);
    book.pull(A, end(post('1'), undefined, 1.2), 5.02);
    expect(run(book.entries).globalTest).toMatchObject({ chance: 1, degreesOfFreedom: 0 });
  });

  it('is no disagreement where pulls tell that the post leans more', () => {
    const book = new Book();
    // A post that leans a tenth along +y, and pulls that agree on it.
    const [low, high] = [Math.hypot(4, 3), Math.hypot(4, 3.12)];
    for (let again = 0; again < 3; again++) {
      book.pull(A, B, 8);
      book.pull(A, post('1'), low);
      book.pull(B, post('1'), low);
      book.pull(A, end(post('1'), undefined, 1.2), high);
      book.pull(B, end(post('1'), undefined, 1.2), high);
    }
    const { globalTest } = run(book.entries);
    // 15 pulls, and 5 numbers that they determine: B, the post's two and its lean's two.
    expect(globalTest.degreesOfFreedom).toBe(10);
    expect(globalTest.chance).toBeGreaterThan(0.9);
  });
});

describe('what would be measured off a string', () => {
  it('is told with its doubt before it is written down', () => {
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, holeStake('1'), 5);
    book.pull(B, holeStake('1'), 5);
    const measured = run(book.entries);
    const found = predictOffset(B, A, end(holeStake('1')), measured, PLAN, INSTRUMENTS)!;
    expect(found.station.reading).toBeCloseTo(4, 6);
    expect(found.offset.reading).toBeCloseTo(-3, 6);
    expect(found.offset.sigma).toBeGreaterThan(0.002);
    expect(found.offset.sigma).toBeLessThan(0.01);
    // A right angle held to a centimetre in a metre, three metres off.
    expect(found.station.sigma).toBeGreaterThan(0.03);
    expect(predictOffset(A, A, end(holeStake('1')), measured, PLAN, INSTRUMENTS)).toBeNull();
    expect(predictOffset(A, nail('N'), end(holeStake('1')), measured, PLAN, INSTRUMENTS)).toBeNull();
  });

  it('a round is met at its near side, on either side of the string', () => {
    const pier = hole('2', 5, 4, { section: { kind: 'pier', diameter: 0.3 } });
    const book = new Book();
    book.pull(A, B, 8);
    book.pull(A, post('2'), Math.hypot(5, 4));
    book.pull(B, post('2'), 5);
    const measured = run(book.entries, [pier]);
    const near = end(post('2'), { at: 'near-side' });
    expect(predictOffset(A, B, near, measured, [pier], INSTRUMENTS)!.offset.reading).toBeCloseTo(3.85, 6);
    expect(predictOffset(B, A, near, measured, [pier], INSTRUMENTS)!.offset.reading).toBeCloseTo(-3.85, 6);
  });
});
