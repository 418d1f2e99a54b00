import { describe, expect, test } from 'vitest';
import { situate } from '../../../src/judge/situation.ts';
import { squareWords } from '../../../src/screens/stake/square-words.ts';
import { Field, holeStake, mm, ringPlan, stake } from '../../judge/field.ts';

/** Two rows of two, 3.6 m by 4.8 m: 3-4-5 as drawn. Front left 1, front right 2, back left 3, back right 4. */
const PLAN = ringPlan('mm', {
  shape: {
    kind: 'rows',
    columns: 2,
    rows: 2,
    measuredTo: 'centres',
    columnSpacing: mm(4800),
    rowSpacing: mm(3600),
  },
});
const ALL = ['1', '2', '3', '4'];

function staked(field: Field, holes = ALL): Field {
  for (let i = 0; i < 2; i++) field.pull(stake('A'), stake('B'));
  for (const hole of holes) field.pullsTo(holeStake(hole), [stake('A'), stake('B')]);
  return field;
}
const words = (field: Field) => squareWords(situate(field.log));
const onSite = () => new Field(PLAN).site();

describe('whether the outer stakes are square', () => {
  test('is told once all four are measured', () => {
    expect(words(staked(onSite(), ['1', '2', '3']))[0]).toBe(
      'Whether they are square is told here once stakes 1, 2, 4 and 3 are measured.',
    );
  });

  test('they are: both diagonals, and nothing to move', () => {
    expect(words(staked(onSite()))).toEqual([
      'Diagonals: 1 to 4 is 6000 mm, 2 to 3 is 6000 mm, 0 mm apart. The four are square, and the sides are as drawn, as near as these tapes tell.',
      'A right angle at stake 2 by three tapes, the largest that fits: 4800 mm toward stake 1, 3600 mm toward stake 4, 6000 mm across. The diagonals of the whole prove more.',
    ]);
  });

  test('a side slid along itself goes back by what squares it, and what the tapes then read is said', () => {
    const field = onSite();
    for (const hole of ['1', '2']) field.off(holeStake(hole), 0.02, 0);
    const [told, own] = words(staked(field));
    expect(told).toBe(
      'Diagonals: 1 to 4 is 5984 mm, 2 to 3 is 6016 mm, 32 mm apart. The least that squares them: hold stakes 4 and 3, and move stakes 1 and 2, each by 20 mm to the left as you face the front. Then both diagonals read 6000 mm and the sides 4800 mm and 3600 mm.',
    );
    expect(own).toMatch(/^That squares them among themselves/);
  });

  test('one stake astray is the one to move', () => {
    const field = onSite().off(holeStake('4'), 0, -0.05);
    expect(words(staked(field))[0]).toMatch(
      /hold stakes 1, 2 and 3, and move stake 4 by 50 mm toward the front\./,
    );
  });

  test('of more rows and columns the outer four are told, and the others go on strings between them', () => {
    const shape = { ...PLAN.shape, columns: 3, columnSpacing: mm(2400) } as typeof PLAN.shape;
    const field = new Field({ ...PLAN, shape }).site().off(holeStake('6'), 0.05, 0);
    const told = words(staked(field, ['1', '2', '3', '4', '5', '6']));
    expect(told[0]).toMatch(/hold stakes 1, 3 and 4, and move stake 6 by 50 mm to the left/);
    expect(told[1]).toBe('Then bring the stakes between them onto strings from one to the next.');
  });

  test('a ring of four is a square too', () => {
    const { shape } = ringPlan('mm');
    const field = new Field(
      ringPlan('mm', { shape: { ...shape, count: 4, pier: false } as typeof shape }),
    ).site();
    expect(words(staked(field))[0]).toMatch(
      /^Diagonals: 1 to 3 is 6000 mm, 2 to 4 is 6000 mm, 0 mm apart\. The four/,
    );
  });

  test('nothing is said of a ring, or before the plan lies on the site', () => {
    expect(words(new Field().site())).toEqual([]);
    expect(words(new Field(PLAN))).toEqual([]);
  });
});
