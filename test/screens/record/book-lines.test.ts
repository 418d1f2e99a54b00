import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/job/plan-schema.ts';
import { changedParts } from '../../../src/screens/plan-changes.ts';
import { bookLines } from '../../../src/screens/record/book-lines.ts';
import { entry, sampleBodies, sampleLog, samplePlan } from '../../job/sample.ts';

const planWith = (part: Partial<Plan>) => ({ kind: 'plan', plan: { ...samplePlan, ...part } }) as const;
const renamed = (name: string) => planWith({ name });

describe('the field book', () => {
  test('has a line for every entry, newest first, the struck one with its reason', () => {
    const log = sampleLog();
    const lines = bookLines(log, samplePlan);
    expect(lines.map(({ id }) => id)).toEqual(log.map(({ id }) => id).reverse());
    expect(lines.filter(({ struck }) => struck !== null)).toEqual([
      {
        id: 'entry-0004',
        at: log[3]!.at,
        text: 'Pull A to post 4, the middle of the outer face: 18′ 6 5/16″, level',
        struck: 'misread',
        count: 1,
      },
    ]);
    expect(lines[0]!.text).toBe(
      'Struck: Pull A to post 4, the middle of the outer face: 18′ 6 5/16″, level: misread',
    );
  });

  test('is the same whatever order the log came in', () => {
    expect(bookLines(sampleLog().reverse(), samplePlan)).toEqual(bookLines(sampleLog(), samplePlan));
  });

  test('tells plan changes in a row as one line that says what they changed', () => {
    const log = [
      entry(1, sampleBodies.plan),
      entry(2, sampleBodies.note),
      entry(3, renamed('Shed')),
      entry(4, planWith({ name: 'Shed', units: 'm' })),
      entry(5, sampleBodies.pour),
      entry(6, renamed('Hut')),
    ];
    const plans = bookLines(log, samplePlan).filter(({ text }) => text.startsWith('Plan'));
    expect(plans.map(({ id, count, text }) => [id, count, text])).toEqual([
      ['entry-0006', 1, 'Plan “Hut”: 8 posts on a ring round a pier; changed: name, units'],
      [
        'entry-0004',
        2,
        'Plan “Shed”: 8 posts on a ring round a pier; changed: name, units (2 changes in a row)',
      ],
      ['entry-0001', 1, 'Plan “Garden room”: 8 posts on a ring round a pier'],
    ]);
  });

  test('does not hide a struck plan change behind one that stands', () => {
    const log = [
      entry(1, sampleBodies.plan),
      entry(2, renamed('Slip')),
      entry(3, renamed('Shed')),
      entry(4, { kind: 'strike', entry: 'entry-0002', reason: 'mistyped' }),
    ];
    const lines = bookLines(log, samplePlan);
    expect(lines.map(({ id, struck, count }) => [id, struck, count])).toEqual([
      ['entry-0004', null, 1],
      ['entry-0003', null, 1],
      ['entry-0002', 'mistyped', 1],
      ['entry-0001', null, 1],
    ]);
    expect(lines[1]!.text).toContain('changed: name');
  });

  test('of an empty log is empty', () => {
    expect(bookLines([], null)).toEqual([]);
  });
});

test('the parts that differ are named in the order of the plan', () => {
  expect(changedParts(samplePlan, samplePlan)).toEqual([]);
  const { rules, tolerances } = samplePlan;
  const other: Plan = {
    ...samplePlan,
    tolerances: { ...tolerances, plumb: 0.003 },
    rules: { ...rules, frostDepth: null },
  };
  expect(changedParts(samplePlan, other)).toEqual(['depth rules', 'tolerances']);
});
