import { expect, test } from 'vitest';
import { offsetWords } from '../../../src/screens/stake/strings/string-words.ts';

const ground = { units: 'm', centre: { x: 0, y: 0 }, front: { x: 0, y: 1 }, around: null } as const;
const hole = { label: '1', site: { x: 2, y: 3 } };
const stakeAt = (label: string, x: number, y: number) => ({
  label,
  site: { x: hole.site.x + x, y: hole.site.y + y },
});
const pair = (...places: [number, number][]) =>
  ({
    how: 'both-sides',
    away: 0.9,
    stakes: places.map(([x, y], i) => stakeAt(`T1${'ab'[i]}`, x, y)),
  }) as unknown as Parameters<typeof offsetWords>[0];
const HALF = 0.9 * Math.SQRT1_2;

test('an offset stake that stands straight ahead is told by one way', () => {
  expect(offsetWords(pair([0, 0.9], [0, -0.9]), hole, ground, null)).toMatch(
    /^T1a goes 900 mm toward the front; T1b goes 900 mm toward the back: the centre is halfway\.$/,
  );
});

test('one between two ways is told by both, so that no two stakes of a hole are sent to one place', () => {
  const one = offsetWords(pair([-HALF, HALF], [HALF, -HALF]), hole, ground, null);
  const square = offsetWords(pair([-HALF, -HALF], [HALF, HALF]), hole, ground, null);
  expect(one).toMatch(/T1a goes 0\.900 m off, 636 mm .* and 636 mm /);
  expect(one.replace(/T1[ab]/g, '')).not.toBe(square.replace(/T1[ab]/g, ''));
});
