import { expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import type { Finding } from '../../../src/judge/types.ts';
import { misreadOf } from '../../../src/screens/stake/misread.ts';
import { fromA, fromB, holeStake, PULLS, READY, stake, stakeAfter, stand } from './field-day.ts';

const FOOT = 0.3048;
const HOLE = '4';
const nail = (thing: Body & { kind: 'stand' }) => ({ thing: thing.thing, touch: { at: 'nail' } }) as const;
const to = nail(stand(holeStake(HOLE)) as Body & { kind: 'stand' });
const toRead = [
  { from: { thing: stake('A'), touch: { at: 'nail' } }, to, expected: PULLS.get(HOLE)!.fromA },
  { from: { thing: stake('B'), touch: { at: 'nail' } }, to, expected: PULLS.get(HOLE)!.fromB },
] as const;

function misreadAfter(bodies: readonly Body[], suspects: readonly string[] = []) {
  const { situation, present } = stakeAfter([...READY, stand(holeStake(HOLE)), ...bodies]).state;
  const finding: Finding = { code: 'misreading', text: '', entries: suspects };
  return misreadOf({ ...situation, measured: null }, [finding], present, toRead);
}

test('a reading that is off by no named slip is not doubted', () => {
  expect(misreadAfter([fromA(HOLE), fromB(HOLE, 0.08)])).toBeNull();
});

test('a foot on B is named, and pulled again', () => {
  const found = misreadAfter([fromA(HOLE), fromB(HOLE, -FOOT)]);
  expect(found).toMatchObject({ cure: 'again', pull: toRead[1] });
  expect(found!.text).toContain('1′ 0″ less than planned. One foot too little');
});

test('it is struck for a reading that nothing speaks against, whichever came first', () => {
  const wrong = fromB(HOLE, FOOT);
  for (const pulls of [
    [wrong, fromB(HOLE)],
    [fromB(HOLE), wrong],
  ])
    expect(misreadAfter([fromA(HOLE), ...pulls])).toMatchObject({ cure: 'strike', entry: { body: wrong } });
});

test('two readings that are both in doubt and disagree are told apart by a third, and none is struck', () => {
  const bodies = [fromA(HOLE), fromB(HOLE, FOOT), fromB(HOLE, -FOOT)];
  expect(misreadAfter(bodies)).toMatchObject({ cure: 'again', pull: toRead[1] });
});
