import { describe, expect, it } from 'vitest';
import { judgePlumb } from '../../src/judge/plumb.ts';
import { fakeView, fixAt, leanOf, pointAt } from './fake-view.ts';
import { Field, post, ringPlan } from './field.ts';
import { sound } from './sound.ts';

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
