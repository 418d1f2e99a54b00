import { describe, expect, test } from 'vitest';
import type { Body, HeightPoint } from '../../../src/job/entry-schema.ts';
import { roundedLength } from '../../../src/job/length.ts';
import { situate } from '../../../src/judge/situation.ts';
import { viewOf } from '../../../src/judge/view.ts';
import { differenceDoubt } from '../../../src/screens/heights/difference-belief.ts';
import { looksBelow, rodAtTarget, rodDoubt, sightLine } from '../../../src/screens/heights/rod-belief.ts';
import { inches, sampleBodies, samplePlan } from '../../job/sample.ts';
import { post } from '../set/set-day.ts';
import { logOf, READY } from '../stake/field-day.ts';

const benchmark: HeightPoint = { point: 'benchmark' };
const top: HeightPoint = { point: 'top', hole: '1' };
const turning: HeightPoint = { point: 'turning-point', label: '1' };

const rod = (on: HeightPoint, m: number, setup = '1'): Body => ({
  kind: 'rod',
  setup,
  on,
  reading: roundedLength(m, 'ft-in-16'),
});
const view = (bodies: readonly Body[], rodLength?: string) => {
  const instruments = { ...samplePlan.instruments, ...(rodLength ? { rodLength: inches(rodLength) } : {}) };
  const plan: Body = { ...sampleBodies.plan, plan: { ...samplePlan, instruments } } as Body;
  return viewOf(situate(logOf([...READY, plan, ...bodies])))!;
};
const sight = (on: HeightPoint, setup = '1', inverted = false) => ({ on, setup, inverted });
const TARGET = samplePlan.each.top.m;
const LINE = inches('5 0').m;
const START: Body[] = [rod(benchmark, LINE), post('1')];

describe('the line of sight', () => {
  test('is known once the set-up hangs on the benchmark, over a turning point too', () => {
    const bodies = [rod(benchmark, LINE), rod(turning, inches('4 0').m), rod(turning, inches('4 6').m, '2')];
    expect(sightLine(view(bodies), '1')).toBeCloseTo(LINE, 6);
    expect(sightLine(view(bodies), '2')).toBeCloseTo(inches('5 6').m, 6);
    expect(sightLine(view(bodies), '3')).toBeNull();
    expect(rodAtTarget(view(bodies), '1', '2')).toBeCloseTo(inches('5 6').m - TARGET, 6);
    expect(rodAtTarget(view(bodies), '1', '3')).toBeNull();
    expect(rodAtTarget(view(bodies), 'none', '1')).toBeNull();
  });
});

describe('a rod reading is asked back', () => {
  test('not where nothing is known to hold it against', () => {
    expect(rodDoubt(view([]), sight(benchmark), 1)).toBeNull();
    expect(rodDoubt(view(START), sight({ point: 'ground', hole: '1' }), 3)).toBeNull();
    expect(rodDoubt(view(START), sight(top, '2'), 3)).toBeNull();
  });

  test('where the ground would stand above the post, or the bottom above the ground', () => {
    const ground: HeightPoint = { point: 'ground', hole: '1' };
    const bottom: HeightPoint = { point: 'bottom', hole: '1' };
    expect(rodDoubt(view(START), sight(ground), LINE - TARGET - inches('0 6').m)).toBe(
      'This puts the ground at hole 1 6″ above where the top of post 1 is to be, and a larger reading is a lower point. Read it again, or keep it as read.',
    );
    const known = [...START, rod(ground, inches('5 6').m)];
    expect(rodDoubt(view(known), sight(bottom), inches('9 0').m)).toBeNull();
    expect(rodDoubt(view(known), sight(bottom), inches('5 0').m)).toMatch(
      /^This puts the bottom of hole 1 6″ above the ground beside it/,
    );
  });

  test('by no length below nothing: a level that looks below the top foretells no reading, and doubts every one', () => {
    const low = view([rod(benchmark, TARGET / 2), post('1')]);
    expect(rodAtTarget(low, '1', '1')).toBeNull();
    expect(looksBelow(low, sight(top))).toBe(true);
    expect(looksBelow(low, sight(top, '1', true))).toBe(false);
    expect(rodDoubt(low, sight(top), 0.1)).toMatch(
      /^By what is known the line of sight passes 1′ 6″ below this point, where the rod cannot read it so. Hold the rod upside down, or raise the level;/,
    );
    expect(rodDoubt(low, sight(top, '1', true), TARGET / 2)).toBeNull();
  });

  test('not near the top’s target; beyond a few inches it is', () => {
    expect(rodDoubt(view(START), sight(top), LINE - TARGET + 0.1)).toBeNull();
    expect(rodDoubt(view(START), sight(top), LINE - TARGET + 0.25)).toMatch(
      /^This is 9 13\/16″ more than expected/,
    );
  });

  test('with the rod on its head named, where its length is known', () => {
    const wrong = inches('13 0').m - (LINE - TARGET);
    expect(rodDoubt(view(START, '13 0'), sight(top), wrong)).toMatch(/The rod stood on its head: is it /);
    expect(rodDoubt(view(START), sight(top), wrong)).not.toMatch(/on its head/);
  });

  test('with a height told the wrong way named', () => {
    expect(rodDoubt(view(START), sight(top), LINE + TARGET)).toMatch(
      /That puts it lower than the benchmark, and a larger reading is a lower point: is it /,
    );
  });

  test('beside an earlier reading from the same set-up', () => {
    const bodies = [...START, rod(top, LINE - TARGET + 0.05)];
    expect(rodDoubt(view(bodies), sight(top), LINE - TARGET + 0.05)).toBeNull();
    expect(rodDoubt(view(bodies), sight(top), LINE - TARGET + 0.08)).toMatch(
      /^This is 1 3\/16″ more than before/,
    );
  });

  test('beside its height as read from another set-up', () => {
    const bodies = [
      rod(benchmark, LINE),
      rod(turning, inches('4 0').m),
      rod(benchmark, inches('5 6').m, '2'),
    ];
    expect(rodDoubt(view(bodies), sight(turning, '2'), inches('4 6').m)).toBeNull();
    expect(rodDoubt(view(bodies), sight(turning, '2'), inches('4 9').m)).toMatch(
      /^This is 3″ more than its height from other readings comes to \(4′ 6″\)/,
    );
  });

  test('not beside readings from before the post was moved', () => {
    const bodies = [...START, rod(top, LINE - TARGET + 0.05), post('1', 'nudged')];
    expect(rodDoubt(view(bodies), sight(top), LINE - TARGET - 0.05)).toBeNull();
  });

  test('not beside readings from before the stake was moved, though it was read again since', () => {
    const stake: HeightPoint = { point: 'stake', label: 'A' };
    const moved: Body = { kind: 'stand', thing: { kind: 'stake', label: 'A' }, event: 'moved' };
    const before = [...START, rod(stake, 1.5)];
    const since = [...before, moved, rod(stake, 1.3)];
    expect(rodDoubt(view(before), sight(stake), 1.3)).toMatch(/^This is .* less than before/);
    expect(rodDoubt(view(since), sight(stake), 1.3)).toBeNull();
    expect(rodDoubt(view(since), sight(stake), 1.5)).toMatch(/^This is .* more than before \(4′ 3 3\/16″\)/);
  });
});

describe('a compared height is asked back', () => {
  const bodies = [rod(benchmark, LINE), rod(turning, inches('4 0').m)];
  const doubt = (rise: number) => differenceDoubt(view(bodies), benchmark, turning, rise);
  test('not where it fits, or one of the heights is not known', () => {
    expect(doubt(inches('1 0').m)).toBeNull();
    expect(differenceDoubt(view(bodies), benchmark, top, 3)).toBeNull();
  });
  test('when the wrong one of the two was called higher', () => {
    expect(doubt(-inches('1 0').m)).toMatch(/^By what was read before, it is the other way round/);
  });
  test('when it is too much', () => {
    expect(doubt(inches('1 3').m)).toMatch(/^This is 3″ more than what was read before comes to \(1′ 0″\)/);
  });
});
