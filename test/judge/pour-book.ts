import type { HoleDepth } from '../../src/build/index.ts';
import { judgeDug } from '../../src/judge/dug.ts';
import { judgeLevel } from '../../src/judge/level.ts';
import { judgePlumb } from '../../src/judge/plumb.ts';
import { judgePosition } from '../../src/judge/position.ts';
import { pourGate } from '../../src/judge/pour-gate.ts';
import { judgeRoom } from '../../src/judge/room.ts';
import { judgeSpacing } from '../../src/judge/spacing.ts';
import type { Gate } from '../../src/judge/types.ts';
import { type FakeMeasured, fakeView, fixAt, leanOf, pointAt } from './fake-view.ts';
import { Field, post } from './field.ts';

const REQUIRED = 1.0;
export interface Change {
  readonly baselineTrouble?: string;
  readonly lacks?: HoleDepth['lacks'];
  readonly before?: (field: Field) => void;
  readonly after?: (field: Field) => void;
  readonly skip?: readonly string[];
  readonly measured?: FakeMeasured;
}

/** A field book in which everything about hole 1 is right, but for the steps that are skipped. */
function book({ before, after, skip = [] }: Change): Field {
  const field = new Field().site();
  before?.(field);
  const steps: [string, () => void][] = [
    ['dug', () => field.dig('1')],
    ['clean', () => field.tick('clean', '1')],
    ['gravel', () => field.tick('gravel', '1')],
    ['set', () => field.set('1')],
    ['front', () => field.plumb('1', 'front')],
    ['back', () => field.plumb('1', 'back')],
    ['left', () => field.plumb('1', 'left')],
    ['right', () => field.plumb('1', 'right')],
    ['benchmark', () => field.benchmark()],
    ['top', () => field.top('1')],
    ['top again', () => field.top('1')],
    ['benchmark again', () => field.benchmark()],
    ['braced', () => field.tick('braced', '1')],
    ['inspection', () => field.tick('inspection', '1')],
    ['clean still', () => field.tick('clean', '1')],
    ['room', () => field.tick('room', '1')],
    ['weather', () => field.tick('weather')],
  ];
  for (const [name, step] of steps) if (!skip.includes(name)) step();
  after?.(field);
  return field;
}

function measuredOf(field: Field): FakeMeasured {
  return {
    points: [pointAt(post('1'), fixAt(field.placeOf(post('1'))), { lean: leanOf(0, 0) })],
    heights: [{ key: 'top:1', height: 0.8, sigma: 0.001 }],
  };
}

export function gate(change: Change = {}): Gate {
  const field = book(change);
  const view = fakeView(field, { ...measuredOf(field), ...change.measured });
  const hole = view.holes.find(({ label }) => label === '1')!;
  const sited = view.sited.get('1')!;
  const set = {
    position: judgePosition(view, post('1'), sited.site, ''),
    plumb: judgePlumb(view, '1'),
    level: judgeLevel(view, '1', hole.top),
    spacing: hole.neighbours.map((to) => ({ ...judgeSpacing(view, sited, view.sited.get(to)!, null), to })),
  };
  const dugSoFar = judgeDug(view, '1', REQUIRED, hole.holeDiameter);
  const required = { depth: REQUIRED, text: '', lacks: change.lacks ?? null };
  const room = judgeRoom(view, sited, dugSoFar.width.checked);
  return pourGate(view, '1', dugSoFar, set, change.baselineTrouble ?? null, required, room);
}
export const postAt = (right: number, more = {}, sigma?: number, unseen?: number): FakeMeasured => {
  const at = new Field().site().off(post('1'), right, 0).placeOf(post('1'));
  return { points: [pointAt(post('1'), fixAt(at, sigma, unseen), { lean: leanOf(0, 0), ...more })] };
};

export const secondPost = (offset: number): FakeMeasured => {
  const field = new Field().site().off(post('2'), offset, 0);
  return {
    points: [
      pointAt(post('1'), fixAt(field.placeOf(post('1'))), { lean: leanOf(0, 0) }),
      pointAt(post('2'), fixAt(field.placeOf(post('2')))),
    ],
  };
};
export const dug = (depth?: number, width?: number, met?: 'rock') => (f: Field) => {
  f.dig('1', depth, width, met)
    .tick('clean', '1')
    .tick('gravel', '1')
    .tick('inspection', '1')
    .tick('room', '1');
};
