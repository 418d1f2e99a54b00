import { describe, expect, it } from 'vitest';
import {
  cellWords,
  type Ground,
  leanCellWords,
  leanWords,
  listWords,
  moveWords,
  small,
  wayWords,
} from '../../src/judge/words.ts';
import type { Units } from '../../src/units/index.ts';

const inch = 0.0254;
const ground = (around: Ground['around'], units: Units = 'ft-in-16'): Ground => ({
  units,
  centre: { x: 10, y: 5 },
  front: { x: 0, y: 1 },
  around,
});
/** Three metres to the right of the centre, as one faces the front. */
const at = { x: 13, y: 5 };

describe('moveWords', () => {
  it('toward and away from the middle of a ring', () => {
    expect(moveWords(at, { x: -0.625 * inch, y: 0 }, ground('pier'))).toBe('5/8″ toward the pier');
    expect(moveWords(at, { x: 0.625 * inch, y: 0 }, ground('centre'))).toBe('5/8″ away from the centre');
  });
  it('round a ring, seen from above', () => {
    expect(moveWords(at, { x: 0, y: 0.5 * inch }, ground('pier'))).toBe('1/2″ anticlockwise seen from above');
    expect(moveWords(at, { x: 0, y: -0.5 * inch }, ground('pier'))).toBe('1/2″ clockwise seen from above');
  });
  it('both ways when neither is small, the greater first', () => {
    expect(moveWords(at, { x: -0.25 * inch, y: 0.5 * inch }, ground('pier'))).toBe(
      '1/2″ anticlockwise seen from above and 1/4″ toward the pier',
    );
  });
  it('one way with the whole length when the other is small', () => {
    expect(moveWords(at, { x: -1 * inch, y: 0.29 * inch }, ground('pier'))).toBe('1 1/16″ toward the pier');
  });
  it('by the front of rows and free points', () => {
    expect(moveWords(at, { x: 0, y: 0.012 }, ground(null, 'm'))).toBe('12 mm toward the front');
    expect(moveWords(at, { x: 0, y: -0.012 }, ground(null, 'm'))).toBe('12 mm toward the back');
    expect(moveWords(at, { x: 0.012, y: 0 }, ground(null, 'm'))).toBe(
      '12 mm to the right as you face the front',
    );
    expect(moveWords(at, { x: -0.012, y: 0 }, ground(null, 'm'))).toBe(
      '12 mm to the left as you face the front',
    );
  });
  it('by the front for what stands in the middle itself', () => {
    expect(moveWords({ x: 10, y: 5 }, { x: 0, y: 0.01 }, ground('pier', 'mm'))).toBe(
      '10 mm toward the front',
    );
  });
  it('never says a sign', () => {
    for (const x of [-0.01, 0.01])
      for (const y of [-0.02, 0.02])
        expect(moveWords(at, { x, y }, ground('pier', 'mm'))).not.toMatch(/[-−]/);
  });
  it('wayWords gives the way alone', () => {
    expect(wayWords(at, { x: -0.004, y: 0.001 }, ground('pier'))).toBe('toward the pier');
  });
});

describe('small lengths and leans', () => {
  it('says a millimetre job in millimetres and a foot job in its fractions', () => {
    expect(small(0.0123, 'm')).toBe('12 mm');
    expect(small(-0.0123, 'mm')).toBe('12 mm');
    expect(small(0.0127, 'ft-in-16')).toBe('1/2″');
    expect(small(0.0305, 'ft')).toBe('0.10 ft');
  });
  it('does not round what is there to nothing', () => {
    expect(small(0.0003, 'm')).toBe('under 1 mm');
    expect(small(0.0005, 'ft-in-16')).toBe('under 1/16″');
    expect(small(0, 'm')).toBe('0 mm');
  });
  it('tells a lean over a four-foot level or over a metre', () => {
    // 1/4 in in 10 ft, a figure often used for rough framing (common practice), is 1/10 in in 4 ft.
    expect(leanWords(0.25 / 120, 'ft-in-16')).toBe('3/32″ in 4′');
    expect(leanWords(0.25 / 120, 'ft')).toBe('0.02 ft in 10 ft');
    expect(leanWords(0.005, 'm')).toBe('5 mm in 1 m');
  });
  it('tells a lean that is too much from the one that is allowed, however near', () => {
    // A third more than 1/4 in in 10 ft: as sure a fault as a level can show.
    expect(leanWords(0.335 / 120, 'ft-in-16')).toBe('1/8″ in 4′');
    expect(leanWords(0.335 / 120, 'ft')).toBe('0.03 ft in 10 ft');
  });
  it('writes cells with the verdict first and never a doubt of nothing', () => {
    expect(cellWords('out', 0.625 * inch, 0.125 * inch, 'ft-in-16')).toBe('out, 5/8″ ± 1/8″');
    expect(cellWords('in', 0.002, 0.0001, 'm')).toBe('in, 2 mm ± 1 mm');
    expect(leanCellWords('unsure', 0.005, 0.002, 'm')).toBe('unsure, 5 mm ± 2 mm in 1 m');
    expect(leanCellWords('in', 0.0013, 0.0013, 'ft-in-16')).toBe('in, 1/16″ ± 1/16″ in 4′');
  });
  it('lists things as people do', () => {
    expect(listWords([])).toBe('');
    expect(listWords(['A'])).toBe('A');
    expect(listWords(['A', 'B'])).toBe('A and B');
    expect(listWords(['A', 'B', 'post 3'], 'or')).toBe('A, B or post 3');
  });
});
