import { describe, expect, test } from 'vitest';
import { formatLength, formatSmall, lengthParts, METRES_PER_INCH, stepOf } from '../../src/units/index.ts';

describe('formatLength', () => {
  test.each([
    [5.6467375, 'ft-in-16', '18′ 6 5/16″'],
    [5.6467375, 'ft-in-32', '18′ 6 5/16″'],
    [5.6467375, 'ft', '18.53 ft'],
    [5.6467375, 'm', '5.647 m'],
    [5.6467375, 'mm', '5647 mm'],
    [0, 'ft-in-16', '0″'],
    [0.0079375, 'ft-in-16', '5/16″'],
    [0.3048, 'ft-in-16', '1′ 0″'],
    [0.3127375, 'ft-in-16', '1′ 0 5/16″'],
    [-0.1651, 'ft-in-16', '−6 1/2″'],
    [-0.5, 'm', '−0.500 m'],
  ] as const)('%d m in %s', (m, units, expected) => {
    expect(formatLength(m, units)).toBe(expected);
  });

  test('a carry goes through inches to feet: never 12 inches or 16/16', () => {
    expect(formatLength(11.99 * METRES_PER_INCH, 'ft-in-16')).toBe('1′ 0″');
    expect(formatLength(5.99 * METRES_PER_INCH, 'ft-in-16')).toBe('6″');
  });

  test('nothing is minus zero', () => {
    for (const m of [-0, -0.0001]) expect(formatLength(m, 'm')).toBe('0.000 m');
  });

  test('what is not a number is a dash', () => {
    for (const m of [Number.NaN, Number.POSITIVE_INFINITY]) expect(formatLength(m, 'm')).toBe('—');
  });

  test('halves of a step go away from zero, also where binary falls short of the half', () => {
    for (let half = 1; half < 20_001; half += 2) {
      expect(formatLength(half / 2000, 'mm')).toBe(`${(half + 1) / 2} mm`);
      expect(formatLength(-half / 2000, 'mm')).toBe(`−${(half + 1) / 2} mm`);
    }
  });
});

test('lengthParts cuts up for large figures', () => {
  expect(lengthParts(-5.6467375, 'ft-in-16')).toEqual({
    sign: '−',
    whole: '18′ 6',
    fraction: '5/16',
    mark: '″',
  });
  expect(lengthParts(0.0079375, 'ft-in-16')).toEqual({ sign: '', whole: '', fraction: '5/16', mark: '″' });
  expect(lengthParts(3.825, 'm')).toEqual({ sign: '', whole: '3.825', fraction: '', mark: ' m' });
});

test('formatSmall shows a metric job in millimetres and leaves the others', () => {
  expect(formatSmall(0.0125, 'm')).toBe('13 mm');
  expect(formatSmall(0.0125, 'mm')).toBe('13 mm');
  expect(formatSmall(0.0127, 'ft-in-16')).toBe('1/2″');
});

test('steps', () => {
  expect(stepOf('ft-in-16')).toBe(0.0015875);
  expect(stepOf('ft-in-32')).toBe(0.00079375);
  expect(stepOf('ft')).toBeCloseTo(0.003048, 12);
  expect(stepOf('m')).toBe(0.001);
  expect(stepOf('mm')).toBe(0.001);
});
