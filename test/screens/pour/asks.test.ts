import { expect, test } from 'vitest';
import { withOwnDepth } from '../../../src/screens/dig/own-depth.ts';
import { withAsk, withoutAsk } from '../../../src/screens/pour/asks.ts';
import { inches, samplePlan } from '../../job/sample.ts';

test('what is asked of single holes adds up, and of every hole takes all of them in', () => {
  const one = withAsk(samplePlan, 'sleeve', ['2']);
  expect(one.asks).toEqual([{ what: 'sleeve', holes: ['2'] }]);
  const two = withAsk(withAsk(one, 'bolts', null), 'sleeve', ['3']);
  expect(two.asks).toEqual([{ what: 'sleeve', holes: ['2', '3'] }, { what: 'bolts' }]);
  expect(withAsk(two, 'sleeve', null).asks?.[0]).toEqual({ what: 'sleeve' });
  expect(withAsk(withAsk(two, 'sleeve', null), 'sleeve', ['4']).asks?.[0]).toEqual({ what: 'sleeve' });
});

test('with the last one gone the plan is as it was', () => {
  expect(withoutAsk(withAsk(samplePlan, 'sleeve', null), 'sleeve')).toEqual(samplePlan);
  expect(withoutAsk(withAsk(withAsk(samplePlan, 'a1', null), 'b1', null), 'a1').asks).toEqual([
    { what: 'b1' },
  ]);
});

test('a depth of its own leaves what the hole has besides, and goes without a trace', () => {
  const own = { depth: inches('3 0'), why: 'ledge' };
  const deep = withOwnDepth(samplePlan, '3', own);
  expect(deep.overrides['3']).toEqual({ ...samplePlan.overrides['3'], depth: own.depth, depthWhy: 'ledge' });
  expect(withOwnDepth(deep, '3', null)).toEqual(samplePlan);
  expect(withOwnDepth(withOwnDepth(samplePlan, '5', own), '5', null)).toEqual(samplePlan);
});
