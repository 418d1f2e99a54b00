import { expect, test } from 'vitest';
import { formatLength } from '../../src/units/index.ts';

test('writes feet, inches and sixteenths', () => {
  expect(formatLength(5.6467375, 'ft-in-16')).toBe('18′ 6 5/16″');
});
