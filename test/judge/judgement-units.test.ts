import { describe, expect, it } from 'vitest';
import { judgePosition } from '../../src/judge/position.ts';
import { fakeView, fixAt, pointAt } from './fake-view.ts';
import { Field, len, post, ringPlan } from './field.ts';

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
