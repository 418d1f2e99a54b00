import { describe, expect, test } from 'vitest';
import { progressOf } from '../../src/screens/progress.ts';
import { dayOf, exampleLog } from './set/set-day.ts';

describe('how far each phase is', () => {
  test('counts nothing before there is a hole', () => {
    expect(progressOf({ holes: [] })).toEqual({});
  });

  test('counts as set only what is in and guarded', () => {
    const { holes } = dayOf(exampleLog());
    const before = Number.parseInt(progressOf({ holes }).set!, 10);
    const [good] = holes.filter(
      ({ set }) => set.verdict === 'in' && set.position.checked && set.plumb.checked && set.level.checked,
    );
    const unguarded = holes.map((hole) =>
      hole === good ? { ...hole, set: { ...hole.set, plumb: { ...hole.set.plumb, checked: false } } } : hole,
    );
    expect(before).toBeGreaterThan(0);
    expect(progressOf({ holes: unguarded }).set).toBe(`${before - 1} of ${holes.length}`);
    expect(progressOf({ holes })).toMatchObject({ stake: '11 of 11', pour: '2 of 11' });
  });

  test('counts no hole as dug that waits for a decision', () => {
    const { holes } = dayOf(exampleLog());
    expect(holes.every(({ dug }) => dug.at !== null)).toBe(true);
    expect(progressOf({ holes }).dig).toBe('10 of 11');
  });
});
