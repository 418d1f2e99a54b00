import { describe, expect, test } from 'vitest';
import { makeLog } from '../../../src/desk/example/make-log.ts';
import type { Body } from '../../../src/job/entry-schema.ts';
import { assessSituation } from '../../../src/judge/assess.ts';
import { situate } from '../../../src/judge/situation.ts';
import { viewOf } from '../../../src/judge/view.ts';
import { offsetsTable, pullsTable, suspectNames } from '../../../src/screens/record/reading-rows.ts';
import { inches } from '../../job/sample.ts';
import { holeStake, logOf, PROVED, stake } from '../stake/field-day.ts';

function told(bodies: readonly Body[]) {
  const situation = situate(logOf(bodies));
  return { view: viewOf(situation)!, assessment: assessSituation(situation) };
}

describe('every reading', () => {
  test('has a row, numbered, with what was typed, in the order of the log', () => {
    const situation = situate(makeLog());
    const assessment = assessSituation(situation);
    const { rows, heads } = pullsTable(viewOf(situation)!, assessment);
    expect(rows).toHaveLength(assessment.pulls.length);
    expect(new Set(rows.map(([name]) => name)).size).toBe(rows.length);
    for (const row of rows) expect(row).toHaveLength(heads.length + 1);
    expect(rows[0]![0]).toBe('1. A to B');
    // The misread one of the example is told as such, with how far off it is and what would have shown.
    const suspects = assessment.pulls.filter(({ suspect }) => suspect);
    expect(suspects).toHaveLength(1);
    expect(suspectNames([pullsTable(viewOf(situation)!, assessment)])).toEqual([
      expect.stringMatching(/^\d+\. B to post 8, the middle of the inner face$/),
    ]);
    const [wrong] = rows.filter((row) => row.some((cell) => cell.endsWith(', looks misread')));
    expect(wrong!.join(' ')).toMatch(/(long|short), looks misread \d+ % \d+\.\d \d/);
    expect(rows.flat().join(' ')).not.toMatch(/NaN|Infinity|undefined|−|-\d/);
  });

  test('that nothing guards says so, and has no number for luck', () => {
    const { view, assessment } = told(PROVED.slice(0, 6));
    const { rows } = pullsTable(view, assessment);
    expect(rows.length).toBeGreaterThan(0);
    for (const [, , , off, guarded, luck, shows] of rows)
      expect([off, guarded, luck, shows]).toEqual(['nothing', 'none', '—', 'nothing shows']);
  });

  test('off a string has a row along it and one square off it, with the side in words', () => {
    const off: Body = {
      kind: 'offset',
      from: stake('A'),
      to: stake('B'),
      of: { thing: holeStake('2'), touch: { at: 'nail' } },
      station: inches('10 0'),
      offset: inches('5 0'),
      side: 'left',
    };
    const { view, assessment } = told([...PROVED, off]);
    const { rows } = offsetsTable(view, assessment);
    expect(rows.map(([name, read]) => `${name}: ${read}`)).toEqual([
      '1. Stake 2 off A to B: 10′ 0″ along',
      '2. Stake 2 off A to B: 5′ 0″ left',
    ]);
    expect(rows[1]![2]).toMatch(/ left$/);
    expect(rows[1]![3]).toMatch(/ (left|right)/);
  });
});
