import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  EXAMPLES,
  formatLength,
  METRES_PER_FOOT,
  parseLength,
  stepOf,
  UNITS,
  type Units,
} from '../../src/units/index.ts';

const metres = (text: string, units: Units): number => {
  const result = parseLength(text, units, 'Pull');
  if (!result.ok) throw new Error(result.problem.text);
  return result.value;
};
const refusal = (text: string, units: Units, bounds = {}): string => {
  const result = parseLength(text, units, 'Pull', bounds);
  if (result.ok) throw new Error(`read as ${result.value} m`);
  expect(result.problem.field).toBe('Pull');
  return result.problem.text;
};

describe('NIST Handbook 44, Appendix C: 1 ft = 0.3048 m and 1 in = 2.54 cm, exactly', () => {
  test.each([
    ['1′', 0.3048],
    ['1″', 0.0254],
    ['100 ft', 30.48],
    ['12 in', 0.3048],
    ['1/16″', 0.0015875],
    ['1/64″', 0.000396875],
    ['12′ 6 1/2″', 3.8227],
    ['18′ 6 5/16″', 5.6467375],
  ])('%s is %d m, to the last bit', (text, expected) => {
    expect(metres(text, 'm')).toBe(expected);
  });
});

describe('feet and inches, in every spelling', () => {
  test.each([
    `12' 6 1/2"`,
    `12'6 1/2"`,
    `12'-6 1/2"`,
    `12' - 6 1/2"`,
    `12′ 6 1/2″`,
    `12′ 6½″`,
    `12’ 6½”`,
    `12' 6 1/2''`,
    `12' 6.5"`,
    `12'6.5`,
    `12 ft 6 1/2 in`,
    `12ft6.5in`,
    `12 ft. 6 1/2 in.`,
    `12 feet 6 1/2 inches`,
    `150.5 in`,
    `150 1/2"`,
    `  12'  6   1 / 2 "  `,
    '１２′ 6 1⁄2″',
  ])('%s is 12 ft 6 1/2 in in a job of any units', (text) => {
    for (const units of UNITS) expect(metres(text, units)).toBe(3.8227);
  });

  test.each([
    ['12 6 1/2', 3.8227],
    ['12-6-1/2', 3.8227],
    ['12 6.5', 3.8227],
    ['12 6', 3.81],
    ['12 0', 3.6576],
    ['6 1/2', 0.1651],
    ['6½', 0.1651],
    ['1/2', 0.0127],
    ['0 1/2', 0.0127],
    ['5 0 1/16', 1.5255875],
  ])('without marks, %s', (text, expected) => {
    expect(metres(text, 'ft-in-16')).toBe(expected);
    expect(metres(text, 'ft-in-32')).toBe(expected);
  });

  test('feet with decimals', () => {
    expect(metres('12.5 ft', 'm')).toBeCloseTo(3.81, 12);
    expect(metres('12.5′', 'ft-in-16')).toBeCloseTo(3.81, 12);
    expect(metres('12.54', 'ft')).toBeCloseTo(12.54 * METRES_PER_FOOT, 12);
    expect(metres('.5', 'ft')).toBeCloseTo(0.1524, 12);
  });
});

describe('metric', () => {
  test.each([
    ['3.825', 'm', 3.825],
    ['3,825', 'm', 3.825],
    ['3825', 'mm', 3.825],
    ['3825.5', 'mm', 3.8255],
    ['0,5', 'mm', 0.0005],
    ['3.825 m', 'mm', 3.825],
    ['3.825M', 'ft-in-16', 3.825],
    ['382.5cm', 'ft', 3.825],
    ['382,5 cm', 'm', 3.825],
    ['3825 mm', 'm', 3.825],
    ['3.', 'm', 3],
  ] as const)('%s in a job in %s', (text, units, expected) => {
    expect(metres(text, units)).toBe(expected);
  });

  test('a minus sign in any spelling, where less than zero is allowed', () => {
    for (const minus of ['-', '−', '–', '- '])
      expect(parseLength(`${minus}0.5`, 'm', 'Top', { min: -1 })).toEqual({ ok: true, value: -0.5 });
    expect(parseLength(`-1' 6"`, 'ft-in-16', 'Top', { min: -1 })).toEqual({ ok: true, value: -0.4572 });
  });
});

describe('what is refused, and the sentence', () => {
  test.each([
    ['', 'm', 'Pull is empty: type a length, such as 3.825.'],
    ['   ', 'ft', 'Pull is empty: type a length, such as 12.54.'],
    ['abc', 'm', 'Pull: “abc” is not a length; type it like 3.825.'],
    ['1e9', 'm', 'Pull: “1e9” is not a length; type it like 3.825.'],
    ['Infinity', 'm', 'Pull: “Infinity” is not a length; type it like 3.825.'],
    ['12--6', 'ft-in-16', 'Pull: “12--6” is not a length; type it like 12′ 6 1/2″.'],
    ['12', 'ft-in-16', 'Pull: “12” could be feet or inches; type 12′ or 12″.'],
    ['6.5', 'ft-in-32', 'Pull: “6.5” could be feet or inches; type 6.5′ or 6.5″.'],
    ['12 6', 'm', 'Pull: “12 6” has more than one number and no marks; type it like 3.825.'],
    ['12 6 1/2', 'ft', 'Pull: “12 6 1/2” has more than one number and no marks; type it like 12.54.'],
    ['12,54', 'ft', 'Pull: “12,54” has a comma; type it like 12.54.'],
    [
      '1,250',
      'mm',
      'Pull: “1,250” could have a comma for thousands or for decimals; type 1250 mm or 1.250 mm.',
    ],
    ['5/15', 'ft-in-16', 'Pull: “5/15” has a fraction that no tape shows; type it like 12′ 6 1/2″.'],
    ['1/0', 'ft-in-16', 'Pull: “1/0” has a fraction that no tape shows; type it like 12′ 6 1/2″.'],
    ['9/8″', 'ft-in-16', 'Pull: “9/8″” has a fraction that no tape shows; type it like 12′ 6 1/2″.'],
    ['61/2″', 'ft-in-16', 'Pull: “61/2″” has a fraction that no tape shows; type it like 12′ 6 1/2″.'],
    ['12 12', 'ft-in-16', 'Pull: “12 12” has 12 inches or more beside the feet; type it like 12′ 6 1/2″.'],
    [
      '12.5′ 3″',
      'ft-in-16',
      'Pull: “12.5′ 3″” has both decimals of a foot and inches; type it like 12′ 6 1/2″.',
    ],
    [
      '6.5 1/2″',
      'ft-in-16',
      'Pull: “6.5 1/2″” has both decimals and a fraction of an inch; type it like 12′ 6 1/2″.',
    ],
    ['0', 'm', 'Pull: “0” must be more than zero; type it like 3.825.'],
    ['-3', 'mm', 'Pull: “-3” must be more than zero; type it like 3825.'],
    ['1000000000', 'm', 'Pull: “1000000000” is more than 300.000 m; type that or less.'],
    ['985′', 'ft-in-16', 'Pull: “985′” is more than 984′ 3″; type that or less.'],
    ['1'.repeat(41), 'm', `Pull: “${'1'.repeat(24)}…” has more than 40 characters; type it like 3.825.`],
  ] as const)('%s in a job in %s', (text, units, expected) => {
    expect(refusal(text, units)).toBe(expected);
  });

  test('bounds, by number and by name', () => {
    expect(refusal('0.5', 'm', { min: 1 })).toBe('Pull: “0.5” is less than 1.000 m; type that or more.');
    expect(refusal('-0.5', 'm', { min: 0 })).toBe('Pull: “-0.5” must not be below zero; type it like 3.825.');
    expect(refusal('31', 'm', { max: 30, maxName: 'the tape’s length' })).toBe(
      'Pull: “31” is more than the tape’s length; type that or less.',
    );
    expect(refusal('450', 'm', { min: 0, max: 5 })).toBe(
      'Pull: “450” is more than 5.000 m; type that or less, or 450 mm.',
    );
    expect(refusal('0.1', 'm', { min: 0.2, minName: 'the post’s width' })).toBe(
      'Pull: “0.1” is less than the post’s width; type that or more.',
    );
    expect(parseLength('0', 'ft-in-16', 'Gap', { min: 0 })).toEqual({ ok: true, value: 0 });
  });

  test.each([
    '"',
    "'",
    '/',
    '-',
    '.',
    ',',
    '1/',
    '/2',
    "'6",
    '1 2 3',
    '1/2 1/2',
    'm',
    '1 m 2',
    "1'2'",
    '--1',
  ])('fragment %s is no length, in any units', (text) => {
    for (const units of UNITS) expect(refusal(text, units, { min: -300 })).toMatch(/; type .+\.$/);
  });

  test('every example that a refusal shows is itself good', () => {
    for (const units of UNITS) expect(metres(EXAMPLES[units], units)).toBeGreaterThan(3.8);
  });
});

describe('properties', () => {
  test.each(UNITS)('what is shown in %s reads back within half a step', (units) => {
    const length = fc.double({ min: -250, max: 250, noNaN: true });
    fc.assert(
      fc.property(length, (m) => {
        const back = parseLength(formatLength(m, units), units, 'Pull', { min: -300 });
        if (!back.ok) throw new Error(back.problem.text);
        // A millionth of a step beyond the half: see HALF_SLACK.
        expect(Math.abs(back.value - m)).toBeLessThanOrEqual(stepOf(units) * 0.500_002);
        expect(formatLength(back.value, units)).toBe(formatLength(m, units));
      }),
    );
  });

  test('every 64th of an inch up to 100 ft is read exactly', () => {
    fc.assert(
      fc.property(fc.nat(99), fc.nat(11), fc.nat(63), (feet, inches, over) => {
        const expected = (((feet * 12 + inches) * 64 + over) * 254) / 640_000;
        expect(parseLength(`${feet} ${inches} ${over}/64`, 'ft-in-16', 'Pull', { min: 0 })).toEqual({
          ok: true,
          value: expected,
        });
      }),
    );
  });

  test('any text is read or refused with one sentence that names the field', () => {
    const scrap = fc.constantFrom(...`0123456789./'"′″ -−,mcft in½`.split(''));
    fc.assert(
      fc.property(fc.array(scrap, { maxLength: 12 }), fc.constantFrom(...UNITS), (scraps, units) => {
        const result = parseLength(scraps.join(''), units, 'Pull');
        if (result.ok) {
          expect(result.value).toBeGreaterThan(0);
          expect(result.value).toBeLessThanOrEqual(300);
        } else expect(result.problem.text).toMatch(/^Pull(: “.+”)? .+\.$/);
      }),
      { numRuns: 2000 },
    );
  });
});
