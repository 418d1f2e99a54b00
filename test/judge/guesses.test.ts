import { describe, expect, it } from 'vitest';
import { add, distance, dot, scale, subtract, unit, type Vec } from '../../src/geometry/point.ts';
import type { Hold, PullEnd } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { normalCdf } from '../../src/judge/normal.ts';
import { situate } from '../../src/judge/situation.ts';
import type { Fix } from '../../src/measure/index.ts';
import { touchOffset } from '../../src/plan/index.ts';
import { Field, mm, noise, post, seeded, stake } from './field.ts';
import { holeOf } from './ring-job.ts';

const A = stake('A');
const B = stake('B');
const JOBS = 1500;
/** The ellipse that holds 95 %, in half axes of one sigma: √χ² with 2 degrees of freedom. */
const FACTOR_95 = 2.4477;
/** Three standard errors of 95 % of so many jobs. */
const WITHIN = 3 * Math.sqrt((0.95 * 0.05) / JOBS);
const TAPE = 0.002;
const LEVEL: Hold = { how: 'level' };

/** Distance from the truth in sigmas, whichever way. */
function normalised({ place, ellipse }: Fix, truth: Vec): number {
  const off = subtract(truth, place);
  const along = dot(off, unit(ellipse.bearing)) / ellipse.semiMajor;
  const across = dot(off, unit(ellipse.bearing + Math.PI / 2)) / ellipse.semiMinor;
  return Math.hypot(along, across);
}

const holds = (fix: Fix, truth: Vec): boolean => normalised(fix, truth) <= FACTOR_95;

/** P(z₁⁴ + z₂⁴ ≤ most) of two standard normal variables, by the midpoint rule. */
function quarticWithin(most: number): number {
  const steps = 2000;
  const end = most ** 0.25;
  const step = end / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const z = (i + 0.5) * step;
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    sum += 2 * density * (2 * normalCdf((most - z ** 4) ** 0.25) - 1) * step;
  }
  return sum;
}

/** Post 1 pulled to from A and from B; what the tapes read is up to the test. */
function job(
  read: (field: Field, from: 'A' | 'B', to: PullEnd) => { reading: number; hold: Hold; height?: number },
) {
  const field = new Field().site();
  field.pull(A, B);
  field.set('1');
  for (const label of ['A', 'B'] as const) {
    const plain: PullEnd = { thing: post('1'), touch: { at: 'face', side: 'back' } };
    const { reading, hold, height } = read(field, label, plain);
    field.add({
      kind: 'pull',
      from: { thing: stake(label), touch: { at: 'nail' } },
      to: height === undefined ? plain : { ...plain, height: mm(height * 1000) },
      reading: mm(reading * 1000),
      hold,
    });
  }
  return field;
}

const fixOf = (field: Field): Fix =>
  situate(field.log).measured!.points.find(({ thing }) => thing.kind === 'post' && thing.hole === '1')!.fix!;

/** Level distance from a stake to the face, the post leaning so much per metre, touched so high. */
function levelTo(
  field: Field,
  label: 'A' | 'B',
  to: PullEnd,
  lean: Vec = { x: 0, y: 0 },
  height = 0,
): number {
  const hole = field.laid.holes.find((each) => each.label === '1')!;
  const face = touchOffset(hole.section, hole.facing, to.touch, 0)!;
  return distance(field.placeOf(stake(label)), add(add(hole.site, face), scale(lean, height)));
}

function shareHeld(make: () => { field: Field; truth: Vec }): number {
  let held = 0;
  for (let i = 0; i < JOBS; i++) {
    const { field, truth } = make();
    if (holds(fixOf(field), truth)) held += 1;
  }
  return held / JOBS;
}

describe('a place that rests on a guess carries the doubt of it', () => {
  it('the lean that nobody read: ellipses hold 95 % of posts that lean as stood up by eye', () => {
    const n = noise(11);
    const share = shareHeld(() => {
      const lean = { x: n(0.02), y: n(0.02) };
      const field = job((f, label, to) => ({
        reading: levelTo(f, label, to, lean, 0.9) + n(TAPE),
        hold: LEVEL,
        height: 0.9,
      }));
      return { field, truth: field.placeOf(post('1')) };
    });
    expect(Math.abs(share - 0.95)).toBeLessThan(WITHIN);
  });

  it('the rise that nobody measured: errors are as large as the covariance says, root mean square', () => {
    const n = noise(12);
    let squares = 0;
    const share = shareHeld(() => {
      const field = job((f, label, to) => {
        const level = levelTo(f, label, to);
        return { reading: level * Math.hypot(1, n(0.1)) + n(TAPE), hold: { how: 'slope' } };
      });
      const truth = field.placeOf(post('1'));
      squares += normalised(fixOf(field), truth) ** 2;
      return { field, truth };
    });
    // Two degrees of freedom; z⁴/3 for each tape has a variance of 32/3, so this is three standard errors.
    expect(Math.abs(squares / JOBS - 2)).toBeLessThan(3 * Math.sqrt((2 * 32) / 3 / JOBS));
    // Such a tape only ever reads too long, by L g²/2: the ellipse then holds P(z₁⁴ + z₂⁴ ≤ 3 · 5.991), 92 % (derived, not published).
    expect(Math.abs(share - quarticWithin(3 * FACTOR_95 ** 2))).toBeLessThan(WITHIN);
  });

  it('the rise taken from rod readings: their doubt is in it', () => {
    const n = noise(13);
    const random = seeded(14);
    const share = shareHeld(() => {
      const rise = 1.5 + random();
      const field = job((f, label, to) => ({
        reading: Math.hypot(levelTo(f, label, to), rise) + n(TAPE),
        hold: { how: 'slope', rise: mm(1000 * (rise + n(Math.SQRT2 * 0.001))) },
      }));
      return { field, truth: field.placeOf(post('1')) };
    });
    expect(Math.abs(share - 0.95)).toBeLessThan(WITHIN);
  });

  it('and is worse known than without the guess, the more the higher the tape', () => {
    const at = (height: number) =>
      fixOf(job((f, label, to) => ({ reading: levelTo(f, label, to), hold: LEVEL, height }))).ellipse
        .semiMajor;
    const plain = fixOf(job((f, label, to) => ({ reading: levelTo(f, label, to), hold: LEVEL }))).ellipse
      .semiMajor;
    // 20 mm of lean in 1 m, at that height, on top of what the tapes leave open.
    for (const height of [0.3, 0.9, 1.5])
      expect(at(height)).toBeGreaterThan(Math.hypot(plain, 0.019 * height));
  });
});

describe('the words', () => {
  const whyOf = (field: Field) => holeOf(assess(field.log), '1').set.position.why;
  it('name the lean that was not read, and what to do', () => {
    const field = job((f, label, to) => ({ reading: levelTo(f, label, to), hold: LEVEL, height: 0.9 }));
    expect(whyOf(field)).toContain(
      'Post 1 was touched above the ground and the lean was not read, so that is a guess: hold the level on two faces of it, side by side.',
    );
    for (const side of ['front', 'left'] as const) field.plumb('1', side);
    expect(whyOf(field)).not.toContain('guess');
  });
  it('name the rise that was not measured, and what to do', () => {
    const field = job((f, label, to) => ({ reading: levelTo(f, label, to), hold: { how: 'slope' } }));
    expect(whyOf(field)).toContain(
      'The rise of the tape from A and B was not measured, and is a guess: read the rod at both ends, or hold that tape level.',
    );
  });
  it('say nothing of a guess where there is none', () => {
    expect(whyOf(job((f, label, to) => ({ reading: levelTo(f, label, to), hold: LEVEL })))).not.toContain(
      'guess',
    );
  });
});
