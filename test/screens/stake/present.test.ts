import { expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { isBegun, presentOf } from '../../../src/screens/stake/present.ts';
import { holeStake, logOf, PLACED, pull, stake, stand } from './field-day.ts';

const A = stake('A');
const four = holeStake('4');
const after = (...bodies: Body[]) => presentOf(logOf(bodies));

test('a thing stands once it is driven, or once it is pulled to', () => {
  expect(after().stands(four)).toBe(false);
  expect(after(stand(four)).stands(four)).toBe(true);
  expect(after(pull(A, four, 5)).stands(A)).toBe(true);
});

test('the last pull counts, either way round', () => {
  const present = after(pull(A, four, 5), pull(four, A, 5.1));
  expect(present.pull(A, four)?.body.reading.m).toBeCloseTo(5.1, 2);
  expect(present.pull(four, A)).toBe(present.pull(A, four));
  expect(present.pull(A, stake('B'))).toBeNull();
});

test('a pull ends with the stand of either end', () => {
  expect(after(stand(four), pull(A, four, 5), stand(four, 'moved')).pull(A, four)).toBeNull();
  expect(after(stand(A), pull(A, four, 5), stand(A, 'moved')).pull(A, four)).toBeNull();
  expect(after(stand(four), pull(A, four, 5), stand(holeStake('5'))).pull(A, four)).not.toBeNull();
});

test('nothing outlasts a new placing of A and B', () => {
  const present = after(stand(A), pull(A, four, 5), PLACED[1]!);
  expect(present.stands(A)).toBe(false);
  expect(present.pull(A, four)).toBeNull();
});

test('moving A and B costs nothing until something is driven or pulled to from where they are', () => {
  expect(isBegun(logOf([...PLACED]))).toBe(false);
  expect(isBegun(logOf([...PLACED, stand(A)]))).toBe(true);
  expect(isBegun(logOf([...PLACED, stand(A), ...PLACED.slice(-1)]))).toBe(false);
});
