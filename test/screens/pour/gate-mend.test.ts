import { describe, expect, test } from 'vitest';
import type { GateItem } from '../../../src/judge/types.ts';
import { missingItems } from '../../../src/screens/pour/gate-mend.ts';

const red = (...items: GateItem['item'][]) =>
  missingItems({
    open: false,
    items: items.map((item) => ({
      item,
      green: false,
      text: `${item} is missing`,
      ...(item === 'obstruction' || item === 'shallower' ? { decision: true as const } : {}),
    })),
  });
const names = (...items: GateItem['item'][]) => red(...items).map(({ item }) => item);

describe('what is missing at a gate', () => {
  test('what is green is not in it', () => {
    expect(missingItems({ open: true, items: [{ item: 'clean', green: true, text: 'clean' }] })).toEqual([]);
  });

  test('first what is measured, then what waits for a decision, then what eyes can tell', () => {
    expect(red('clean', 'obstruction', 'plumb').map(({ mend }) => mend.by)).toEqual([
      'phase',
      'decision',
      'tick',
    ]);
  });

  test.each([
    ['depth', 'dig'],
    ['width', 'dig'],
    ['position', 'set'],
    ['spacing', 'set'],
    ['level', 'set'],
    ['staked', 'stake'],
  ] as const)('%s is mended in %s', (item, phase) => {
    expect(red(item)[0]?.mend).toEqual({ by: 'phase', phase });
  });

  test('no tick is offered for a hole that is not dug, nor for a post that is not set', () => {
    expect(names('dug', 'obstruction', 'clean', 'gravel', 'inspection', 'weather')).toEqual([
      'dug',
      'weather',
    ]);
    expect(names('set', 'position', 'checked', 'spacing', 'braced', 'weather')).toEqual(['set', 'weather']);
  });

  test('an inspection is not ticked past what was met in the ground: the decision is logged with its note', () => {
    expect(names('obstruction', 'inspection')).toEqual(['obstruction']);
    expect(names('inspection')).toEqual(['inspection']);
  });

  test('what measures too tight is dug, not ticked; a gap that nobody measured is ticked', () => {
    const tight: GateItem = { item: 'room', green: false, text: 'Too tight.', measured: true };
    expect(missingItems({ open: false, items: [tight] })[0]?.mend).toEqual({ by: 'phase', phase: 'dig' });
    expect(red('room')[0]?.mend).toMatchObject({ by: 'tick', item: 'room' });
    expect(names('set', 'room')).toEqual(['set']);
  });

  test('each item of the job’s own has its own tick; a short post is mended on the plan', () => {
    const ask = (asked: string): GateItem => ({ item: 'asked', green: false, text: asked, asked });
    const items = missingItems({ open: false, items: [ask('sleeve'), ask('bolts')] });
    expect(items.map(({ mend }) => mend)).toEqual([
      { by: 'tick', item: 'asked', asked: 'sleeve', words: 'Sleeve' },
      { by: 'tick', item: 'asked', asked: 'bolts', words: 'Bolts' },
    ]);
    expect(red('bought')[0]?.mend).toEqual({ by: 'phase', phase: 'plan' });
  });

  test('one trouble in the way of two items is told once', () => {
    const items = (['position', 'checked'] as const).map((item) => ({ item, green: false, text: 'Same' }));
    expect(missingItems({ open: false, items })).toHaveLength(1);
  });
});
