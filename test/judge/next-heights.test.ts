import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import type { NextHeight } from '../../src/judge/types.ts';
import { Field, mm, post } from './field.ts';

/** The truth: the line of sight 1.5 m above the benchmark; every top at its 0.8 m but for what is said. */
const SIGHT = 1500;
const TOP = 800;

function levelled(error = 0, once = false): Field {
  const field = new Field().site().set('1');
  const benchmark = () =>
    field.add({ kind: 'rod', setup: '1', on: { point: 'benchmark' }, reading: mm(SIGHT) });
  benchmark();
  for (let i = 0; i < (once ? 1 : 2); i++) readTop(field, error);
  benchmark();
  return field;
}

const readTop = (field: Field, error = 0) =>
  field.add({
    kind: 'rod',
    setup: '1',
    on: { point: 'top', hole: '1' },
    reading: mm(SIGHT - TOP - error),
  });

const next = (field: Field): readonly NextHeight[] => assess(field.log).nextHeights;
const texts = (field: Field) => next(field).map(({ text }) => text);
const level = (field: Field) => assess(field.log).holes.find(({ hole }) => hole === '1')!.set.level;

/** Reads what is asked for, as often as it is asked for, by the truth. */
function make(field: Field, { on, setup, times }: NextHeight, error: number): void {
  for (let i = 0; i < times; i++)
    if (on.point === 'top') readTop(field, error);
    else field.add({ kind: 'rod', setup: setup!, on, reading: mm(SIGHT) });
}

describe('the next rod readings', () => {
  it('are none without a set post, and none where every top is in and guarded', () => {
    expect(next(new Field().site())).toEqual([]);
    expect(level(levelled())).toMatchObject({ verdict: 'in', checked: true });
    expect(next(levelled())).toEqual([]);
  });

  it('measure a top that was never read: the benchmark first, while the level hangs on nothing', () => {
    const field = new Field().site().set('1');
    expect(texts(field)).toEqual([
      'Read the rod on the benchmark: every height read from there hangs on it.',
    ]);
    readTop(field);
    expect(texts(field)).toEqual([
      'Read the rod on the benchmark from set-up 1: every height read from there hangs on it.',
    ]);
    const other = levelled().set('2');
    expect(texts(other)).toEqual([
      'Read the rod on the top of post 2 from set-up 1: then the height of the top of post 2 is known.',
    ]);
  });

  it('guard what hangs on one reading', () => {
    const field = levelled(0, true);
    expect(level(field)).toMatchObject({ verdict: 'in', checked: false });
    expect(texts(field)).toEqual([
      'Read the rod on the top of post 1 from set-up 1: it guards the top of post 1 against a misread rod.',
    ]);
    for (const each of next(field)) make(field, each, 0);
    expect(level(field)).toMatchObject({ verdict: 'in', checked: true });
    expect(next(field)).toEqual([]);
  });

  it.each([
    [4.6, 'in'],
    [7.4, 'out'],
  ] as const)('settle what is unsure once they read as predicted: %d mm off, %s', (error, verdict) => {
    // 6 mm is allowed, and the rod is good to 1 mm: two readings of the top and two of the benchmark leave 1 mm of doubt.
    const field = levelled(error);
    expect(level(field).verdict).toBe('unsure');
    const asked = next(field);
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.at(-1)!.text).toMatch(
      new RegExp(`: then the top of post 1 is expected to be ${verdict}\\.$`),
    );
    for (const each of asked) make(field, each, error);
    expect(level(field).verdict).toBe(verdict);
  });

  it('are not asked for where none would settle it: that is said, with what to do', () => {
    const field = levelled(5.9);
    expect(level(field).verdict).toBe('unsure');
    expect(next(field)).toEqual([]);
    expect(assess(field.log).beyondPulls.filter(({ text }) => text.startsWith('No rod'))).toEqual([
      {
        thing: post('1'),
        text: 'No rod reading can settle the top of post 1: it measures 6 mm too high, too near the 6 mm that is allowed. Set it nearer to its height, or let whoever is responsible decide whether it may stay so.',
      },
    ]);
  });

  it('leave alone what is out, and what is in concrete', () => {
    expect(level(levelled(12)).verdict).toBe('out');
    expect(next(levelled(12))).toEqual([]);
    const field = levelled(4.6);
    field.add({ kind: 'pour', hole: '1', bags: 3 });
    expect(next(field)).toEqual([]);
  });

  it('ask for the benchmark once, whatever number of tops hang on it', () => {
    const field = new Field().site().set('1').set('2').set('3');
    expect(next(field)).toHaveLength(1);
  });
});
