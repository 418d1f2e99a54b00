import { describe, expect, test } from 'vitest';
import type { HoleAssessment, Verdict } from '../../../src/judge/types.ts';
import {
  depthDoubt,
  dugHeadline,
  obstructionWords,
  roundedUp,
  widthDoubt,
} from '../../../src/screens/dig/dig-words.ts';
import { formatLength } from '../../../src/units/index.ts';
import { inches } from '../../job/sample.ts';

const units = 'ft-in-16';
const foot = inches('1 0').m;

test('a depth to dig to is rounded up to the mark, never down', () => {
  expect(formatLength(roundedUp(inches('3 6').m + 0.0001, units), units)).toBe('3′ 6 1/16″');
  expect(roundedUp(inches('3 6').m, units)).toBeCloseTo(inches('3 6').m, 9);
  expect(roundedUp(1.0001, 'm')).toBeCloseTo(1.001, 9);
});

describe('a doubtful reading of a hole', () => {
  test('is one that is a foot too deep; a shallow one is what the hole is like', () => {
    expect(depthDoubt(inches('5 0').m, inches('4 0').m, units)).toBe(
      'This is 1′ 0″ more than the depth to dig to, 4′ 0″. Read it again, or keep it as read.',
    );
    expect(depthDoubt(inches('4 6').m, inches('4 0').m, units)).toBeNull();
    expect(depthDoubt(inches('1 0').m, inches('4 0').m, units)).toBeNull();
    expect(depthDoubt(inches('9 0').m, null, units)).toBeNull();
  });

  test('is one that is nowhere near as wide as planned', () => {
    expect(widthDoubt(2 * foot, 1.25 * foot, units)).toBeNull();
    expect(widthDoubt(3 * foot, 1.25 * foot, units)).toContain('1′ 9″ more than planned (1′ 3″)');
    expect(widthDoubt(0.5 * foot, 1.25 * foot, units)).toContain('less than planned');
  });
});

describe('what a dug hole is called', () => {
  const judgement = (verdict: Verdict, checked = true) => ({ verdict, checked, why: '' });
  const dug = (depth: Verdict, width: Verdict, checked = true) =>
    ({
      depth: judgement(depth, checked),
      width: judgement(width, checked),
    }) as unknown as HoleAssessment['dug'];

  test.each([
    ['again', dug('out', 'in'), 'Hole 4 is out: not deep enough yet'],
    ['again', dug('in', 'out'), 'Hole 4 is out: not wide enough yet'],
    ['again', dug('out', 'out'), 'Hole 4 is out: not deep and wide enough yet'],
    ['again', dug('unsure', 'in'), 'Hole 4 is unsure: too close to tell'],
    ['tell', dug('in', 'in'), 'Hole 4 may be too tight: too close to tell'],
    ['unknown', dug('unmeasured', 'in'), 'Hole 4 is unmeasured: the depth it needs is not known'],
    ['decide', dug('in', 'in'), 'Hole 4 is unsure: it waits for a decision'],
    ['done', dug('in', 'in'), 'Hole 4 is in: deep and wide enough'],
    ['done', dug('in', 'in', false), 'Hole 4 is in: deep and wide enough, unchecked'],
  ] as const)('%s', (task, hole, words) => {
    expect(dugHeadline('4', task, hole)).toBe(words);
  });
});

test('an obstruction is never OK: it is somebody’s decision', () => {
  expect(obstructionWords('4', 'rock')).toMatch(
    /^Hole 4: rock was met\..*a decision by whoever is responsible/,
  );
  expect(obstructionWords('4', 'roots')).toMatch(/^Hole 4: roots were met\./);
  expect(obstructionWords('4', 'other')).toMatch(/^Hole 4: something is in the way\./);
});
