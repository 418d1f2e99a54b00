import { describe, expect, it } from 'vitest';
import { judgeDug } from '../../src/judge/dug.ts';
import { fakeView } from './fake-view.ts';
import { Field } from './field.ts';
import { sound } from './sound.ts';

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
