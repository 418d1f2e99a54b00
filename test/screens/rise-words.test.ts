import { expect, test } from 'vitest';
import type { Situation } from '../../src/judge/situation.ts';
import { heldTape, LEVEL_LENGTH, readWords } from '../../src/screens/rise-words.ts';
import { holeStake, stake } from './stake/field-day.ts';

const from = { thing: stake('A'), touch: { at: 'nail' } } as const;
const to = { thing: holeStake('4'), touch: { at: 'nail' } } as const;
const mm = (m: number) => ({ m, typed: `${m * 1000}`, units: 'mm' }) as const;
const NO_HEIGHTS = { measured: null, inHand: null };
const height = (key: string, m: number) => ({ key, height: m, sigma: 0.001 });
const LEVELLED = {
  measured: { heights: [height('stake:A', 0.2), height('ground:4', 1.4)] },
  inHand: null,
} as unknown as Pick<Situation, 'measured' | 'inHand'>;
const pull = { from, to, expected: 1.6 };

test('the large figure is the tape’s own reading wherever that is known', () => {
  expect(heldTape(LEVELLED, pull, 'level')).toEqual({ held: 'tape level', m: 1.6 });
  // 1.2 and 1.6 make 2 (derived, not published).
  expect(heldTape(LEVELLED, pull, 'slope').held).toBe('tape along the slope');
  expect(heldTape(LEVELLED, pull, 'slope').m).toBeCloseTo(2, 9);
});

test('a tape of its own corrections is named, and the figure is what it must read', () => {
  const tape = { label: 'Red', nominal: mm(30), actual: mm(30.03), zero: mm(-0.002) };
  const inHand = { tape, pulling: {} };
  const level = heldTape({ ...LEVELLED, inHand }, pull, 'level');
  // A part in a thousand long, and 2 mm too much at its end: (1.6 + 0.002)/1.001 (derived, not published).
  expect(level.held).toBe('tape Red, level');
  expect(level.m).toBeCloseTo(1.602 / 1.001, 9);
  const slope = heldTape({ ...LEVELLED, inHand }, pull, 'slope');
  expect(slope.held).toBe('tape Red, along the slope');
  expect(slope.m).toBeCloseTo(2.002 / 1.001, 9);
});

test('a level length beside a sloping tape says that it is one', () => {
  expect(heldTape(NO_HEIGHTS, pull, 'slope')).toEqual({ held: LEVEL_LENGTH, m: 1.6 });
});

test.each([
  [{ how: 'level' }, NO_HEIGHTS, 'read 5457 mm'],
  [{ how: 'slope', rise: mm(0.5) }, NO_HEIGHTS, 'read 5457 mm, sloping, rise 500 mm'],
  [{ how: 'slope' }, NO_HEIGHTS, 'read 5457 mm, sloping, rise not known'],
  [{ how: 'slope' }, LEVELLED, 'read 5457 mm, sloping, rise 1200 mm'],
] as const)('a reading says how it was held, %#', (hold, situation, words) => {
  expect(readWords(situation, { kind: 'pull', from, to, reading: mm(5.457), hold })).toBe(words);
});
