import { describe, expect, test } from 'vitest';
import type { Thing } from '../../../src/job/entry-schema.ts';
import { zoomed } from '../../../src/screens/set/set-zoom.ts';
import type { DrawnHole } from '../../../src/ui/index.ts';

const hole = (label: string, x: number, y: number, live = false): DrawnHole => ({
  label,
  place: { x, y },
  state: 'set',
  ...(live ? { live } : {}),
});
const stake = (label: string): Thing => ({ kind: 'stake', label });
const C = { thing: stake('C'), label: 'C', place: { x: 5, y: -40 } };
const N = { thing: { kind: 'nail', label: 'N' } as const, label: 'N', place: { x: 1, y: 3 } };

/** A row of posts a metre apart along y = 4, A and B below it. */
const drawn = {
  holes: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((x) => hole(String(x), x, 4, x === 1)),
  stakes: { a: { x: 0, y: 0 }, b: { x: 3, y: 0 } },
};
const labels = (from: readonly Thing[]) => zoomed(drawn, [C, N], from).holes.map(({ label }) => label);

describe('the drawing of one post', () => {
  test('from A and B: the posts that lie about the tapes, and no stake that no tape comes from', () => {
    const near = zoomed(drawn, [C, N], [stake('A'), stake('B')]);
    expect(near.references).toEqual([]);
    expect(near.focus).toBeUndefined();
    expect(labels([stake('A'), stake('B')])).toEqual(['0', '1', '2', '3', '4', '5']);
  });
  test('from a nail: as far as that, with it', () => {
    const near = zoomed(drawn, [C, N], [N.thing]);
    expect(near.references).toEqual([N]);
    expect(near.focus!.at).toEqual({ x: 1, y: 4 });
    expect(near.focus!.reach).toBeGreaterThan(1);
    expect(near.focus!.reach).toBeLessThan(1.3);
  });
  test('without a tape: the posts next to it', () => {
    const { focus, references } = zoomed(drawn, [C, N], []);
    expect(references).toEqual([]);
    expect(focus!.reach).toBeGreaterThan(2);
    expect(focus!.reach).toBeLessThan(3);
  });
  test('without a post at hand all is shown', () => {
    const none = { ...drawn, holes: drawn.holes.map(({ live: _, ...rest }) => rest) };
    expect(zoomed(none, [C, N], [])).toEqual({ holes: none.holes, references: [C, N] });
  });
});
