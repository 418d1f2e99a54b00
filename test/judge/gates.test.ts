import { describe, expect, it } from 'vitest';
import { digGate } from '../../src/judge/dig-gate.ts';
import { judgeDug } from '../../src/judge/dug.ts';
import { judgeLevel } from '../../src/judge/level.ts';
import { judgePlumb } from '../../src/judge/plumb.ts';
import { judgePosition } from '../../src/judge/position.ts';
import { pourGate } from '../../src/judge/pour-gate.ts';
import { judgeSpacing } from '../../src/judge/spacing.ts';
import type { Gate, GateItem } from '../../src/judge/types.ts';
import { type FakeMeasured, fakeView, fixAt, leanOf, pointAt } from './fake-view.ts';
import { Field, holeStake, mm, post, ringPlan } from './field.ts';

const itemOf = (gate: Gate, item: GateItem['item']): GateItem => {
  const found = gate.items.find((candidate) => candidate.item === item);
  if (!found) throw new Error(`no item ${item}`);
  return found;
};
const reds = (gate: Gate) => gate.items.filter(({ green }) => !green).map(({ item }) => item);

describe('dig gate', () => {
  const REQUIRED = 1.0;
  interface Change {
    readonly log?: (field: Field) => void;
    readonly measured?: FakeMeasured;
    readonly required?: number | null;
    readonly trouble?: string;
  }
  function gate({ log, measured, required = REQUIRED, trouble }: Change = {}): Gate {
    const field = new Field().site();
    if (log) log(field);
    else ready(field);
    const at = field.placeOf(holeStake('1'));
    const view = fakeView(field, {
      points: [pointAt(holeStake('1'), fixAt(at))],
      baseline: { length: 8, sigma: 0.002 },
      ...measured,
    });
    const position = judgePosition(view, holeStake('1'), view.sited.get('1')?.site ?? null, '');
    const rule = {
      depth: required,
      text: required === null ? 'Ask for the frost depth.' : '1000 mm: frost depth.',
    };
    return digGate(view, '1', position, rule, trouble ?? null);
  }
  function ready(field: Field) {
    field.tick('utilities');
    field.add({ kind: 'stand', thing: holeStake('1'), event: 'driven' });
    field.tick('ties', '1');
  }
  const place = (right: number, sigma?: number, unseen?: number) => {
    const field = new Field().site().off(holeStake('1'), right, 0);
    return { points: [pointAt(holeStake('1'), fixAt(field.placeOf(holeStake('1')), sigma, unseen))] };
  };

  it('opens when every item is green', () => {
    expect(reds(gate())).toEqual([]);
    expect(gate().open).toBe(true);
    expect(gate().items).toHaveLength(7);
  });

  const closers: [string, GateItem['item'][], Change][] = [
    [
      'utilities are not ticked',
      ['utilities'],
      {
        log: (f) => {
          f.add({ kind: 'stand', thing: holeStake('1'), event: 'driven' });
          f.tick('ties', '1');
        },
      },
    ],
    ['A–B is not pulled', ['baseline'], { measured: { baseline: null } }],
    ['A–B no longer fits', ['baseline'], { trouble: 'A to B now reads longer.' }],
    [
      'no stake is driven',
      ['staked'],
      {
        log: (f) => {
          f.tick('utilities');
          f.tick('ties', '1');
        },
      },
    ],
    ['the stake is out', ['position'], { measured: place(0.03) }],
    ['the stake may be in or out', ['position'], { measured: place(0.023) }],
    ['the stake is not measured', ['position', 'checked'], { measured: { points: [] } }],
    ['no spare pull guards the stake', ['checked'], { measured: place(0, 0.002, Number.POSITIVE_INFINITY) }],
    ['a misread pull could move the stake too far', ['checked'], { measured: place(0, 0.002, 0.03) }],
    [
      'no ties are recorded',
      ['ties'],
      {
        log: (f) => {
          f.tick('utilities');
          f.add({ kind: 'stand', thing: holeStake('1'), event: 'driven' });
        },
      },
    ],
    [
      'the stake was moved since its ties were recorded',
      ['ties'],
      {
        log: (f) => {
          ready(f);
          f.add({ kind: 'stand', thing: holeStake('1'), event: 'moved' });
        },
      },
    ],
    ['the frost depth is not known', ['depth'], { required: null }],
  ];
  for (const [name, closed, change] of closers) {
    it(`stays shut while ${name}`, () => {
      const shut = gate(change);
      expect(reds(shut)).toEqual(closed);
      expect(shut.open).toBe(false);
      for (const item of closed) expect(itemOf(shut, item).text).toMatch(/^[A-Z].*\.$/);
    });
  }

  it('a tick for the hole goes before one for the whole job', () => {
    const untick = gate({
      log: (f) => {
        ready(f);
        f.tick('utilities', '1', false);
      },
    });
    expect(reds(untick)).toEqual(['utilities']);
    const other = gate({
      log: (f) => {
        ready(f);
        f.tick('utilities', '2', false);
      },
    });
    expect(reds(other)).toEqual([]);
    const again = gate({
      log: (f) => {
        ready(f);
        f.tick('utilities', '1', false);
        f.tick('utilities', '1');
      },
    });
    expect(reds(again)).toEqual([]);
  });
  it('says what depth to dig to', () => {
    expect(itemOf(gate(), 'depth').text).toBe('The hole has to be at least 1000 mm: frost depth.');
  });
});

describe('pour gate', () => {
  const REQUIRED = 1.0;
  interface Change {
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

  function gate(change: Change = {}): Gate {
    const field = book(change);
    const view = fakeView(field, { ...measuredOf(field), ...change.measured });
    const hole = view.holes.find(({ label }) => label === '1')!;
    const sited = view.sited.get('1')!;
    return pourGate(view, '1', judgeDug(view, '1', REQUIRED, hole.holeDiameter), {
      position: judgePosition(view, post('1'), sited.site, ''),
      plumb: judgePlumb(view, '1'),
      level: judgeLevel(view, '1', hole.top),
      spacing: hole.neighbours.map((to) => ({ ...judgeSpacing(view, sited, view.sited.get(to)!, null), to })),
    });
  }
  const postAt = (right: number, more = {}, sigma?: number, unseen?: number): FakeMeasured => {
    const at = new Field().site().off(post('1'), right, 0).placeOf(post('1'));
    return { points: [pointAt(post('1'), fixAt(at, sigma, unseen), { lean: leanOf(0, 0), ...more })] };
  };

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
      'braced',
      'inspection',
      'weather',
    ]);
  });

  const secondPost = (offset: number): FakeMeasured => {
    const field = new Field().site().off(post('2'), offset, 0);
    return {
      points: [
        pointAt(post('1'), fixAt(field.placeOf(post('1'))), { lean: leanOf(0, 0) }),
        pointAt(post('2'), fixAt(field.placeOf(post('2')))),
      ],
    };
  };
  const dug = (depth?: number, width?: number, met?: 'rock') => (f: Field) => {
    f.dig('1', depth, width, met).tick('clean', '1').tick('gravel', '1').tick('inspection', '1');
  };

  const closers: [string, GateItem['item'][], Change][] = [
    ['the hole is not dug', ['dug', 'depth', 'width', 'obstruction'], { skip: ['dug'] }],
    ['the hole is too shallow', ['depth'], { after: dug(950) }],
    ['the depth is too close to tell', ['depth'], { after: dug(1003) }],
    ['the hole is too narrow', ['width'], { after: dug(1020, 370) }],
    [
      'rock was met and nobody has decided',
      ['obstruction', 'inspection'],
      {
        after: (f) => {
          f.dig('1', 1020, 400, 'rock').tick('clean', '1').tick('gravel', '1');
        },
      },
    ],
    [
      'rock was met and only the whole job was inspected',
      ['obstruction'],
      {
        after: (f) => {
          f.dig('1', 1020, 400, 'rock').tick('clean', '1').tick('gravel', '1').tick('inspection');
        },
      },
    ],
    ['the bottom is not clean', ['clean'], { skip: ['clean'] }],
    ['the gravel is not in', ['gravel'], { skip: ['gravel'] }],
    [
      'it was dug again since it was cleaned and inspected',
      ['clean', 'gravel', 'inspection'],
      {
        after: (f) => {
          f.dig('1', 1030);
        },
      },
    ],
    [
      'the post is not set',
      ['set', 'position', 'checked', 'spacing', 'plumb', 'level'],
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
      ['plumb', 'level', 'braced'],
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
  it('a later round of the whole site renews a stale tick of the hole', () => {
    const renewed = gate({
      after: (f) => {
        f.dig('1', 1030).tick('clean').tick('gravel').tick('inspection');
      },
    });
    expect(reds(renewed)).toEqual([]);
  });
  it('a struck tick no longer counts', () => {
    const struck = gate({
      skip: ['braced'],
      after: (f) => {
        f.tick('braced', '1').strike(f.log.at(-1)!.id);
      },
    });
    expect(reds(struck)).toEqual(['braced']);
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
