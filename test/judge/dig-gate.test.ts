import { describe, expect, it } from 'vitest';
import { requiredDepthOf } from '../../src/build/index.ts';
import type { Plan } from '../../src/job/plan-schema.ts';
import { digGate } from '../../src/judge/dig-gate.ts';
import { judgePosition } from '../../src/judge/position.ts';
import type { Gate, GateItem } from '../../src/judge/types.ts';
import { type FakeMeasured, fakeView, fixAt, pointAt } from './fake-view.ts';
import { Field, holeStake, mm, ringPlan } from './field.ts';
import { itemOf, reds } from './gate-items.ts';

describe('dig gate', () => {
  const REQUIRED = 1.0;
  interface Change {
    readonly log?: (field: Field) => void;
    readonly measured?: FakeMeasured;
    readonly required?: number | null;
    readonly trouble?: string;
    /** A plan under which hole 1 lacks depth. */
    readonly shallow?: Plan;
  }
  function gate({ log, measured, required = REQUIRED, trouble, shallow }: Change = {}): Gate {
    const field = new Field(shallow ?? ringPlan()).site();
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
      lacks: null,
    };
    return digGate(view, '1', position, shallow ? requiredDepthOf(view.plan, '1') : rule, trouble ?? null);
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
  it('a hole that is to be less deep than the rules ask waits until somebody agrees, since its plan says so', () => {
    const { rules } = ringPlan();
    const own = (depth: number) =>
      ringPlan('mm', { rules, overrides: { '1': { depth: mm(depth), depthWhy: 'ledge' } } });
    const shut = gate({ shallow: own(600) });
    expect(reds(shut)).toEqual(['shallower']);
    expect(itemOf(shut, 'shallower')).toMatchObject({ decision: true });
    expect(itemOf(shut, 'shallower').text).toMatch(
      /^Hole 1 has a depth of its own, 600 mm \(ledge\), 400 mm less/,
    );
    const agreed = (f: Field) => {
      ready(f);
      f.decide('shallower', '1');
    };
    expect(reds(gate({ shallow: own(600), log: agreed }))).toEqual([]);
    const otherwise = gate({
      shallow: own(600),
      log: (f) => {
        agreed(f);
        f.add({ kind: 'plan', plan: own(500) });
      },
    });
    expect(reds(otherwise)).toEqual(['shallower']);
    const deeper = { ...rules, frostDepth: mm(1200) };
    const stricter = gate({
      shallow: own(600),
      log: (f) => {
        agreed(f);
        f.add({ kind: 'plan', plan: { ...own(600), rules: deeper } });
      },
    });
    expect(reds(stricter)).toEqual(['shallower']);
    // Another change of the plan does not take the agreement away.
    const renamed = gate({
      shallow: own(600),
      log: (f) => {
        agreed(f);
        f.add({ kind: 'plan', plan: { ...own(600), name: 'Another name' } });
      },
    });
    expect(reds(renamed)).toEqual([]);
    expect(gate({ shallow: own(1200) }).items.map(({ item }) => item)).not.toContain('shallower');
  });
  it('says what depth to dig to', () => {
    expect(itemOf(gate(), 'depth').text).toBe('The hole has to be at least 1000 mm: frost depth.');
  });
});
