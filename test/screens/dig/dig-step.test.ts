import { describe, expect, test } from 'vitest';
import type { Body } from '../../../src/job/entry-schema.ts';
import { assessSituation } from '../../../src/judge/assess.ts';
import { situate } from '../../../src/judge/situation.ts';
import { digStep, gateWay, nextHole } from '../../../src/screens/dig/dig-step.ts';
import { inches, sampleBodies, samplePlan } from '../../job/sample.ts';
import {
  DIGGABLE,
  dug,
  logOf,
  middleOf,
  ORDER,
  PLACED,
  PLAN,
  PROVED,
  READY,
  STAKED,
  tick,
} from '../stake/field-day.ts';

const [FIRST, SECOND] = ORDER as [string, string];
const stateAfter = (bodies: readonly Body[], focused: string | null = null) => {
  const situation = situate(logOf(bodies));
  return { situation, assessment: assessSituation(situation), order: ORDER, focused };
};
const step = (bodies: readonly Body[], focused: string | null = null) => digStep(stateAfter(bodies, focused));
/** Wide and deep enough for every rule of the sample plan: 3′ 6″ of embedment and 6″ of gravel. */
const DEEP = '4 1';
const noFrost = {
  ...sampleBodies.plan,
  plan: { ...samplePlan, rules: { ...samplePlan.rules, frostDepth: null } },
};

describe('digStep', () => {
  test.each([
    ['no plan', [], { at: 'plan' }],
    ['a plan that lies nowhere', PLAN, { at: 'stakes' }],
    ['no stake yet', PLACED, { at: 'hole', hole: FIRST, task: 'gate' }],
    ['no ties yet', PROVED, { at: 'hole', hole: FIRST, task: 'gate' }],
    ['everything', DIGGABLE, { at: 'hole', hole: FIRST, task: 'dig' }],
  ] as const)('with %s', (_when, bodies, wanted) => {
    expect(step(bodies)).toEqual(wanted);
  });

  test('the hole in the address is shown whatever is next', () => {
    expect(step(DIGGABLE, '6')).toEqual({ at: 'hole', hole: '6', task: 'dig' });
    expect(step(DIGGABLE, 'nowhere')).toEqual({ at: 'hole', hole: FIRST, task: 'dig' });
  });

  test('a short hole comes before any other, and the last reading stands', () => {
    const short = [...DIGGABLE, dug(SECOND, '3 0')];
    expect(step(short)).toEqual({ at: 'hole', hole: SECOND, task: 'again' });
    expect(step([...short, dug(SECOND, DEEP), ...middleOf(SECOND)])).toEqual({
      at: 'hole',
      hole: FIRST,
      task: 'dig',
    });
    expect(step([...short, dug(SECOND, DEEP), dug(SECOND, '3 0')])).toMatchObject({
      hole: SECOND,
      task: 'again',
    });
  });

  test('a hole too near to what is asked is dug on too', () => {
    expect(step([...DIGGABLE, dug(FIRST, '4 0')])).toEqual({ at: 'hole', hole: FIRST, task: 'again' });
  });

  test('what was met waits for a decision and holds up no other hole', () => {
    const rock = [...DIGGABLE, dug(FIRST, DEEP, 'rock')];
    expect(step(rock, FIRST)).toEqual({ at: 'hole', hole: FIRST, task: 'decide' });
    expect(step(rock)).toEqual({ at: 'hole', hole: SECOND, task: 'dig' });
    const all = [...rock, ...ORDER.slice(1).map((hole) => dug(hole, DEEP))];
    expect(step(all)).toEqual({ at: 'done', undecided: [FIRST], noMiddle: ORDER.slice(1).sort() });
  });

  test('without a frost depth no depth is enough', () => {
    const all = [noFrost, ...DIGGABLE.slice(1)];
    expect(step(all)).toEqual({ at: 'hole', hole: FIRST, task: 'gate' });
    expect(step([...all, dug(FIRST, '9 0')], FIRST)).toEqual({ at: 'hole', hole: FIRST, task: 'unknown' });
  });

  test('every hole deep and wide ends it', () => {
    expect(step([...DIGGABLE, ...ORDER.map((hole) => dug(hole, DEEP))])).toEqual({
      at: 'done',
      undecided: [],
      noMiddle: [...ORDER].sort(),
    });
  });

  test('the middle of the hole that was dug last comes before the next hole, and not once its post stands', () => {
    const one = [...DIGGABLE, dug(FIRST, DEEP)];
    expect(step(one)).toEqual({ at: 'hole', hole: FIRST, task: 'middle' });
    expect(step([...one, ...middleOf(FIRST)])).toEqual({ at: 'hole', hole: SECOND, task: 'dig' });
    expect(step([...one, dug(SECOND, DEEP), ...middleOf(SECOND)])).toMatchObject({
      hole: ORDER[2],
      task: 'dig',
    });
    const set: Body = { kind: 'stand', thing: { kind: 'post', hole: FIRST }, event: 'set' };
    expect(step([...one, set])).toEqual({ at: 'hole', hole: SECOND, task: 'dig' });
  });

  test('a hole that is too tight on one side is shaved before another is dug', () => {
    const left = (cover: string, off: number): Body[] => [
      { kind: 'plan', plan: { ...samplePlan, rules: { ...samplePlan.rules, cover: inches(cover) } } },
      ...DIGGABLE.slice(1),
      dug(FIRST, DEEP),
      ...middleOf(FIRST, off),
    ];
    expect(step(left('0 5', 1.3))).toEqual({ at: 'hole', hole: FIRST, task: 'shave' });
    expect(step(left('3 1/2', 1.5))).toEqual({ at: 'hole', hole: FIRST, task: 'tell' });
  });

  test('the next hole is sought onwards from the one at hand', () => {
    const { assessment } = stateAfter(DIGGABLE);
    expect(nextHole(assessment.holes, ORDER, SECOND)?.hole).toBe(ORDER[2]);
    expect(nextHole(assessment.holes, ORDER, ORDER.at(-1)!)?.hole).toBe(FIRST);
  });
});

describe('gateWay', () => {
  const way = (bodies: readonly Body[]) => gateWay(stateAfter(bodies).assessment.holes[0]!.digGate);

  test.each([
    ['nothing driven', READY, 'stake'],
    ['nothing checked', [...STAKED, tick('ties')], 'stake'],
    ['only ties missing', PROVED, 'ties'],
    ['ties and frost depth missing', [noFrost, ...PROVED.slice(1)], 'ties'],
    ['only the frost depth missing', [noFrost, ...DIGGABLE.slice(1)], 'plan'],
  ] as const)('with %s', (_when, bodies, wanted) => {
    expect(way(bodies)).toBe(wanted);
  });
});

test('depths of the sample plan are what the tests take them for', () => {
  const [hole] = stateAfter(DIGGABLE).assessment.holes;
  expect(hole!.dug.requiredDepth).toBeCloseTo(inches('4 0').m, 9);
});
