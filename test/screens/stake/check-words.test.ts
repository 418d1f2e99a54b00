import { describe, expect, test } from 'vitest';
import { situate } from '../../../src/judge/situation.ts';
import { checkWords, guardProgress } from '../../../src/screens/stake/check-words.ts';
import { checksOf } from '../../../src/screens/stake/checks-of.ts';
import { presentOf } from '../../../src/screens/stake/present.ts';
import type { CheckSet, PlannedPull } from '../../../src/stakeout/index.ts';
import { entry } from '../../job/sample.ts';
import { metres, rowsPlan } from '../../plan/plans.ts';
import { CHECK_SET, pull, STAKED } from './field-day.ts';
import { entriesOf, slopingLog, stakesBefore } from './sheet/sloping-job.ts';

const nothing = presentOf([]);
const readAll = (pulls: readonly PlannedPull[]) =>
  presentOf(
    [...STAKED, ...pulls.map(({ from, to, expected }) => pull(from.thing, to.thing, expected))].map(
      (body, i) => entry(i + 1, body),
    ),
  );

describe('how far the check pulls are', () => {
  const units = 'ft-in-16';

  test('counts those that guard the holes', () => {
    const { guarding } = CHECK_SET;
    expect(guardProgress(CHECK_SET, nothing, units)).toMatch(
      new RegExp(`shows\\. ${guarding.length} to go\\.$`),
    );
    expect(guardProgress(CHECK_SET, readAll(guarding), units)).toMatch(/All are read\.$/);
    expect(guardProgress(CHECK_SET, readAll(guarding.slice(1)), units)).toMatch(/1 to go\.$/);
    expect(checkWords(CHECK_SET, guarding[0]!, nothing, units)).toMatch(/to go\.$/);
  });

  test('of more holes than are searched counts all that the tape reaches, and claims none of them read', () => {
    const plan = rowsPlan({ columns: 67, rows: 3, columnSpacing: metres(0.3), rowSpacing: metres(0.3) });
    const set = checksOf(situate(entriesOf(slopingLog(plan, stakesBefore(plan), null))));
    expect(set.unguarded).toHaveLength(201);
    expect(set.guarding).toEqual([]);
    expect(guardProgress(set, nothing, units)).toMatch(
      new RegExp(`that the tape reaches\\. ${set.further.length} to go\\.$`),
    );
    expect(guardProgress(set, readAll(set.further.slice(1)), units)).toMatch(/1 to go\.$/);
    expect(guardProgress(set, readAll(set.further), units)).toMatch(/All are read\.$/);
  });
});

describe('which holes they guard', () => {
  const leaving = (unguarded: readonly string[]) => {
    const set: CheckSet = { ...CHECK_SET, unguarded };
    return checkWords(set, set.guarding[0]!, nothing, 'm');
  };

  test.each([
    [[], 'guard every hole: a misreading'],
    [['5'], 'guard every hole but hole 5: a misreading'],
    [['5', '7'], 'guard every hole but holes 5 and 7: a misreading'],
    [['1', '2', '3', '4', '6'], 'guard all but 5 of the holes: a misreading'],
  ])('%j', (unguarded, words) => {
    expect(leaving(unguarded)).toContain(words);
  });
});
