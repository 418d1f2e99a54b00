import { expect, test } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import { doneWords, UNDO_REASON } from '../../src/screens/undo-words.ts';
import { entry, inches, samplePlan } from '../job/sample.ts';

const driven = entry(1, { kind: 'stand', thing: { kind: 'stake', label: 'A' }, event: 'driven' });
const strike = (seq: number, of: number, reason: string) =>
  entry(seq, { kind: 'strike', entry: entry(of, driven.body as Body).id, reason });
const words = (...strikes: ReturnType<typeof strike>[]) =>
  doneWords(strikes.at(-1) ?? driven, [driven, ...strikes], null);

test('says what was saved', () => {
  expect(words()).toBe('Saved: Stake A driven.');
});

test('says what Undo took back, what it brought back, and so on as often as it is tapped', () => {
  const back = strike(2, 1, UNDO_REASON);
  const again = strike(3, 2, UNDO_REASON);
  const third = strike(4, 3, UNDO_REASON);
  expect(words(back)).toBe('Taken back: Stake A driven.');
  expect(words(back, again)).toBe('Counts again: Stake A driven.');
  expect(words(back, again, third)).toBe('Taken back: Stake A driven.');
});

test('says which part of the plan was changed', () => {
  const first = entry(1, { kind: 'plan', plan: samplePlan });
  const wider = { ...samplePlan, shape: { ...samplePlan.shape, size: inches('9 6') } } as typeof samplePlan;
  const second = entry(2, { kind: 'plan', plan: { ...wider, name: 'Garden studio' } });
  expect(doneWords(second, [first, second], wider)).toBe('Saved in the plan: name and shape and size.');
  expect(doneWords(first, [first], samplePlan)).toBe(
    'Saved: Plan “Garden room”: 8 posts on a ring round a pier.',
  );
});

test('gives the reason of any other strike', () => {
  expect(words(strike(2, 1, 'wrong hole'))).toBe('Struck: Stake A driven. Reason: wrong hole.');
});
