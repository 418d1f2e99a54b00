import { describe, expect, it } from 'vitest';
import type { GateItem } from '../../src/judge/types.ts';
import { leanOf, pointAt } from './fake-view.ts';
import { mm, post, ringPlan } from './field.ts';
import { itemOf, reds } from './gate-items.ts';
import { type Change, dug, gate, postAt, secondPost } from './pour-book.ts';

describe('pour gate', () => {
  it('opens when every item is green', () => {
    expect(reds(gate())).toEqual([]);
    expect(gate().open).toBe(true);
    expect(gate().items.map(({ item }) => item)).toEqual([
      'dug',
      'depth',
      'width',
      'obstruction',
      'clean',
      'gravel',
      'set',
      'position',
      'checked',
      'spacing',
      'plumb',
      'level',
      'room',
      'braced',
      'inspection',
      'weather',
    ]);
  });

  const closers: [string, GateItem['item'][], Change][] = [
    ['a stake is believed to have moved', ['baseline'], { baselineTrouble: 'Stake A has moved.' }],
    ['the hole is not dug', ['dug', 'depth', 'width', 'obstruction'], { skip: ['dug'] }],
    ['the hole is too shallow', ['depth'], { after: dug(950) }],
    ['the depth is too close to tell', ['depth'], { after: dug(1003) }],
    ['the hole is too narrow', ['width'], { after: dug(1020, 370) }],
    [
      'rock was met and nobody has decided',
      ['obstruction', 'room', 'inspection'],
      {
        after: (f) => {
          f.dig('1', 1020, 400, 'rock').tick('clean', '1').tick('gravel', '1');
        },
      },
    ],
    [
      'rock was met and only the whole job was inspected',
      ['obstruction', 'room'],
      {
        after: (f) => {
          f.dig('1', 1020, 400, 'rock').tick('clean', '1').tick('gravel', '1').tick('inspection');
        },
      },
    ],
    ['the bottom is not clean', ['clean'], { skip: ['clean', 'clean still'] }],
    ['nobody looked at the bottom since the post was set', ['clean'], { skip: ['clean still'] }],
    ['the gravel is not in', ['gravel'], { skip: ['gravel'] }],
    [
      'it was dug again since it was cleaned and inspected',
      ['clean', 'gravel', 'room', 'inspection'],
      {
        after: (f) => {
          f.dig('1', 1030);
        },
      },
    ],
    [
      'the post is not set',
      ['set', 'position', 'checked', 'spacing', 'plumb', 'level', 'room'],
      {
        skip: ['set', 'front', 'back', 'left', 'right', 'top', 'top again'],
        measured: { points: [], heights: [] },
      },
    ],
    ['the post is out of place', ['position'], { measured: postAt(0.03) }],
    ['the place may be in or out', ['position'], { measured: postAt(0.011) }],
    [
      'the place is not measured',
      ['position', 'checked'],
      { measured: { points: [pointAt(post('1'), null, { lean: leanOf(0, 0) })] } },
    ],
    [
      'no spare pull guards the place',
      ['checked'],
      { measured: postAt(0, {}, 0.002, Number.POSITIVE_INFINITY) },
    ],
    [
      'a pull to it is believed wrong',
      ['checked'],
      {
        before: (f) => {
          f.pull({ kind: 'stake', label: 'A' }, post('1'));
        },
        measured: {
          pulls: [
            {
              entry: 'entry-0005',
              current: true,
              predicted: 8,
              residual: 0.02,
              sigma: 0.002,
              redundancy: 0.5,
              standardised: 9,
              smallestCaught: 0.01,
            },
          ],
          suspicions: [{ entries: ['entry-0005'], misreading: 0.025 }],
        },
      },
    ],
    ['the readings contradict one another', ['checked'], { measured: { settled: false } }],
    [
      'a neighbour that stands is not measured',
      ['spacing'],
      {
        before: (f) => {
          f.set('2');
        },
      },
    ],
    [
      'the spacing is out',
      ['spacing'],
      {
        before: (f) => {
          f.set('2');
        },
        measured: secondPost(0.05),
      },
    ],
    ['it leans too much', ['plumb'], { measured: postAt(0, { lean: leanOf(0.01, 0) }) }],
    [
      'the lean is measured one way only',
      ['plumb'],
      { skip: ['left', 'right'], measured: postAt(0, { lean: null }) },
    ],
    ['plumb was read once each way', ['plumb'], { skip: ['back', 'right'] }],
    ['plumb was read twice in one direction only', ['plumb'], { skip: ['right'] }],
    [
      'two plumb readings do not agree',
      ['plumb'],
      {
        after: (f) => {
          f.plumb('1', 'front', 20);
        },
      },
    ],
    [
      'the top is too high',
      ['level'],
      { measured: { heights: [{ key: 'top:1', height: 0.82, sigma: 0.001 }] } },
    ],
    ['the top was read once', ['level'], { skip: ['top again'] }],
    ['the benchmark was read once', ['level'], { skip: ['benchmark again'] }],
    [
      'two readings of the top do not agree',
      ['level'],
      {
        after: (f) => {
          f.top('1', 820);
        },
      },
    ],
    ['it is not braced', ['braced'], { skip: ['braced'] }],
    [
      'it was nudged since, and nothing measured again',
      ['plumb', 'level', 'room', 'braced'],
      {
        after: (f) => {
          f.add({ kind: 'stand', thing: post('1'), event: 'nudged' });
        },
      },
    ],
    ['it is not inspected', ['inspection'], { skip: ['inspection'] }],
    ['the weather is not ticked', ['weather'], { skip: ['weather'] }],
    [
      'the weather was ticked yesterday',
      ['weather'],
      {
        after: (f) => {
          f.wait(13).add({ kind: 'note', text: 'next morning' });
        },
      },
    ],
    [
      'the weather was ticked by a clock that was a day ahead',
      ['weather'],
      {
        skip: ['weather'],
        before: (f) => {
          f.wait(24).tick('weather').wait(-24);
        },
      },
    ],
  ];
  for (const [name, closed, change] of closers) {
    it(`stays shut while ${name}`, () => {
      const shut = gate(change);
      expect(reds(shut)).toEqual(closed);
      expect(shut.open).toBe(false);
      for (const item of closed) expect(itemOf(shut, item).text).toMatch(/^[A-Z].*\.$/s);
    });
  }

  it('opens over rock once whoever is responsible has decided on this very hole', () => {
    expect(reds(gate({ after: dug(1020, 400, 'rock') }))).toEqual([]);
    const item = itemOf(gate({ after: dug(1020, 400, 'rock') }), 'obstruction');
    expect(item.text).toBe('Rock was met: decided at the inspection of this hole.');
  });
  it('lets a neighbour that does not stand yet wait for its own gate', () => {
    expect(itemOf(gate(), 'spacing').text).toBe('No neighbour stands yet: its gate will judge the spacing.');
  });
  it('asks for no gravel where the plan wants none', () => {
    const bare = ringPlan('mm', { rules: { ...ringPlan().rules, gravel: mm(0) } });
    const shut = gate({
      skip: ['gravel'],
      after: (f) => {
        f.add({ kind: 'plan', plan: bare });
      },
    });
    expect(itemOf(shut, 'gravel')).toEqual({
      item: 'gravel',
      green: true,
      text: 'The plan asks for no gravel.',
    });
  });
  it('is green on spacing when the neighbours that stand are right', () => {
    const gateWithTwo = gate({
      before: (f) => {
        f.set('2');
      },
      measured: secondPost(0),
    });
    expect(itemOf(gateWithTwo, 'spacing')).toMatchObject({ green: true });
  });
  it('is red on spacing while nothing guards the place of a neighbour that stands', () => {
    const { points = [] } = secondPost(0);
    const unguarded = points.map((point) =>
      point.thing.kind === 'post' && point.thing.hole === '2' && point.fix
        ? { ...point, fix: { ...point.fix, unseenShift: Number.POSITIVE_INFINITY } }
        : point,
    );
    const found = gate({
      before: (f) => {
        f.set('2');
      },
      measured: { points: unguarded },
    });
    expect(reds(found)).toEqual(['spacing']);
    expect(itemOf(found, 'spacing').text).toBe(
      'Post 1 to post 2 is no surer than the two places: guard post 2 with a spare pull.',
    );
  });
  it('judges by the tolerances of the plan that stands', () => {
    const strict = ringPlan('mm', { tolerances: { ...ringPlan().tolerances, level: mm(0.5) } });
    expect(
      reds(
        gate({
          after: (f) => {
            f.add({ kind: 'plan', plan: strict });
          },
        }),
      ),
    ).toEqual(['level']);
  });
});
