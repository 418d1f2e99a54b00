import { expect, it } from 'vitest';
import type { Deck, Supplies } from '../../src/job/plan-schema.ts';
import { checkPlan } from '../../src/plan/index.ts';
import { metres, ringPlan } from './plans.ts';

const problems = (supplies: Supplies, deck: Deck = {}) => checkPlan({ ...ringPlan(), supplies, deck });

it('takes lengths to buy that can be meant, and none at all', () => {
  const supplies: Supplies = {
    bagYield: 12,
    tube: metres(0),
    bell: { diameter: metres(0), height: metres(0.3) },
    spare: metres(0),
    stock: [metres(2.4)],
    bought: metres(3),
    ground: metres(-1),
  };
  expect(problems(supplies, { edge: metres(3.2), opening: metres(0.4), gap: metres(0) })).toEqual([]);
  expect(problems({})).toEqual([]);
});

it.each([
  [{ tube: metres(-0.1) }, /^Inside of a tube round the posts: −0\.100 m is too little/],
  [
    { bell: { diameter: metres(9), height: metres(0.3) } },
    /^Bell at the foot, across: 9\.000 m is more than/,
  ],
  [
    { bell: { diameter: metres(0.6), height: metres(-1) } },
    /^Height over which the bell narrows: .* too little/,
  ],
  [{ spare: metres(-0.1) }, /^Spare on each post, to cut off: .* too little/],
  [{ stock: [metres(2.4), metres(0)] }, /^Lengths that posts are sold in: 0\.000 m is nothing to build/],
  [{ boughtFor: { 1: metres(-2) } }, /^Length of the posts you have bought: .* nothing to build/],
  [{ ground: metres(40) }, /^Ground above the benchmark, where not measured: 40\.000 m is more/],
] as const)('says what cannot be meant, and stops no work for it: %j', (supplies, text) => {
  const found = problems(supplies as Supplies);
  expect(found).toHaveLength(1);
  expect(found[0]!.text).toMatch(text);
  expect(found[0]!.stops).toBe(false);
});

it.each([
  [{ edge: metres(0) }, /^Radius of the edge: .* nothing to build/],
  [{ opening: metres(-1) }, /^Opening for the pier, across: .* nothing to build/],
  [{ gap: metres(2) }, /^Least gap all round the pier: 2\.000 m is more than/],
] as const)('of the deck too: %j', (deck, text) => {
  expect(problems({}, deck)[0]!.text).toMatch(text);
});
