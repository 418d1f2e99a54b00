import { describe, expect, test } from 'vitest';
import type { Body, Side } from '../../src/job/entry-schema.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { describeEntry, shapeName, sideName, thingName, touchName, turningOf } from '../../src/job/words.ts';
import { holesOf } from '../../src/plan/index.ts';
import { inches, sampleBodies, samplePlan } from './sample.ts';

const line = (body: Body, plan: Plan | null = samplePlan): string => describeEntry({ body }, plan);
const gridHolds = { ...samplePlan.each.holds, turned: 'grid' } as Plan['each']['holds'];

describe('one line of the field book', () => {
  test('says of a stand that was found out later that it was', () => {
    const moved: Body = { ...sampleBodies.stand, event: 'moved', since: 'entry-0001' };
    expect(line(moved)).toBe('Stake A moved, found by an earlier pull');
  });

  test.each([
    ['plan', 'Plan “Garden room”: 8 posts on a ring round a pier'],
    ['site', 'A and B placed by Swingtape: A 12′ 0″ left, 15′ 6″ behind; B 12′ 0″ right, 15′ 6″ behind'],
    ['stand', 'Stake A driven'],
    ['pull', 'Pull A to post 4, the middle of the outer face: 18′ 6 5/16″, level'],
    ['plumb', 'Post 4, clockwise face: top leans out 1/8″ over 4′ 0″'],
    ['rod', 'Rod on the top of pier P: 4′ 6″, set-up 1'],
    ['dug', 'Hole 4 dug: 3′ 8″ deep, 1′ 4″ wide, rock met (shelf on the north side)'],
    ['check', 'Ticked for the whole job: buried utilities marked'],
    ['pour', 'Hole 4 poured: 4 bags'],
    ['note', 'Note on hole 4: spoil heap moved'],
  ] as const)('%s', (kind, expected) => {
    expect(line(sampleBodies[kind])).toBe(expected);
  });

  test('the middle of a dug hole is a place that tapes go to, and is another once the hole is made wider', () => {
    const middle = { kind: 'dug-hole', hole: '4' } as const;
    const to = { thing: middle, touch: { at: 'centre' } } as const;
    expect(line({ ...sampleBodies.pull, to })).toBe('Pull A to the middle of hole 4: 18′ 6 5/16″, level');
    expect(line({ kind: 'stand', thing: middle, event: 'moved' })).toBe(
      'Hole 4 shaved or made wider: its middle is another',
    );
  });

  test('a depth says what it was read from, where that was not the lip', () => {
    const mark = { from: 'string', reading: inches('4 8'), above: inches('1 0') } as const;
    expect(line({ ...sampleBodies.dug, mark })).toMatch(
      /^Hole 4 dug: 3′ 8″ deep \(4′ 8″ from a string, 1′ 0″ above the lip\), 1′ 4″ wide/,
    );
    expect(line({ ...sampleBodies.dug, mark: { ...mark, from: 'level' } })).toContain(
      'deep (by the level), ',
    );
  });

  test('a tick of the job’s own is told by its name, a pour with its batch and its own time', () => {
    const asked: Body = { kind: 'check', hole: '4', item: 'asked', asked: 'conduit sleeve', done: true };
    expect(line(asked)).toBe('Ticked for hole 4: conduit sleeve');
    expect(line({ kind: 'check', hole: '4', item: 'room', done: true })).toBe(
      'Ticked for hole 4: room all round for concrete',
    );
    expect(line({ kind: 'check', hole: '4', item: 'inspection', done: true, decides: 'moved' })).toBe(
      'Ticked for hole 4: decision on what moved since the concrete went in',
    );
    expect(line({ ...sampleBodies.pour, batch: 'K7', time: '2026-05-16T14:20:00.000Z' })).toBe(
      'Hole 4 poured: 4 bags, batch K7, at 2026-05-16 14:20 UTC',
    );
  });

  test('strike', () => {
    expect(line({ kind: 'strike', entry: 'entry-0001', reason: 'misread' })).toBe(
      'Struck out an entry: misread',
    );
  });

  test('a pull says how the tape was held and how high it touched', () => {
    const { pull } = sampleBodies;
    const high = { ...pull.to, height: inches('2 6') };
    expect(line({ ...pull, to: high, hold: { how: 'slope', rise: inches('1 2') } })).toBe(
      'Pull A to post 4, the middle of the outer face, 2′ 6″ above the ground: 18′ 6 5/16″, along the slope, rise 1′ 2″',
    );
    expect(line({ ...pull, hold: { how: 'slope' } })).toMatch(/along the slope, rise not known$/);
  });

  test('without a plan the plainest names are used', () => {
    expect(line(sampleBodies.pull, null)).toBe(
      'Pull A to post 4, the middle of the front face: 18′ 6 5/16″, level',
    );
  });

  test('what was measured off a string says with which tape', () => {
    const off = { ...sampleBodies.offset, tape: 'Red', pulling: { temperature: 30 } };
    expect(line(off)).toBe(`${line(sampleBodies.offset)}, tape Red, 86 °F`);
  });

  test('a plumb post is said to be plumb', () => {
    const upright: Body = { ...sampleBodies.plumb, offset: inches('0'), leans: 'none' };
    expect(line(upright)).toBe('Post 4, clockwise face: plumb over 4′ 0″');
  });

  test('a lean is told as the level told it, and both ways round where the level was turned', () => {
    const degrees = { by: 'degrees', degrees: 0.3 } as const;
    const marks = (n: number) => ({ by: 'bubble', marks: n, perMark: 0.02 }) as const;
    const { plumb } = sampleBodies;
    expect(line({ ...plumb, read: degrees })).toBe('Post 4, clockwise face: top leans out 0.3° over 4′ 0″');
    expect(line({ ...plumb, leans: 'in', read: marks(0.5), markUp: true })).toBe(
      'Post 4, clockwise face: top leans in 0.5 marks over 4′ 0″, marked end up',
    );
    expect(line({ ...plumb, turned: { offset: inches('0'), leans: 'none' } })).toBe(
      'Post 4, clockwise face: top leans out 1/8″ over 4′ 0″; turned end for end, plumb',
    );
    expect(line({ ...plumb, turned: { offset: inches('1/8'), leans: 'in', read: marks(1) } })).toMatch(
      /; turned end for end, top leans in 1 mark$/,
    );
  });

  test('a twist says off what, and both edges', () => {
    expect(line(sampleBodies.twist)).toBe(
      'Post 4, off the string post 3 to post 5: 2 1/4″ and 2″ to the anticlockwise and clockwise edge of its outer face',
    );
    const at = { thing: { kind: 'stake', label: 'A' }, touch: { at: 'nail' } } as const;
    expect(line({ ...sampleBodies.twist, from: { by: 'tape', at } })).toMatch(/^Post 4, from A: 2 1/);
  });

  test('rod points', () => {
    const rod = (on: typeof sampleBodies.rod.on) => line({ ...sampleBodies.rod, on }).replace(/:.*/, '');
    expect(rod({ point: 'benchmark' })).toBe('Rod on the benchmark');
    expect(rod({ point: 'ground', hole: '2' })).toBe('Rod on the ground at hole 2');
    expect(rod({ point: 'bottom', hole: '2' })).toBe('Rod on the bottom of hole 2');
    expect(rod({ point: 'turning-point', label: '1' })).toBe('Rod on turning point 1');
    expect(rod({ point: 'stake', label: 'A' })).toBe('Rod on stake A');
  });
});

describe('names', () => {
  test('things', () => {
    expect(thingName({ kind: 'stake', label: 'A' })).toBe('A');
    expect(thingName({ kind: 'nail', label: 'N1' })).toBe('nail N1');
    expect(thingName({ kind: 'hole-stake', hole: '3' })).toBe('stake 3');
    expect(thingName({ kind: 'post', hole: '3' }, samplePlan)).toBe('post 3');
    expect(thingName({ kind: 'post', hole: 'P' }, samplePlan)).toBe('pier P');
    expect(thingName({ kind: 'post', hole: 'P' })).toBe('pier P');
  });

  test('a hole that holds a pier by an override is a pier, and a point labelled P that holds a post is none', () => {
    const plan: Plan = {
      ...samplePlan,
      shape: { kind: 'points', points: [] },
      overrides: { '3': { holds: samplePlan.pier.holds } },
    };
    expect(thingName({ kind: 'post', hole: '3' }, plan)).toBe('pier 3');
    expect(thingName({ kind: 'post', hole: 'P' }, plan)).toBe('post P');
  });

  test('seen from above, going anticlockwise round a post whose front looks out: outer, anticlockwise, inner, clockwise', () => {
    const sides: Side[] = ['front', 'left', 'back', 'right'];
    const round = ['outer', 'anticlockwise', 'inner', 'clockwise'];
    expect(sides.map((side) => sideName(side, 'centre'))).toEqual(round);
    expect(sides.map((side) => sideName(side, 'grid'))).toEqual(sides);
  });

  test('turning follows the post, not the shape', () => {
    expect(turningOf(samplePlan, '1')).toBe('centre');
    const plan: Plan = { ...samplePlan, each: { ...samplePlan.each, holds: gridHolds } };
    expect(turningOf(plan, '1')).toBe('grid');
    expect(line(sampleBodies.pull, plan)).toMatch(/the middle of the front face/);
    expect(turningOf({ ...samplePlan, overrides: { '1': { holds: gridHolds } } }, '1')).toBe('grid');
  });

  test('a face of a pier is named by the way that it is measured to look: along the grid, also on a ring', () => {
    const plan: Plan = { ...samplePlan, overrides: { '3': { holds: samplePlan.pier.holds } } };
    for (const hole of holesOf(plan).filter(({ section }) => section.kind === 'pier')) {
      expect(hole.facing).toBe(Math.PI / 2);
      expect(turningOf(plan, hole.label)).toBe('grid');
    }
    expect(line({ ...sampleBodies.plumb, hole: 'P' }, plan)).toMatch(/^Pier P, right face: /);
  });

  test('touches', () => {
    expect(touchName({ at: 'nail' }, 'centre')).toBe('the nail');
    expect(touchName({ at: 'centre' }, 'centre')).toBe('the centre mark');
    expect(touchName({ at: 'near-side' }, 'centre')).toBe('its near side');
    expect(touchName({ at: 'face', side: 'back' }, 'centre')).toBe('the middle of the inner face');
    expect(touchName({ at: 'corner', side: 'right' }, 'grid')).toBe(
      'the corner of the right and front faces',
    );
  });

  test('shapes', () => {
    const length = inches('8 0');
    expect(
      shapeName({
        kind: 'rows',
        columns: 3,
        rows: 2,
        measuredTo: 'centres',
        columnSpacing: length,
        rowSpacing: length,
      }),
    ).toBe('3 × 2 posts in rows');
    expect(shapeName({ kind: 'points', points: [{ label: '1', right: length, front: length }] })).toBe(
      '1 hole, each placed by itself',
    );
  });
});
