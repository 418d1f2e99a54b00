import { describe, expect, it } from 'vitest';
import type { Vec } from '../../src/geometry/point.ts';
import { SIDES } from '../../src/job/entry-schema.ts';
import { sideToward, touchOffset, touchPoint } from '../../src/plan/touch.ts';

const post = { kind: 'post', width: 0.2, depth: 0.1 } as const;
const pier = { kind: 'pier', diameter: 0.3 } as const;
const NORTH = Math.PI / 2;

function expectVec(got: Vec | null, x: number, y: number) {
  expect(got?.x).toBeCloseTo(x, 12);
  expect(got?.y).toBeCloseTo(y, 12);
}

describe('what a tape touches', () => {
  it.each([
    ['front', 0, 0.05],
    ['left', -0.1, 0],
    ['back', 0, -0.05],
    ['right', 0.1, 0],
  ] as const)('middle of the %s face of a post that looks to +y', (side, x, y) => {
    expectVec(touchOffset(post, NORTH, { at: 'face', side }, 0), x, y);
  });

  it.each([
    ['front', -0.1, 0.05],
    ['left', -0.1, -0.05],
    ['back', 0.1, -0.05],
    ['right', 0.1, 0.05],
  ] as const)('corner %s lies between that face and the next one anticlockwise', (side, x, y) => {
    expectVec(touchOffset(post, NORTH, { at: 'corner', side }, 0), x, y);
  });

  it('turns with the post', () => {
    expectVec(touchOffset(post, 0, { at: 'face', side: 'left' }, 0), 0, 0.1);
    expectVec(touchOffset(post, Math.PI, { at: 'face', side: 'front' }, 0), -0.05, 0);
  });

  it('takes the near side of a round wherever the tape comes from', () => {
    expectVec(touchOffset(pier, NORTH, { at: 'near-side' }, Math.PI), -0.15, 0);
    expect(touchPoint(pier, NORTH, { at: 'near-side' })).toEqual({ kind: 'near-side', radius: 0.15 });
  });

  it('takes nails and centre marks where they are', () => {
    for (const at of ['nail', 'centre'] as const)
      for (const section of [post, pier, null]) expectVec(touchOffset(section, 1, { at }, 2), 0, 0);
  });

  it('knows no face of a round, no near side of a square, and neither of a stake', () => {
    expect(touchOffset(pier, 0, { at: 'face', side: 'front' }, 0)).toBeNull();
    expect(touchOffset(pier, 0, { at: 'corner', side: 'front' }, 0)).toBeNull();
    expect(touchOffset(post, 0, { at: 'near-side' }, 0)).toBeNull();
    expect(touchOffset(null, 0, { at: 'face', side: 'front' }, 0)).toBeNull();
    expect(touchOffset(null, 0, { at: 'near-side' }, 0)).toBeNull();
  });
});

describe('the face that looks towards a bearing', () => {
  it('is the side itself, up to an eighth of a turn either way', () => {
    SIDES.forEach((side, i) => {
      for (const turn of [-0.7, 0, 0.7]) expect(sideToward(0.3, 0.3 + (i * Math.PI) / 2 + turn)).toBe(side);
    });
  });

  it('is always the same one on the diagonal', () => {
    expect(sideToward(0, Math.PI / 4)).toBe('front');
    expect(sideToward(0, -Math.PI / 4)).toBe('front');
    expect(sideToward(0, (3 * Math.PI) / 4)).toBe('left');
  });
});
