import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import { chanceWithin } from '../../src/judge/chance.ts';
import { situate } from '../../src/judge/situation.ts';
import { judgeTops, topsOf } from '../../src/judge/tops.ts';
import type { Judgement } from '../../src/judge/types.ts';
import { type JobView, viewOf } from '../../src/judge/view.ts';
import { Field, mm, post, ringPlan } from './field.ts';

const POSTS = ['1', '2', '3', '4', '5', '6'];
const PLAN = ringPlan('mm', {});
const withTops = (tops: number) => ringPlan('mm', { tolerances: { ...PLAN.tolerances, tops: mm(tops) } });

/** Posts that stand at these heights, millimetres, each read `times` from one set-up. */
function levelled(
  heights: Readonly<Record<string, number>>,
  { plan = PLAN, times = 2, lift = 0 } = {},
): Field {
  const field = new Field(plan).site();
  for (const hole of Object.keys(heights)) field.set(hole);
  for (let i = 0; i < times; i++) {
    field.add({ kind: 'rod', setup: '1', on: { point: 'benchmark' }, reading: mm(1500 + lift) });
    for (const [hole, height] of Object.entries(heights)) field.top(hole, height);
  }
  return field;
}

const alike = (height: number, but: Readonly<Record<string, number>> = {}) => ({
  ...Object.fromEntries(POSTS.map((hole) => [hole, height])),
  ...but,
});

const viewOfField = (field: Field): JobView => viewOf(situate(field.log))!;
const judge = (field: Field, hole: string): Judgement => judgeTops(viewOfField(field), hole);

describe('judgeTops', () => {
  it('level with the others and against the benchmark are two things', () => {
    const field = levelled(alike(820));
    const { holes } = assess(field.log);
    for (const { hole, set } of holes.filter((each) => each.hole !== 'P')) {
      expect([hole, set.level.verdict, set.tops.verdict]).toEqual([hole, 'out', 'in']);
      expect(set.tops).toMatchObject({ error: 0, checked: true, tolerance: 0.006 });
    }
  });

  it('a benchmark misread by any amount says nothing against the tops among themselves', () => {
    const right = levelled(alike(800, { 3: 803 }));
    const lifted = levelled(alike(800, { 3: 803 }), { lift: 400 });
    for (const hole of POSTS) {
      const [one, other] = [judge(right, hole), judge(lifted, hole)];
      expect(other.error).toBeCloseTo(one.error!, 9);
      expect(other.chance).toBeCloseTo(one.chance!, 9);
    }
  });

  it('one that is out by itself does not drag the common level along', () => {
    const field = levelled(alike(800, { 4: 830 }));
    expect(judge(field, '4')).toMatchObject({ verdict: 'out', text: 'out, 30 mm ± 2 mm high' });
    expect(judge(field, '4').why).toBe(
      'The top of post 4 is 30 mm higher than the common level of the tops, and 6 mm is allowed.',
    );
    for (const hole of POSTS.filter((each) => each !== '4'))
      expect(judge(field, hole)).toMatchObject({ verdict: 'in', error: 0 });
  });

  it('its own tolerance counts where it is given', () => {
    const heights = alike(800, { 2: 805 });
    expect(judge(levelled(heights), '2').verdict).toBe('in');
    expect(judge(levelled(heights, { plan: withTops(2) }), '2')).toMatchObject({
      verdict: 'out',
      tolerance: 0.002,
    });
  });

  it('is known better than against the benchmark, and its chance is two-sided', () => {
    const field = levelled(alike(800));
    const { set } = assess(field.log).holes[0]!;
    // Six tops read twice by one level: variance of one less the mean, 1/2 (1 − 1/6) of a reading's.
    const sigma = 0.001 * Math.sqrt((1 - 1 / 6) / 2);
    expect(set.tops.uncertainty).toBeCloseTo(1.959963984540054 * sigma, 9);
    expect(set.tops.uncertainty!).toBeLessThan(set.level.uncertainty!);
    expect(set.tops.chance).toBeCloseTo(chanceWithin(0, sigma, 0.006), 9);
  });

  it('each top is taken from its own height in the plan', () => {
    const field = levelled({ ...alike(800), P: 500 });
    expect(judge(field, 'P')).toMatchObject({ verdict: 'in', error: 0 });
  });

  it('unchecked while its own reading is not guarded; a benchmark read once is no fault here', () => {
    const once = judge(levelled(alike(800), { times: 1 }), '1');
    expect(once.checked).toBe(false);
    expect(once.why).toBe('A misread rod would go unseen: read it on the top of post 1 once more.');
    const field = levelled(alike(800), { times: 1 });
    for (const hole of POSTS) field.top(hole, 800);
    const { set } = assess(field.log).holes[0]!;
    expect(set.tops.checked).toBe(true);
    expect(set.level.checked).toBe(false);
  });

  it('unchecked where tops hang on two set-ups, and the benchmark was read once from one of them', () => {
    const field = new Field(PLAN).site();
    for (const hole of POSTS) field.set(hole);
    for (const [setup, holes] of [
      ['1', POSTS.slice(0, 3)],
      ['2', POSTS.slice(3)],
    ] as const) {
      field.benchmark(setup);
      for (const hole of [...holes, ...holes]) field.top(hole, 800, setup);
    }
    expect(judge(field, '1')).toMatchObject({ verdict: 'in', checked: false });
    expect(judge(field, '1').why).toContain('Not all tops were read from one set-up');
    field.benchmark('1');
    expect(judge(field, '1').checked).toBe(false);
    field.benchmark('2');
    expect(judge(field, '1').checked).toBe(true);
  });

  it('of two alone, both are to be guarded', () => {
    const field = levelled({ 1: 800, 2: 800 }, { times: 1 });
    field.top('1', 800);
    expect(judge(field, '1').why).toBe(
      'A misread rod would go unseen: read it on the top of post 2 once more.',
    );
    field.top('2', 800);
    expect(judge(field, '1').checked).toBe(true);
  });

  it('unmeasured: alone, not read, or moved since', () => {
    const field = levelled({ 1: 800 });
    expect(judge(field, '1')).toMatchObject({
      verdict: 'unmeasured',
      why: 'Whether post 1 is level with the others is not known until another top is measured.',
    });
    expect(judge(field, '2').why).toBe('The top of post 2 is not measured.');
    const moved = levelled(alike(800));
    moved.add({ kind: 'stand', thing: post('1'), event: 'nudged' });
    expect(judge(moved, '1').verdict).toBe('unmeasured');
    expect(judge(moved, '2').verdict).toBe('in');
  });

  it('opens no gate and shuts none', () => {
    const field = levelled(alike(800, { 2: 804 }), { plan: withTops(2) });
    const hole = assess(field.log).holes.find((each) => each.hole === '2')!;
    expect(hole.set.tops.verdict).toBe('out');
    expect(hole.set.level).toMatchObject({ verdict: 'in', checked: true });
    expect(hole.pourGate.items.find(({ item }) => item === 'level')!.green).toBe(true);
    expect(hole.pourGate.items.some(({ item }) => item === 'tops')).toBe(false);
  });
});

describe('topsOf', () => {
  it('names the highest and the lowest, and the one that governs', () => {
    const tops = topsOf(viewOfField(levelled(alike(800, { 2: 805, 5: 795 }))));
    expect(tops.highest).toMatchObject({ hole: '2' });
    expect(tops.lowest).toMatchObject({ hole: '5' });
    expect(tops.text).toBe(
      '6 of 7 tops are measured. Post 2 stands highest, 5 mm above their common level; post 5 lowest, 5 mm below it: 10 mm ± 2 mm between them, each from its own height in the plan. Where all are cut to one line, post 5 governs.',
    );
  });
  it('does not tell apart what the rod cannot', () => {
    expect(topsOf(viewOfField(levelled(alike(800, { 2: 801 })))).text).toBe(
      '6 of 7 tops are measured, and no two of them are known to differ.',
    );
  });
  it('does not take for a difference what luck makes of the two farthest apart', () => {
    // Read once, σ = 1 mm: of two, 3.5 mm is 2.5 of its own √2 σ; of six, the two farthest apart are so by luck alone.
    const of = (heights: Readonly<Record<string, number>>) =>
      topsOf(viewOfField(levelled(heights, { times: 1 }))).text;
    expect(of({ 1: 800, 2: 803.5 })).toContain('Post 2 stands highest');
    expect(of(alike(800, { 1: 798.25, 2: 801.75 }))).toBe(
      '6 of 7 tops are measured, and no two of them are known to differ.',
    );
    expect(of(alike(800, { 1: 797.5, 2: 802.5 }))).toContain('Post 2 stands highest');
  });
  it('says so of none and of one', () => {
    expect(assess([]).tops.text).toBe('No top is measured.');
    expect(topsOf(viewOfField(levelled({}))).text).toBe('No top is measured.');
    expect(topsOf(viewOfField(levelled({ 1: 800 }))).text).toBe(
      'One top is measured: it takes two to be level with one another.',
    );
  });
});
