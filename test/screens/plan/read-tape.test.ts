import { describe, expect, test } from 'vitest';
import type { TapeSpec } from '../../../src/job/plan-schema.ts';
import { readTape, type TapeTexts, tapeTexts } from '../../../src/screens/plan/read-tape.ts';
import { inches } from '../../job/sample.ts';

const UNITS = 'ft-in-16';
const RED: TapeTexts = {
  ...tapeTexts(null, UNITS),
  label: 'Red',
  nominal: '100′',
  actual: '100′ 0 1/4″',
};
const read = (texts: Partial<TapeTexts>, taken: readonly string[] = [], before: TapeSpec | null = null) =>
  readTape({ ...RED, ...texts }, UNITS, taken, before);

describe('a tape out of its fields', () => {
  test('is a length that is printed and one that is there, and nothing else that was not typed', () => {
    expect(read({})).toEqual({
      tape: { label: 'Red', nominal: inches('100′'), actual: inches('100′ 0 1/4″'), zero: inches('0″') },
    });
  });

  test('an end that makes readings too long is taken away from them', () => {
    const zero = (texts: Partial<TapeTexts>) => {
      const one = read(texts);
      return 'tape' in one ? one.tape.zero : null;
    };
    expect(zero({ end: 'long', zero: '1/16″' })).toEqual({
      ...inches('1/16″'),
      m: -0.0254 / 16,
      typed: '-1/16″',
    });
    expect(zero({ end: 'short', zero: '1/16″' })).toEqual(inches('1/16″'));
  });

  test('degrees and pounds are kept as °C and newtons', () => {
    const one = read({
      material: 'steel',
      temperature: '68',
      tension: '11',
      stiffness: '90000',
      weight: '2',
    });
    expect(one).toMatchObject({ tape: { temperature: 20, expansion: 11.6e-6 } });
    const { tension, stiffness, weight } = 'tape' in one ? one.tape : ({} as TapeSpec);
    // A pound is 4.4482216152605 N (NIST SP 811).
    expect(tension).toBeCloseTo(11 * 4.4482216152605, 9);
    expect(stiffness).toBeCloseTo(90000 * 4.4482216152605, 5);
    expect(weight).toBeCloseTo((2 * 4.4482216152605) / 30.48, 12);
  });

  test('is refused with a sentence at each field that is wrong', () => {
    const one = read({
      label: 'a,b',
      nominal: '',
      actual: 'long',
      end: 'long',
      zero: '-1',
      temperature: 'hot',
      weight: '-1',
    });
    const faults = 'faults' in one ? one.faults : null;
    expect(faults).toMatchObject({
      label: 'Written on the tape: “a,b” will not do; type 1 to 12 letters or digits, such as Red.',
      nominal: 'It reads is empty: type a length, such as 12′ 6 1/2″.',
      actual: 'Where there really are: “long” is not a length; type it like 12′ 6 1/2″.',
      temperature: 'Temperature it is true at: “hot” is not a number; type one from -40 to 158.',
      tension: null,
    });
    expect(faults?.zero).toMatch(/^Too much or too little by: /);
    expect(faults?.weight).toMatch(/^Weight: -1 is out of range/);
  });

  test('a label stands for one tape', () => {
    expect(read({}, ['Red'])).toMatchObject({
      faults: { label: 'Written on the tape: there is a tape “Red” already; mark this one otherwise.' },
    });
  });

  test('a tape that is a foot out is none', () => {
    const one = read({ actual: '10′' });
    expect('faults' in one && one.faults.actual).toMatch(/^Where there really are: no tape is that far/);
  });

  test('what was left alone stays as it was, to the last digit', () => {
    const first = read({ end: 'long', zero: '1/16', temperature: '71', tension: '10.3' });
    const tape = 'tape' in first ? { ...first.tape, temperature: 21.66666, expansion: 11.5e-6 } : null;
    expect(readTape(tapeTexts(tape, UNITS), UNITS, [], tape)).toEqual({ tape });
  });
});
