import { describe, expect, it } from 'vitest';
import type { HeightPoint } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { judgeLevel } from '../../src/judge/level.ts';
import { fakeView } from './fake-view.ts';
import { Field, mm, post, ringPlan } from './field.ts';
import { sound } from './sound.ts';

describe('judgeLevel', () => {
  function judge(height: number, log: (field: Field) => void = twice, sigma = 0.001) {
    const field = new Field().site().set('1');
    log(field);
    const view = fakeView(field, { heights: [{ key: 'top:1', height, sigma }] });
    return sound(judgeLevel(view, '1', 0.8));
  }
  const twice = (field: Field) => {
    field.benchmark();
    field.top('1');
    field.top('1');
    field.benchmark();
  };

  it('in, high, low', () => {
    expect(judge(0.8)).toMatchObject({ verdict: 'in', checked: true, text: 'in, 0 mm ± 2 mm' });
    expect(judge(0.802).text).toBe('in, 2 mm ± 2 mm high');
    expect(judge(0.812).why).toBe('The top of post 1 is 12 mm too high, and 6 mm is allowed.');
    expect(judge(0.788)).toMatchObject({ verdict: 'out', text: 'out, 12 mm ± 2 mm low' });
    expect(judge(0.795).why).toBe(
      'The top of post 1 is 5 mm too low, known to ± 2 mm, and 6 mm is allowed: it may be in or out. Read the rod on it again.',
    );
  });
  it('unmeasured: no rod on the top since it was set, or no benchmark', () => {
    expect(judge(0.8, (f) => f.benchmark()).why).toBe(
      'The top of post 1 is not measured: read the rod on the benchmark, then on the top.',
    );
    const field = new Field().site().set('1');
    field.top('1');
    expect(sound(judgeLevel(fakeView(field), '1', 0.8)).why).toBe(
      'The rod was read on the top of post 1, but that set-up hangs on no benchmark: read the rod on the benchmark from the same set-up.',
    );
  });
  it('does not count a reading from before the post was nudged', () => {
    const judgement = judge(0.8, (f) => {
      twice(f);
      f.add({ kind: 'stand', thing: post('1'), event: 'nudged' });
    });
    expect(judgement.verdict).toBe('unmeasured');
  });
  it('unchecked: read once, or hung on one benchmark reading', () => {
    const once = (f: Field) => {
      f.benchmark();
      f.top('1');
      f.benchmark();
    };
    expect(judge(0.8, once).why).toBe(
      'A misread rod would go unseen: read it on the top of post 1 once more.',
    );
    const oneBenchmark = (f: Field) => {
      f.benchmark();
      f.top('1');
      f.top('1');
    };
    expect(judge(0.8, oneBenchmark).why).toBe(
      'A misread benchmark would lift every top alike: read the rod on the benchmark once more before the level moves.',
    );
  });
  it('checked by a second set-up with its own benchmark reading', () => {
    const twoSetups = (f: Field) => {
      f.benchmark('1');
      f.top('1', 800, '1');
      f.benchmark('2');
      f.top('1', 800, '2');
    };
    expect(judge(0.8, twoSetups).checked).toBe(true);
  });
  it('unchecked at the near end of a long round of levels: what it would not notice is too much', () => {
    const round = (rodError: number) => {
      const plan = ringPlan('mm');
      const field = new Field({
        ...plan,
        instruments: { ...plan.instruments, rodError: mm(rodError) },
      }).site();
      field.set('1');
      const rod = (setup: string, on: HeightPoint, height: number) =>
        field.add({ kind: 'rod', setup, on, reading: mm(1500 - height) });
      const turning = (label: string): HeightPoint => ({ point: 'turning-point', label });
      rod('1', { point: 'benchmark' }, 0);
      rod('1', { point: 'top', hole: '1' }, 800);
      rod('2', { point: 'top', hole: '1' }, 800);
      rod('2', turning('1'), 300);
      rod('3', turning('1'), 300);
      rod('3', turning('2'), 100);
      rod('4', turning('2'), 100);
      rod('4', { point: 'benchmark' }, 0);
      return assess(field.log).holes.find(({ hole }) => hole === '1')!.set.level;
    };
    // Eight readings of one spare: a redundancy of 1/8 each, so 4.13 σ √8 goes unseen, and the nearer ones put 6/8 of it here.
    expect(round(1)).toMatchObject({ verdict: 'in', checked: true });
    expect(round(2)).toMatchObject({ verdict: 'in', checked: false });
    expect(round(2).why).toBe(
      'One misread rod could lift the top of post 1 by 18 mm unseen: read it once more, from a set-up nearer to the benchmark.',
    );
  });
});
