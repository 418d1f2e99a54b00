import { describe, expect, it } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { Field, mm, ringPlan } from './field.ts';

const told = (field: Field): string[] =>
  assess(field.log)
    .findings.filter(({ code }) => code === 'heights')
    .map(({ text }) => text);

type Point = Extract<Body, { kind: 'rod' }>['on'];
const benchmark: Point = { point: 'benchmark' };
const turning = (label: string): Point => ({ point: 'turning-point', label });

function rod(field: Field, setup: string, on: Point, reading: number): string {
  return field.add({ kind: 'rod', setup, on, reading: mm(reading) });
}

function twoPeg(field: Field, slope: number, sights = { a: 2000, b: 32_000 }): string {
  const pair = (a: number, b: number) => ({ a: mm(a), b: mm(b) });
  return field.add({
    kind: 'two-peg',
    middle: pair(1300, 1500),
    near: pair(1400 + slope * sights.a, 1600 + slope * sights.b),
    sights: pair(sights.a, sights.b),
  });
}

describe('levels that do not close', () => {
  function round(slip: number): Field {
    const field = new Field().site();
    rod(field, '1', benchmark, 1500);
    rod(field, '1', turning('1'), 1200);
    rod(field, '2', turning('1'), 1400);
    rod(field, '2', turning('2'), 900);
    rod(field, '3', turning('2'), 1000);
    rod(field, '3', benchmark, 1800 + slip);
    return field;
  }

  it('are told with the way, what they sum to and what is allowed', () => {
    expect(told(round(40))).toEqual([
      'The levels do not close: from the benchmark over turning point 1 and turning point 2 back to it, 3 set-ups: 40 mm, and 8 mm is allowed. One reading on that way is wrong, or a point sank or was moved: go back along it, last reading first, and read each point again.',
    ]);
  });
  it('are not told while they close', () => {
    expect(told(round(7))).toEqual([]);
  });
  it('are not told beside the one reading that is known to be the cause', () => {
    const field = new Field().site();
    for (const hole of ['1', '2', '3']) field.set(hole);
    for (const setup of ['1', '2', '3']) {
      rod(field, setup, benchmark, 1500);
      for (const hole of ['1', '2', '3'])
        rod(field, setup, { point: 'top', hole }, setup === '2' && hole === '3' ? 750 : 700);
    }
    const { findings } = assess(field.log);
    expect(findings.map(({ code }) => code)).toEqual(['misreading']);
  });
});

describe('the level itself', () => {
  it('is to be adjusted when it looks up, from 5 mm in 50 m (TAFE NSW)', () => {
    const field = new Field().site();
    twoPeg(field, 0.0006);
    expect(told(field)).toEqual([
      'The level looks up, by 6 mm in 10 m: have it adjusted, and test it again. Until then stand it as far from one rod as from the other, or enter how far off the rod is, and the reading is put right.',
    ]);
  });
  it('no more once a later test finds it true', () => {
    const field = new Field().site();
    twoPeg(field, -0.0006);
    expect(told(field)[0]).toMatch(/^The level looks down, by 6 mm in 10 m/);
    twoPeg(field, 0);
    expect(told(field)).toEqual([]);
  });
  it('a test that no level can have caused, and one that tells nothing, are said to be so', () => {
    const wrong = new Field().site();
    twoPeg(wrong, 0.05);
    expect(told(wrong)).toEqual([
      'By the two-peg test the level would be 500 mm in 10 m, and no level is: one of its four readings is wrong. It is not used; take it again.',
    ]);
    const nothing = new Field().site();
    twoPeg(nothing, 0, { a: 15_000, b: 15_000 });
    expect(told(nothing)[0]).toMatch(/^The two-peg test tells nothing: /);
  });
  it('is told over thirty feet where the job is in feet', () => {
    const field = new Field(ringPlan('ft-in-16')).site();
    twoPeg(field, 0.0006);
    expect(told(field)[0]).toMatch(/^The level looks up, by 7\/32″ in 30′: /);
  });
});

describe('readings that hang on no benchmark', () => {
  it('are told once for each set-up', () => {
    const field = new Field().site();
    rod(field, '4', turning('1'), 1200);
    rod(field, '4', { point: 'ground', hole: '1' }, 1400);
    expect(told(field)).toEqual([
      'What was read from set-up 4 hangs on no benchmark, and says nothing of any height yet: read from there also the benchmark, or a point whose height is known.',
    ]);
    rod(field, '4', benchmark, 1500);
    expect(told(field)).toEqual([]);
  });
});

describe('tops as a whole', () => {
  function tops(heights: readonly number[], tolerance = 6): Field {
    const plan = ringPlan('mm');
    const field = new Field({ ...plan, tolerances: { ...plan.tolerances, tops: mm(tolerance) } }).site();
    heights.forEach((_, i) => {
      field.set(String(i + 1));
    });
    for (let i = 0; i < 2; i++) {
      field.benchmark();
      heights.forEach((height, k) => {
        field.top(String(k + 1), height);
      });
    }
    return field;
  }

  it('all off by the same: the benchmark is to be looked at first', () => {
    expect(told(tops([825, 826, 825]))).toEqual([
      'The tops of post 1, post 2 and post 3 are level with one another, and all of them stand 25 mm too high: see that the benchmark is the one the plan means and was read right, before any of them is cut or raised.',
    ]);
  });
  it('in by the benchmark, and not level with the others: someone decides', () => {
    expect(told(tops([800, 800, 800, 804], 2))).toEqual([
      'The top of post 4 is 4 mm higher than the common level of the tops, and 2 mm is allowed. Against the benchmark it is in: decide whether the frame can take it up.',
    ]);
  });
  it('nothing where they are in and level', () => {
    expect(told(tops([800, 801, 800, 799]))).toEqual([]);
  });
});
