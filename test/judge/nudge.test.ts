import { describe, expect, it } from 'vitest';
import { add, distance, scale, unit } from '../../src/geometry/point.ts';
import type { Side } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { sideBearing, touchOffset } from '../../src/plan/index.ts';
import { Field, mm, post, stake } from './field.ts';
import { holeOf } from './ring-job.ts';

const A = stake('A');
const B = stake('B');
const FACES = ['front', 'left', 'back', 'right'] as const;

/** Post 1 stands on its mark; its top is `out` past the front and `left` past the left face, in 1 m; four faces read. */
function leaning(out: number, left: number): Field {
  const field = new Field().site();
  for (let i = 0; i < 2; i++) field.pull(A, B);
  field.set('1');
  for (let i = 0; i < 2; i++) field.pullsTo(post('1'), [A, B]);
  plumbAll(field, out, left);
  return field;
}

function plumbAll(field: Field, out: number, left: number): void {
  const reads: Record<Side, number> = { front: out, back: -out, left, right: -left };
  for (const side of FACES) field.plumb('1', side, reads[side]);
}

const setOf = (field: Field) => holeOf(assess(field.log), '1').set;

describe('a post out of plumb', () => {
  it('is told which way its top goes, how far at the top of the level, and what the level then reads', () => {
    // The front face looks away from the pier: a top that leans out 10 mm in 1 m is to come 10 mm toward the pier.
    const { plumb, plumbNudge } = setOf(leaning(10, 0));
    expect(plumb).toMatchObject({ verdict: 'out', checked: true });
    expect(plumbNudge).toMatchObject({ over: 1, distance: expect.closeTo(0.01, 9) });
    expect(plumbNudge!.words).toBe(
      'Push the top of post 1: 10 mm toward the pier, measured 1000 mm above the foot of the level.',
    );
    expect(plumbNudge!.levels.map(({ side, gap, now }) => [side, gap, Math.round(now! * 1000) + 0])).toEqual([
      ['front', 0, 10],
      ['left', 0, 0],
    ]);
    expect(plumbNudge!.levels[0]!.words).toBe(
      'Level on the outer face: bubble in the middle, no gap over 1000 mm; now the top leans 10 mm out',
    );
  });

  it.each([
    [12, 5],
    [-9, 7],
    [3, -11],
  ])('that leans %d mm out and %d mm left is plumb once its top went as told', (out, left) => {
    const field = leaning(out, left);
    const nudge = setOf(field).plumbNudge!;
    const push = scale(unit(nudge.bearing), nudge.distance / nudge.over);
    const { facing } = field.laid.holes.find(({ label }) => label === '1')!;
    const along = (side: Side) => {
      const n = unit(sideBearing(facing, side));
      return 1000 * (push.x * n.x + push.y * n.y);
    };
    field.add({ kind: 'stand', thing: post('1'), event: 'nudged' });
    for (let i = 0; i < 2; i++) field.pullsTo(post('1'), [A, B]);
    plumbAll(field, out + along('front'), left + along('left'));
    expect(setOf(field)).toMatchObject({
      plumb: { verdict: 'in', checked: true, error: expect.closeTo(0, 6) },
    });
    expect(setOf(field).plumbNudge).toBeNull();
  });

  it('is not pushed on the word of a level that looks misread, nor in concrete, nor when it is plumb', () => {
    expect(setOf(leaning(0, 0)).plumbNudge).toBeNull();
    const field = leaning(10, 0);
    field.add({ kind: 'pour', hole: '1', bags: 10 });
    expect(setOf(field).plumbNudge).toBeNull();
    const doubted = leaning(10, 0);
    doubted.plumb('1', 'front', -40);
    expect(setOf(doubted).plumbNudge).toBeNull();
  });
});

describe('a foot off its mark', () => {
  it('is right when the tapes read it on its mark and the bubble stands in the middle on two faces', () => {
    const field = new Field().site().off(post('1'), 0.025, 0);
    for (let i = 0; i < 2; i++) field.pull(A, B);
    field.set('1');
    for (let i = 0; i < 2; i++) field.pullsTo(post('1'), [A, B]);
    const { nudge } = setOf(field);
    expect(nudge!.levels.map(({ side, gap, now }) => [side, gap, now])).toEqual([
      ['front', 0, null],
      ['left', 0, null],
    ]);
    expect(nudge!.levels[1]!.words).toMatch(
      /^Level on the anticlockwise face: bubble in the middle, no gap over 1200 mm$/,
    );
  });

  it('of a leaning post is held by a tape that meets it above the ground, where the lean is part of the reading', () => {
    const field = new Field().site().off(post('1'), 0.03, 0);
    for (let i = 0; i < 2; i++) field.pull(A, B);
    field.set('1');
    field.pullsTo(post('1'), [A, B]);
    plumbAll(field, 4, 0);
    const height = mm(800);
    const to = { thing: post('1'), touch: { at: 'face', side: 'back' }, height } as const;
    const hole = field.laid.holes.find(({ label }) => label === '1')!;
    const lean = scale(unit(sideBearing(hole.facing, 'front')), 0.004);
    const from = (foot: { x: number; y: number }) =>
      distance(
        { x: 0, y: 0 },
        add(add(foot, scale(lean, 0.8)), touchOffset(hole.section, hole.facing, to.touch, 0)!),
      );
    field.add({
      kind: 'pull',
      from: { thing: A, touch: { at: 'nail' } },
      to,
      reading: mm(1000 * from(field.placeOf(post('1')))),
      hold: { how: 'level' },
    });
    const reading = setOf(field).nudge!.readings.find(
      (each) => each.from.thing.kind === 'stake' && each.from.thing.label === 'A',
    )!;
    expect(reading.to).toMatchObject({ touch: { at: 'face', side: 'back' }, height });
    expect(reading.reading).toBeCloseTo(from(hole.site), 4);
  });
});
