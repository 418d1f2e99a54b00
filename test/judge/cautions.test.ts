import { describe, expect, it, test } from 'vitest';
import type { Plan } from '../../src/job/plan-schema.ts';
import { caveInWords, guardWords, ladderWords, liftWords, tallWords } from '../../src/judge/cautions.ts';
import { fakeView } from './fake-view.ts';
import { Field, len, mm, ringPlan } from './field.ts';

const view = (change: Partial<Plan> = {}, log?: (field: Field) => void) => {
  const field = new Field(ringPlan('mm', change)).site();
  log?.(field);
  return fakeView(field);
};
const { each, rules } = ringPlan();
const withTop = (top: number, side = 140): Partial<Plan> => ({
  each: {
    ...each,
    top: mm(top),
    holds: { kind: 'post', nominal: 'typed', width: mm(side), depth: mm(side), turned: 'centre' },
  },
});

test('from five feet on the sides are held back (29 CFR 1926.652, from memory)', () => {
  const five = len('5 0', 'ft-in-16').m * 1000;
  const deep = (depth: number) =>
    caveInWords(
      view({}, (f) => void f.dig('1', depth)),
      '1',
    );
  expect(deep(five - 1)).toBe('');
  expect(deep(five)).toMatch(/^Hole 1 is 1524 mm deep: from 1524 mm on its sides have to be held back/);
  expect(caveInWords(view({ rules: { ...rules, frostDepth: mm(1600) } }), '2')).toMatch(
    /^Hole 2 is 1700 mm deep/,
  );
  expect(caveInWords(view({ rules: { ...rules, frostDepth: null } }), '2')).toBe('');
});

describe('a guard (IRC R312.1.1, 30 inches, from memory)', () => {
  it('is told of where the floor may be higher, and that the building office decides', () => {
    expect(guardWords(view(withTop(500)))).toBe('');
    expect(guardWords(view(withTop(600)))).toMatch(/and the frame and the boards come on top: .* 762 mm/);
    expect(guardWords(view(withTop(900)))).toMatch(
      /^The top at hole 1 is to stand, as far as the ground is known, 900 mm above the ground there: .* The building office decides\.$/,
    );
  });
  it('goes by the lowest ground that is measured', () => {
    const low = fakeView(
      (() => {
        const field = new Field(ringPlan('mm', withTop(500))).site();
        field.benchmark();
        field.add({ kind: 'rod', setup: '1', on: { point: 'ground', hole: '4' }, reading: mm(2000) });
        return field;
      })(),
      { heights: [{ key: 'ground:4', height: -0.6, sigma: 0.002 }] },
    );
    expect(guardWords(low)).toMatch(/^The top at hole 4 is to stand 1100 mm above the ground there: /);
  });
});

test('a post that stands high on a small section is reckoned by somebody (IRC 2018, table R507.4, from memory)', () => {
  const feet = (f: number) => f * 304.8;
  expect(tallWords(view(withTop(feet(6.7), 89)))).toBe('');
  expect(tallWords(view(withTop(feet(6.8), 89)))).toMatch(/^Posts 1, 2, 3, 4, 5 and 6 are to stand up to/);
  expect(tallWords(view(withTop(feet(13.9), 140)))).toBe('');
  expect(tallWords(view(withTop(feet(14.1), 140)))).toMatch(/have the size reckoned by whoever designs/);
});

test('a post that one person should not raise alone is told by its weight (NIOSH 1994: 51 lb, from memory)', () => {
  // 140 mm square and 2.2 m long of 800 kg in a cubic metre: 34 kg, derived.
  expect(liftWords(view(withTop(900)), '1')).toMatch(/^Post 1 may weigh about 30 kg: raise it with help/);
  expect(liftWords(view(withTop(300, 89)), '1')).toBe('');
  expect(liftWords(view(), 'P')).toBe('');
});

test('a top out of reach is reached from a ladder', () => {
  expect(ladderWords(view(withTop(1800)), '1')).toBe('');
  expect(ladderWords(view(withTop(2000)), '1')).toMatch(/^The top is reached from a ladder/);
});
