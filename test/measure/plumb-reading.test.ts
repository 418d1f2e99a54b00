import { describe, expect, it } from 'vitest';
import type { Body, Entry, Side } from '../../src/job/entry-schema.ts';
import { plumbGap } from '../../src/job/plumb-gap.ts';
import { assess } from '../../src/judge/assess.ts';
import { PlumbReader } from '../../src/measure/plumb-reading.ts';
import { entry } from '../job/sample.ts';
import { Field, mm, post, ringPlan, stake } from '../judge/field.ts';

type Plumb = Extract<Body, { kind: 'plumb' }>;

const { instruments } = ringPlan();
/** One sigma of a plumb reading in the test ring: 1 mm in 1 m. */
const SIGMA = 0.001;

const read = (offset: number, more: Partial<Plumb> = {}): Plumb => ({
  kind: 'plumb',
  hole: '1',
  side: 'front',
  offset: mm(Math.abs(offset)),
  over: mm(1000),
  leans: offset === 0 ? 'none' : offset > 0 ? 'out' : 'in',
  ...more,
});
const turned = (offset: number): NonNullable<Plumb['turned']> => {
  const { offset: gap, leans } = read(offset);
  return { offset: gap, leans };
};
const readerOf = (...bodies: Plumb[]) =>
  new PlumbReader(
    bodies.map((body, i): Entry => entry(i + 1, body)),
    instruments,
  );

describe('a level turned end for end (common practice)', () => {
  it('loses its own error: half the difference is the level’s, the mean is the post’s', () => {
    const both = read(5, { turned: turned(1) });
    const reader = readerOf(both);
    expect(reader.value(both).reading).toBeCloseTo(0.003, 12);
    expect(reader.value(both).sigma).toBeCloseTo(SIGMA / Math.SQRT2, 12);
    expect(reader.errorOf(1)).toMatchObject({ slope: expect.closeTo(0.002, 12), turns: 1 });
    expect(reader.errorOf(1)!.sigma).toBeCloseTo(SIGMA / Math.SQRT2, 12);
  });

  it('has the error taken off what was read with the marked end up, and off nothing else', () => {
    const marked = read(4, { side: 'left', markUp: true });
    const reader = readerOf(read(5, { turned: turned(1) }), read(-1, { turned: turned(-5) }), marked);
    expect(reader.errorOf(1)).toMatchObject({ slope: expect.closeTo(0.002, 12), turns: 2 });
    expect(reader.value(marked).reading).toBeCloseTo(0.002, 12);
    expect(reader.value(marked).sigma).toBeCloseTo(SIGMA * Math.sqrt(1 + 1 / 4), 12);
    expect(reader.value(read(4))).toMatchObject({ reading: 0.004, sigma: SIGMA, common: SIGMA });
    // Another level is another error.
    const shorter = read(4, { markUp: true, over: mm(600) });
    expect(reader.value(shorter)).toMatchObject({ reading: 0.004, common: SIGMA * 0.6 });
  });
});

describe('a lean read off the level itself', () => {
  it('by degrees: tan of them over the length (0.3° is 5.236 mm in 1 m)', () => {
    expect(plumbGap({ by: 'degrees', degrees: 0.3 }, 1)).toEqual({
      m: expect.closeTo(0.005236, 12),
      typed: '5.236',
      units: 'mm',
    });
    expect(plumbGap({ by: 'degrees', degrees: 45 }, 1.2).m).toBeCloseTo(1.2, 9);
  });
  it('by marks of the vial: 2 % a mark is 1/4″ in a foot and a bit (common practice)', () => {
    expect(plumbGap({ by: 'bubble', marks: 1.5, perMark: 0.02 }, 1).m).toBeCloseTo(0.03, 9);
  });
  it('is as coarse as what it is read in: tenths of a degree, quarters of a mark', () => {
    const sigma = (one: Plumb) => readerOf(one).value(one).sigma;
    const tenth = (0.1 * Math.PI) / 180;
    expect(sigma(read(5, { read: { by: 'degrees', degrees: 0.3 } }))).toBeCloseTo(
      Math.hypot(SIGMA, tenth / Math.sqrt(12)),
      12,
    );
    expect(sigma(read(30, { read: { by: 'bubble', marks: 1.5, perMark: 0.02 } }))).toBeCloseTo(
      Math.hypot(SIGMA, 0.005 / Math.sqrt(12)),
      12,
    );
  });
});

describe('in the adjustment', () => {
  const ring = () => {
    const field = new Field().site();
    for (let i = 0; i < 2; i++) field.pull(stake('A'), stake('B'));
    return field.set('1').pullsTo(post('1'), [stake('A'), stake('B')]);
  };
  const leanDoubt = (field: Field) =>
    assess(field.log).holes.find(({ hole }) => hole === '1')!.set.plumb.uncertainty!;

  it('more readings from one way make the level’s own doubt no smaller; the face opposite does', () => {
    const doubtOf = (...reads: readonly [Side, number][]) => {
      const field = ring();
      for (const [side, offset] of reads) field.plumb('1', side, offset);
      return leanDoubt(field);
    };
    const once = doubtOf(['front', 1], ['left', 0]);
    const again = doubtOf(['front', 1], ['front', 1], ['left', 0]);
    const opposite = doubtOf(['front', 1], ['back', -1], ['left', 0]);
    expect(again).toBeCloseTo(once, 12);
    expect(opposite).toBeCloseTo(once / Math.SQRT2, 6);
  });

  it('what an error is not known by stays in the mean of all readings that it was taken off', () => {
    const doubtOf = (count: number) => {
      const field = ring();
      field.add(read(5, { hole: '2', turned: turned(1) }));
      for (let i = 0; i < count; i++) field.add(read(2, { markUp: true }));
      field.add(read(0, { side: 'left', over: mm(600), turned: turned(0) }));
      return leanDoubt(field);
    };
    // Each σ² of its own, and σ²/2 of the error together: the doubt of the lean goes by the root of 1/n + 1/2.
    expect(doubtOf(9) / doubtOf(1)).toBeCloseTo(Math.sqrt((1 / 9 + 1 / 2) / (1 + 1 / 2)), 3);
  });

  it('a lean beyond 45° is no reading, and that is said', () => {
    const field = ring();
    field.add(read(1200));
    const { findings } = assess(field.log);
    expect(findings.map(({ text }) => text).join(' ')).toMatch(/no post leans further than 45°/);
  });
});
