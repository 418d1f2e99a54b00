import { describe, expect, test } from 'vitest';
import { typedLength } from '../../../src/job/length.ts';
import { readPoint, textsOf } from '../../../src/screens/plan/read-point.ts';

const metres = (typed: string) => {
  const length = typedLength(typed, 'm', 'Sample', { min: -300 });
  if (!length.ok) throw new Error(length.problem.text);
  return length.value;
};

describe('a point out of its fields', () => {
  test('is read whole, minus and all', () => {
    expect(readPoint({ label: ' G1 ', right: '-1.25', front: '2' }, 'm', ['1'], null)).toEqual({
      point: { label: 'G1', right: metres('-1.25'), front: metres('2') },
    });
  });

  test('is refused with a sentence at each field that is wrong', () => {
    const read = readPoint({ label: '1', right: '', front: 'x' }, 'm', ['1'], null);
    expect(read).toEqual({
      faults: {
        label: 'Label: there is a hole “1” already; give this one another.',
        right: 'To the right is empty: type a length, such as 3.825.',
        front: 'To the front: “x” is not a length; type it like 3.825.',
      },
    });
  });

  test('cannot have a label that no stake could carry, nor one that objects have', () => {
    for (const label of ['', 'a,b', 'x'.repeat(13), 'constructor']) {
      const read = readPoint({ label, right: '1', front: '1' }, 'm', [], null);
      expect(read, label).toMatchObject({ faults: { label: expect.stringContaining('Label') } });
    }
  });

  test('keeps a length whose text was left alone, finer than it is shown', () => {
    const before = { label: '1', right: metres('1.2345'), front: metres('0') };
    const texts = textsOf(before, 'm');
    expect(texts.right).toBe('1.235 m');
    expect(readPoint({ ...texts, label: '2' }, 'm', [], before)).toEqual({
      point: { ...before, label: '2' },
    });
  });
});
