import { describe, expect, it } from 'vitest';
import { judgePosition } from '../../src/judge/position.ts';
import type { Lack } from '../../src/measure/types.ts';
import { fakeView, fixAt, pointAt } from './fake-view.ts';
import { Field, holeStake, post, ringPlan, stake } from './field.ts';
import { sound } from './sound.ts';

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
