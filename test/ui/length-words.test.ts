import { expect, test } from 'vitest';
import { differenceInWords, lengthInWords } from '../../src/ui/length-words.ts';
import { METRES_PER_FOOT, METRES_PER_INCH, type Units } from '../../src/units/index.ts';

const inches = (n: number) => n * METRES_PER_INCH;

test.each<[number, Units, string]>([
  [inches(222.3125), 'ft-in-16', '18 feet 6 and 5/16 inches'],
  [inches(12), 'ft-in-16', '1 foot'],
  [inches(18), 'ft-in-16', '1 foot 6 inches'],
  [inches(13), 'ft-in-16', '1 foot 1 inch'],
  [inches(24.5), 'ft-in-16', '2 feet and 1/2 inch'],
  [inches(0.3125), 'ft-in-16', '5/16 inch'],
  [inches(6), 'ft-in-32', '6 inches'],
  [inches(6.03125), 'ft-in-32', '6 and 1/32 inches'],
  [0, 'ft-in-16', '0 inches'],
  [-inches(6), 'ft-in-16', 'minus 6 inches'],
  [5.647, 'ft-in-16', 'about 18 feet 6 and 5/16 inches'],
  [18.53 * METRES_PER_FOOT, 'ft', '18.53 feet'],
  [METRES_PER_FOOT, 'ft', '1.00 foot'],
  [5.647, 'm', '5.647 metres'],
  [5.647, 'mm', '5647 millimetres'],
  [0.001, 'mm', '1 millimetre'],
])('%d m in %s is said “%s”', (m, units, words) => {
  expect(lengthInWords(m, units)).toBe(words);
});

test.each<[number, Units, string]>([
  [inches(12), 'ft-in-16', '1′ 0″ more'],
  [-inches(0.1875), 'ft-in-16', '3/16″ less'],
  [inches(0.01), 'ft-in-16', 'the same'],
  [-0.0004, 'm', 'the same'],
  [0.012, 'm', '12 mm more'],
])('%d m beside the expected in %s is “%s”', (difference, units, words) => {
  expect(differenceInWords(difference, units)).toBe(words);
});
