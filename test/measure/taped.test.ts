import { describe, expect, it } from 'vitest';
import type { Entry, Pulling } from '../../src/job/entry-schema.ts';
import type { TapeSpec } from '../../src/job/plan-schema.ts';
import { measure, readingOn, tapeInHand } from '../../src/measure/index.ts';
import { tapeCorrection } from '../../src/measure/tape.ts';
import { tapeDoubt, tapedBy, trueLength } from '../../src/measure/taped.ts';
import { A, apart, B, Book, end, hole, holeStake, INSTRUMENTS, metres } from './build.ts';

/** A steel tape of the building trade: 10 mm by 0.2 mm, so 2 mm² · 200 GPa; weights and sizes are common practice. */
const RED: TapeSpec = {
  label: 'Red',
  nominal: metres(30),
  actual: metres(30.006),
  zero: metres(-0.002),
  temperature: 20,
  tension: 50,
  expansion: 11.6e-6,
  stiffness: 4e5,
  weight: 0.157,
};
const PLAIN: TapeSpec = { label: 'Plain', nominal: metres(30), actual: metres(29.99), zero: metres(0) };
const TAPED = { ...INSTRUMENTS, tapes: [RED, PLAIN] };

/** A log with every pull of 3-4-5 triangles on A and B, as these tapes read it. */
function triangle(tape: TapeSpec, pulling: Pulling): Book {
  const book = new Book();
  const write = (to: typeof B, length: number, from = A) =>
    book.write({
      kind: 'pull',
      from: end(from),
      to: end(to),
      reading: metres(readingOn({ tape, pulling }, length)),
      hold: { how: 'level' },
      tape: tape.label,
      pulling,
    });
  write(B, 8);
  write(holeStake('1'), 5);
  write(holeStake('1'), 5, B);
  return book;
}

const PLAN = [hole('1', 4, 3)];

describe('a reading and what is there', () => {
  const pullings: Pulling[] = [
    {},
    { temperature: 35 },
    { tension: 80 },
    { temperature: -5, tension: 30, spans: [metres(4), metres(4)] },
  ];
  for (const pulling of pullings) {
    it(`turn into each other and back: ${JSON.stringify(pulling)}`, () => {
      const taped = tapedBy({ tape: RED, pulling });
      for (const length of [0.5, 8, 30]) {
        const reading = readingOn({ tape: RED, pulling }, length);
        expect(apart(trueLength(taped, reading), length)).toBeLessThan(1e-13);
        const { total } = tapeCorrection(
          reading,
          { ...RED, nominal: 30, actual: 30.006, zeroOffset: -0.002 } as never,
          {
            temperature: pulling.temperature ?? 20,
            tension: pulling.tension ?? 50,
            spans: (pulling.spans ?? []).map(({ m }) => m),
          },
        );
        expect(apart(reading + total, length)).toBeLessThan(1e-13);
      }
    });
  }

  it('without a tape the reading is what is there', () => {
    expect(readingOn(null, 7.25)).toBe(7.25);
  });

  it('how far a tape sagged is a doubt and no correction while nothing says how hard it was pulled', () => {
    const { tension: _, ...slack } = RED;
    const hung = { spans: [metres(10)] };
    const level = readingOn({ tape: slack, pulling: {} }, 10);
    expect(readingOn({ tape: slack, pulling: hung }, 10)).toBe(level);
    const doubt = tapeDoubt({ tape: slack, pulling: { temperature: 20, ...hung } }, 10);
    // w²L³/(24 P²) at 50 N.
    expect(apart(doubt, (0.157 ** 2 * 1000) / (24 * 2500))).toBeLessThan(1e-12);
  });

  it('what was not noted counts only where the tape’s own data make it matter', () => {
    expect(tapeDoubt({ tape: PLAIN, pulling: {} }, 30)).toBe(0);
    expect(tapeDoubt({ tape: RED, pulling: { temperature: 10, tension: 50 } }, 30)).toBe(0);
    // 10 °C of 11.6e-6 on 10 m, and 15 N of 50 on 400 kN.
    const both = Math.hypot(11.6e-6 * 10 * 10, (15 * 10) / 4e5);
    expect(apart(tapeDoubt({ tape: RED, pulling: {} }, 10), both)).toBeLessThan(1e-12);
  });
});

describe('the adjustment', () => {
  it('places by what is there, and shows a pull as its tape reads it', () => {
    const pulling = { temperature: 33, tension: 70, spans: [metres(2), metres(2.5)] };
    const { entries } = triangle(RED, pulling);
    const { points, pulls, baseline } = measure(entries, PLAN, 8, TAPED);
    expect(apart(baseline!.length, 8)).toBeLessThan(1e-9);
    const { place } = points.find(({ thing }) => thing.kind === 'hole-stake')!.fix!;
    expect(Math.hypot(place.x - 4, place.y - 3)).toBeLessThan(1e-9);
    pulls.forEach((pull, i) => {
      const { body } = entries[i]!;
      const read = body.kind === 'pull' ? body.reading.m : 0;
      expect(apart(pull.predicted + pull.residual, read)).toBeLessThan(1e-12);
      expect(apart(pull.predicted, read)).toBeLessThan(1e-9);
    });
  });

  it('a tape that the plan does not list, or of which it says nonsense, is told', () => {
    const { entries } = triangle(RED, {});
    const nonsense = { ...RED, actual: metres(3) };
    for (const instruments of [
      INSTRUMENTS,
      { ...INSTRUMENTS, tapes: [PLAIN] },
      { ...INSTRUMENTS, tapes: [nonsense] },
    ]) {
      const { unused, pulls } = measure(entries, PLAN, 8, instruments);
      expect(unused.map(({ reason }) => reason)).toEqual(['no-tape', 'no-tape', 'no-tape']);
      expect(pulls).toEqual([]);
    }
  });

  it('pulls without a tape are what they were', () => {
    const book = new Book();
    book.pull(A, B, 8.001);
    book.pull(A, holeStake('1'), 5.002);
    book.pull(B, holeStake('1'), 4.999);
    expect(JSON.stringify(measure(book.entries, PLAN, 8, TAPED))).toBe(
      JSON.stringify(measure(book.entries, PLAN, 8, INSTRUMENTS)),
    );
  });
});

describe('the tape in hand', () => {
  const planned = (tapes: TapeSpec[]): Entry => ({
    id: 'entry-plan',
    seq: 1,
    at: '2026-05-01T08:00:00Z',
    body: { kind: 'plan', plan: { instruments: { ...INSTRUMENTS, tapes } } } as never,
  });

  it('is none in a job that lists no tapes', () => {
    expect(tapeInHand(triangle(RED, {}).entries, INSTRUMENTS)).toBeNull();
  });

  it('is the first of the plan’s before any pull, and for pulls older than the list', () => {
    expect(tapeInHand([planned([RED])], TAPED)).toEqual({ tape: RED, pulling: {} });
    const book = new Book();
    book.pull(A, B, 8);
    expect(tapeInHand([...book.entries, planned([RED])], TAPED)?.tape).toBe(RED);
  });

  it('is that of the last pull, as warm and as tight; what hung free is that pull’s own', () => {
    const { entries } = triangle(PLAIN, { temperature: 31, tension: 60, spans: [metres(3)] });
    expect(tapeInHand([planned([RED]), ...entries], TAPED)).toEqual({
      tape: PLAIN,
      pulling: { temperature: 31, tension: 60 },
    });
  });

  it('is none after a pull with a tape that needs no correction', () => {
    const book = new Book();
    book.pull(A, B, 8);
    expect(tapeInHand([planned([RED]), ...book.entries], TAPED)).toBeNull();
  });
});
