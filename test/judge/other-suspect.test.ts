import { describe, expect, it } from 'vitest';
import { otherSuspectWords } from '../../src/judge/other-suspect.ts';
import { situate } from '../../src/judge/situation.ts';
import { viewOf } from '../../src/judge/view.ts';
import { Field, post, stake } from './field.ts';

const A = stake('A');
const B = stake('B');
const words = (
  field: Field,
  ...ends: Parameters<typeof otherSuspectWords> extends [unknown, ...infer Ends] ? Ends : never
) => otherSuspectWords(viewOf(situate(field.log))!, ...ends);

function ring(): Field {
  const field = new Field().site();
  for (let i = 0; i < 2; i++) field.pull(A, B);
  for (const hole of ['1', '2', '3', '4', '5', '6']) field.set(hole).pullsTo(post(hole), [A, B]);
  return field;
}

describe('when a new reading is beyond belief, the other suspect', () => {
  it('is the earlier pull that looks misread, by name', () => {
    const field = ring();
    for (const other of ['1', '3', '5']) field.pull(post(other), post('2'));
    field.pull(post('4'), post('2'), { error: 0.3 });
    expect(words(field, post('6'), post('2'))).toMatch(
      /^“Post 4, the middle of the outer face to post 2, the middle of the outer face, \d+.*” looked misread before this one: it may be that one that is wrong\.$/,
    );
    // Another post has nothing to do with it.
    expect(words(field, A, post('6'))).toBe(
      'Or an earlier tape to post 6 is wrong: nothing guards them yet.',
    );
  });

  it('is any earlier pull where nothing guards them', () => {
    expect(words(ring(), post('1'), post('2'))).toBe(
      'Or an earlier tape to post 1 is wrong: nothing guards them yet.',
    );
  });

  it('is nobody where all are guarded and none looks misread, or nothing was pulled before', () => {
    const field = ring();
    for (const other of ['1', '3', '5']) field.pull(post(other), post('2'));
    expect(words(field, A, post('2'))).toBe('');
    const fresh = new Field().site();
    fresh.set('1');
    expect(words(fresh, A, post('1'))).toBe('');
    expect(words(fresh, A, B)).toBe('');
  });
});
