import { expect, test } from 'vitest';
import { stringsWords } from '../../../src/screens/stake/strings/string-words.ts';
import { stringPlan } from '../../../src/stakeout/strings.ts';
import { ringPlan } from '../../plan/plans.ts';
import { scatteredPlan, stringsOn } from '../../stakeout/string-jobs.ts';

const FEW_LINES = /^These holes share few lines/;

test('where holes share few lines, offset stakes are said to be less work', () => {
  const scattered = stringPlan(stringsOn(scatteredPlan(3, 20)).asked);
  expect(scattered.strings.length).toBeGreaterThan(20);
  expect(stringsWords(scattered, 'mm').some((text) => FEW_LINES.test(text))).toBe(true);
  const ring = stringPlan(stringsOn(ringPlan({ count: 16, pier: true })).asked);
  expect(ring.strings).toHaveLength(16);
  expect(stringsWords(ring, 'mm').some((text) => FEW_LINES.test(text))).toBe(false);
});
