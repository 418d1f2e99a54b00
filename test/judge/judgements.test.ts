import { describe, expect, it } from 'vitest';
import { judgeDug } from '../../src/judge/dug.ts';
import { judgeLevel } from '../../src/judge/level.ts';
import { judgePlumb } from '../../src/judge/plumb.ts';
import { judgePosition } from '../../src/judge/position.ts';
import { judgeSpacing } from '../../src/judge/spacing.ts';
import type { Judgement } from '../../src/judge/types.ts';
import type { Lack, Measured } from '../../src/measure/types.ts';
import { fakeView, fixAt, leanOf, pointAt } from './fake-view.ts';
import { Field, holeStake, len, post, ringPlan, stake } from './field.ts';

/** What every judgement must hold, whatever it judged. */
function sound(judgement: Judgement): Judgement {
  const { verdict, chance, error, uncertainty, checked, text, why } = judgement;
  if (verdict === 'unmeasured') {
    expect([chance, error, uncertainty, checked]).toEqual([null, null, null, false]);
    expect(text).toBe('unmeasured');
  } else {
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(chance).toBeLessThanOrEqual(1);
    expect(text.startsWith(`${verdict}, `)).toBe(true);
    expect(text.endsWith(', unchecked')).toBe(!checked);
  }
  expect(why === '').toBe(verdict === 'in' && checked);
  if (why !== '') expect(why).toMatch(/^[A-Z].*\.$/);
  expect(`${text} ${why}`).not.toMatch(/NaN|undefined|null|Infinity|[-−]\d/);
  return judgement;
}

describe('judgePosition', () => {
  function judge(
    right: number,
    more: { sigma?: number; unseen?: number; thing?: typeof post; units?: 'ft-in-16' } = {},
  ) {
    const { sigma = 0.002, unseen = 0.008, thing = post, units } = more;
    const field = new Field(ringPlan(units ?? 'mm')).site().off(thing('1'), right, 0);
    const view = fakeView(field, {
      points: [pointAt(thing('1'), fixAt(field.placeOf(thing('1')), sigma, unseen))],
    });
    return sound(judgePosition(view, thing('1'), view.sited.get('1')!.site, 'post 2'));
  }

  it('in: on its mark', () => {
    expect(judge(0)).toMatchObject({
      verdict: 'in',
      error: 0,
      checked: true,
      text: 'in, 0 mm ± 4 mm',
      why: '',
    });
  });
  it('out, with how far and which way', () => {
    expect(judge(0.03)).toMatchObject({ verdict: 'out', text: 'out, 30 mm ± 4 mm' });
    expect(judge(0.03).why).toBe(
      'Post 1 is 30 mm off its mark, and 12 mm is allowed: it stands 30 mm too far clockwise seen from above.',
    );
    expect(judge(0.0159, { units: 'ft-in-16' }).why).toBe(
      'Post 1 is 5/8″ off its mark, and 1/2″ is allowed: it stands 5/8″ too far clockwise seen from above.',
    );
  });
  it('unsure, with the pull that would settle it and the push that would end it', () => {
    expect(judge(0.011).verdict).toBe('unsure');
    expect(judge(0.011).why).toBe(
      'Post 1 measures 11 mm off its mark, known to ± 4 mm, and 12 mm is allowed: it may be in or out. Pull to it from post 2, or move it 11 mm anticlockwise seen from above.',
    );
  });
  it('once in concrete it is not told to be moved', () => {
    const field = new Field().site().off(post('1'), 0.011, 0);
    field.add({ kind: 'pour', hole: '1', bags: 9 });
    const view = fakeView(field, { points: [pointAt(post('1'), fixAt(field.placeOf(post('1')), 0.002))] });
    expect(judgePosition(view, post('1'), view.sited.get('1')!.site, 'post 2').why).toMatch(
      /it may be in or out\. Pull to it from post 2\.$/,
    );
  });
  it('goes in, unsure, out as a post goes further off', () => {
    const verdicts = [0, 4, 8, 9, 11, 12, 13, 15, 16, 30].map((off) => judge(off / 1000).verdict);
    expect(verdicts).toEqual([
      'in',
      'in',
      'in',
      'unsure',
      'unsure',
      'unsure',
      'unsure',
      'unsure',
      'out',
      'out',
    ]);
  });
  it('is unsure, never out, of a post on its mark that is hardly known', () => {
    expect(judge(0, { sigma: 0.2 }).verdict).toBe('unsure');
  });
  it('tells a stake to be moved', () => {
    expect(judge(0.03, { thing: holeStake }).why).toBe(
      'Stake 1 is 30 mm off its mark, and 24 mm is allowed: it stands 30 mm too far clockwise seen from above. Move it, and pull to it again.',
    );
  });
  it('unchecked: nothing guards it, or not well enough', () => {
    expect(judge(0, { unseen: Number.POSITIVE_INFINITY }).why).toBe(
      'Nothing guards the place of post 1: one misread pull would move it unseen. Pull to it from post 2.',
    );
    expect(judge(0, { unseen: 0.02 })).toMatchObject({
      verdict: 'in',
      checked: false,
      text: 'in, 0 mm ± 4 mm, unchecked',
    });
    expect(judge(0, { unseen: 0.02 }).why).toBe(
      'One misread pull could move post 1 by 20 mm unseen. Pull to it from post 2.',
    );
  });

  const lacks: [Lack, string][] = [
    [
      { reason: 'no-pulls', pullFrom: [stake('A'), stake('B')] },
      'Post 1 is not measured: pull to it from A and B.',
    ],
    [
      { reason: 'no-pulls', pullFrom: [stake('B'), post('2'), post('3')] },
      'Post 1 is not measured: pull to it from B and post 2.',
    ],
    [{ reason: 'one-pull', pullFrom: [stake('B')] }, 'One pull does not fix post 1: pull to it from B too.'],
    [
      { reason: 'in-line', pullFrom: [post('3')] },
      'The pulls to post 1 lie in one line and do not fix it: pull to it from post 3.',
    ],
    [
      { reason: 'not-connected', pullFrom: [stake('A')] },
      'The pulls to post 1 start from things that are not fixed themselves: pull to it from A.',
    ],
  ];
  for (const [lack, why] of lacks) {
    it(`unmeasured: ${lack.reason} from ${lack.pullFrom.length}`, () => {
      const view = fakeView(new Field().site(), { points: [pointAt(post('1'), null, { lack })] });
      const judgement = sound(judgePosition(view, post('1'), view.sited.get('1')!.site, ''));
      expect(judgement).toMatchObject({ verdict: 'unmeasured', why });
    });
  }
  it('unmeasured before A and B are placed', () => {
    const view = fakeView(new Field());
    expect(sound(judgePosition(view, post('1'), null, '')).why).toBe(
      'Nothing can be placed yet: say where A and B stand first.',
    );
  });
});

describe('judgePlumb', () => {
  /** A lean in the site frame; post 1 stands at the front of the ring, so its outer face looks along +y. */
  function judge(
    x: number,
    y: number,
    sides: readonly ('front' | 'left' | 'back' | 'right')[],
    units?: 'ft-in-16',
  ) {
    const field = new Field(ringPlan(units ?? 'mm')).site().set('1');
    for (const side of sides) field.plumb('1', side);
    const lean = sides.length < 2 ? null : leanOf(x, y);
    const view = fakeView(field, { points: [pointAt(post('1'), fixAt(field.placeOf(post('1'))), { lean })] });
    return sound(judgePlumb(view, '1'));
  }
  const all = ['front', 'left', 'back', 'right'] as const;

  it('in and checked when both directions were read twice', () => {
    expect(judge(0.001, 0, all)).toMatchObject({
      verdict: 'in',
      checked: true,
      text: 'in, 1 mm ± 1 mm in 1 m',
    });
  });
  it('out, with how much and which way', () => {
    expect(judge(0, -0.0104, all, 'ft-in-16').why).toBe(
      'Post 1 leans 1/2″ in 4′ toward the pier, and 1/4″ in 4′ is allowed.',
    );
  });
  it('unsure near the limit', () => {
    expect(judge(0, 0.0048, all).why).toBe(
      'Post 1 leans 5 mm in 1 m away from the pier, known to ± 1 mm in 1 m, and 5 mm in 1 m is allowed: it may be in or out. Bring it nearer plumb, or hold the level on it again.',
    );
  });
  it('judges the whole lean, not each face: 4 mm in a metre both ways is more than 5', () => {
    expect(judge(0.004, 0.004, all).verdict).toBe('unsure');
    expect(judge(0.005, 0.005, all).verdict).toBe('out');
  });
  it('unmeasured: says which faces are wanted', () => {
    expect(judge(0, 0, []).why).toBe(
      'The lean of post 1 is not measured: hold the level on two faces side by side.',
    );
    expect(judge(0, 0, ['front']).why).toBe(
      'The lean of post 1 is measured one way only: hold the level on the anticlockwise or clockwise face too.',
    );
  });
  it('unchecked: says which faces would guard it', () => {
    expect(judge(0, 0, ['front', 'left']).why).toBe(
      'A misread level would go unseen: hold it on the inner and clockwise faces too.',
    );
    expect(judge(0, 0, ['front', 'left', 'left']).why).toBe(
      'A misread level would go unseen: hold it on the inner face too.',
    );
    expect(judge(0, 0, ['front', 'left', 'left', 'front']).checked).toBe(true);
  });
  it('unchecked when a face and the one opposite disagree', () => {
    const field = new Field().site().set('1');
    field.plumb('1', 'front', 3);
    field.plumb('1', 'back', 3);
    field.plumb('1', 'left');
    field.plumb('1', 'right');
    const view = fakeView(field, { points: [pointAt(post('1'), null, { lean: leanOf(0, 0) })] });
    expect(sound(judgePlumb(view, '1')).why).toBe(
      'Two plumb readings on the inner face or opposite do not agree: hold the level there again and strike the wrong one.',
    );
  });
  it('a lean out past one face agrees with a lean in behind the other', () => {
    const field = new Field().site().set('1');
    field.plumb('1', 'front', 3);
    field.plumb('1', 'back', -3);
    field.plumb('1', 'left');
    field.plumb('1', 'right');
    const view = fakeView(field, { points: [pointAt(post('1'), null, { lean: leanOf(0, 0.003) })] });
    expect(judgePlumb(view, '1').checked).toBe(true);
  });
});

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
});

describe('judgeDug', () => {
  function judge(readings: readonly [number, number][], required: number | null = 1, again = false) {
    const field = new Field().site();
    for (const [depth, width] of readings) field.dig('1', depth, width);
    if (again) field.tick('clean', '1');
    const dug = judgeDug(fakeView(field), '1', required, 0.4);
    sound(dug.depth);
    sound(dug.width);
    return dug;
  }

  it('deep enough only beyond the doubt of the reading', () => {
    const verdicts = [950, 991, 992, 1000, 1008, 1009, 1200].map(
      (depth) => judge([[depth, 400]]).depth.verdict,
    );
    expect(verdicts).toEqual(['out', 'out', 'unsure', 'unsure', 'unsure', 'in', 'in']);
  });
  it('aims deep enough for the reading to be in', () => {
    const aim = judge([]).aimDepth!;
    expect(judge([[Math.ceil(aim * 1000), 400]]).depth.verdict).toBe('in');
    expect(aim).toBeLessThan(1.01);
  });
  it('says how much deeper', () => {
    expect(judge([[950, 400]]).depth.why).toBe(
      'Hole 1 is 50 mm short of the 1000 mm it must have: dig 58 mm deeper. A misread tape would go unseen: read the hole again.',
    );
    expect(judge([[1003, 400]]).depth.text).toBe('unsure, 1003 mm of 1000 mm, unchecked');
  });
  it('lets a foot be half an inch narrow and no more (ACI 117-10, from memory)', () => {
    expect(judge([[1020, 400]]).width.verdict).toBe('in');
    expect(judge([[1020, 390]]).width.verdict).toBe('unsure');
    expect(judge([[1020, 370]]).width).toMatchObject({ verdict: 'out', tolerance: 0.0127 });
    expect(judge([[1020, 600]]).width.verdict).toBe('in');
  });
  it('judges the last reading, and is checked by a second one alike, or by the tick that it measures the same', () => {
    expect(
      judge([
        [950, 400],
        [1020, 400],
      ]).depth,
    ).toMatchObject({ verdict: 'in', checked: false });
    expect(
      judge([
        [1020, 400],
        [1022, 402],
      ]).depth,
    ).toMatchObject({ verdict: 'in', checked: true });
    // The first fell short: the hole was dug deeper, and nobody looked twice at what it is now.
    expect(
      judge([
        [1003, 400],
        [1020, 400],
      ]).depth,
    ).toMatchObject({ verdict: 'in', checked: false });
    expect(judge([[1020, 400]], 1, true).width).toMatchObject({ verdict: 'in', checked: true });
  });
  it('unmeasured before it is dug, or before the frost depth is known', () => {
    expect(judge([]).depth.why).toBe('Hole 1 is not dug yet, or its depth is not logged.');
    expect(judge([]).width.verdict).toBe('unmeasured');
    expect(judge([[2000, 400]], null)).toMatchObject({ aimDepth: null, depth: { verdict: 'unmeasured' } });
  });
});

describe('judgeSpacing', () => {
  const pull = (redundancy: number): Measured['pulls'][number] => ({
    entry: 'entry-0005',
    current: true,
    predicted: 2.86,
    residual: 0,
    sigma: 0.002,
    redundancy,
    standardised: 0,
    smallestCaught: 0.01,
  });
  function judge(right: number, pulls: Measured['pulls'] = [], measured = true) {
    const field = new Field().site().off(post('2'), right, 0);
    field.pull(post('1'), post('2'), { side: 'left' });
    const points = ['1', '2'].map((hole) =>
      pointAt(post(hole), measured || hole === '1' ? fixAt(field.placeOf(post(hole))) : null),
    );
    const view = fakeView(field, { points, pulls });
    return sound(judgeSpacing(view, view.sited.get('1')!, view.sited.get('2')!, null));
  }

  it('in, long and short', () => {
    expect(judge(0)).toMatchObject({ verdict: 'in', text: 'in, 0 mm ± 8 mm' });
    // Post 2 stands 60° round from post 1: a step to the right lengthens their distance by its cosine, 0.866.
    expect(judge(0.04).text).toBe('out, 35 mm ± 8 mm long');
    expect(judge(-0.04).text).toBe('out, 35 mm ± 8 mm short');
    expect(judge(0.04).why).toBe('Post 1 to post 2 measures 3035 mm, 35 mm too long, and 15 mm is allowed.');
  });
  it('without a pull between the two, bounds the doubt by the sum of both', () => {
    expect(judge(0).uncertainty).toBeCloseTo(1.959964 * 0.004, 8);
  });
  it('with a pull between them, takes the doubt of the adjusted pull: σ√(1 − r)', () => {
    expect(judge(0, [pull(0.36)]).uncertainty).toBeCloseTo(1.959964 * 0.002 * 0.8, 8);
    expect(judge(0.0162, [pull(0)]).why).toBe(
      'Post 1 to post 2 measures 3014 mm, 14 mm too long, known to ± 4 mm, and 15 mm is allowed: it may be in or out. Pull between them once more.',
    );
  });
  it('unmeasured until both are', () => {
    expect(judge(0, [], false).why).toBe('Post 1 to post 2 is not known until post 2 is measured.');
  });
});

describe('units', () => {
  it('every figure is in the units of the job', () => {
    const field = new Field(
      ringPlan('ft-in-16', { tolerances: { ...ringPlan().tolerances, position: len('1/2″', 'ft-in-16') } }),
    );
    field.site().off(post('1'), 0, 0.0159);
    const view = fakeView(field, { points: [pointAt(post('1'), fixAt(field.placeOf(post('1')), 0.0016))] });
    const { text, why } = judgePosition(view, post('1'), view.sited.get('1')!.site, '');
    expect(text).toBe('out, 5/8″ ± 1/8″');
    expect(why).toContain('it stands 5/8″ too far away from the pier.');
  });
});
