import { describe, expect, test } from 'vitest';
import { digLook } from '../../../src/screens/dig/dig-page.tsx';
import { setLook } from '../../../src/screens/looks.ts';
import { fillOf } from '../../../src/screens/pour/bags-needed.tsx';
import { pourLook, pourOrder } from '../../../src/screens/pour/pour-order.ts';
import { holeWords } from '../../../src/ui/index.ts';
import { dayOf, exampleLog } from '../set/set-day.ts';

const { book, holes, hole } = dayOf(exampleLog());
const missing = (label: string) => hole(label).pourGate.items.filter(({ green }) => !green).length;

describe('the order of pouring', () => {
  const order = pourOrder(holes).map((each) => each.hole);

  test('leaves out what is poured', () => {
    expect(order).not.toContain('P');
    expect(order).not.toContain('1');
    expect(order).toHaveLength(holes.length - 2);
  });

  test('has the hole with the least missing first', () => {
    const counts = order.map(missing);
    expect(counts).toEqual([...counts].sort((p, q) => p - q));
    expect(counts[0]).toBeLessThan(counts.at(-1)!);
  });
});

test('a hole has the mark that it has in Set, and beside it what it still wants for concrete', () => {
  for (const each of holes) {
    const { note, ...look } = pourLook(each);
    expect(look).toEqual(setLook(each));
    expect(note).toMatch(/^(poured|\d+ missing)$/);
    if (each.set.done && each.hole !== '7') expect(digLook(each)).toEqual(setLook(each));
  }
  // In Dig, a hole that waits for a decision shows that, however good its post is.
  expect(setLook(hole('7'))).toMatchObject({ verdict: 'in' });
  expect(digLook(hole('7'))).toEqual({ state: 'set', verdict: 'unsure', undecided: true });
  expect(holeWords(digLook(hole('7')))).toBe('set, waits for a decision');
  expect(pourLook(hole('1')).note).toBe('poured');
  // In, and guarded; but nobody has ticked anything.
  expect(pourLook(hole('2'))).toMatchObject({ state: 'set', verdict: 'in', note: '6 missing' });
  const open = { ...hole('2'), pourGate: { open: true, items: [] } };
  expect(pourLook(open)).toMatchObject({ verdict: 'in', note: 'ready' });
});

describe('bags', () => {
  const litres = (label: string) => fillOf(book.view, hole(label))!.fill.concrete * 1000;

  test('of a post’s hole: as dug, over the gravel, less the post', () => {
    const found = fillOf(book.view, hole('2'))!;
    const dug = book.view.book.dug('2').at(-1)!.entry.body;
    const { section } = book.view.sited.get('2')!;
    if (section.kind !== 'post') throw new Error(section.kind);
    const floor = (Math.PI / 4) * dug.width.m ** 2 - section.width * section.depth;
    expect(litres('2')).toBeCloseTo(floor * (dug.depth.m - book.view.plan.rules.gravel.m) * 1000, 6);
    expect(found.words).toMatch(/^the hole as dug, .* wide, over 6″ of gravel, less the post in it\.$/);
  });

  test('of a pier: nothing comes off, and what rises above the ground is said not to be counted', () => {
    const dug = book.view.book.dug('P').at(-1)!.entry.body;
    const filled = (Math.PI / 4) * dug.width.m ** 2 * (dug.depth.m - book.view.plan.rules.gravel.m);
    expect(litres('P')).toBeCloseTo(filled * 1000, 6);
    expect(fillOf(book.view, hole('P'))!.words).toMatch(/rises above the ground is not counted/);
  });
});
