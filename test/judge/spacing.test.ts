import { describe, expect, it } from 'vitest';
import { judgeSpacing } from '../../src/judge/spacing.ts';
import type { Measured } from '../../src/measure/types.ts';
import { fakeView, fixAt, pointAt } from './fake-view.ts';
import { Field, post } from './field.ts';
import { sound } from './sound.ts';

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
