import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { BodySchema } from '../../src/job/entry-schema.ts';
import type { GroundLine, GroundPlace, Pulled } from '../../src/job/place-schema.ts';
import { PlanSchema } from '../../src/job/plan-schema.ts';
import { describeEntry } from '../../src/job/words.ts';
import { inches, sampleBodies, samplePlan } from './sample.ts';

const pulled = (fromA: string, fromB: string): Pulled => ({
  by: 'pulls',
  fromA: inches(fromA),
  fromB: inches(fromB),
  side: 'left',
});
const planned: GroundPlace = { by: 'plan', right: inches('-12 0'), front: inches('13 0') };
const house: GroundLine = {
  name: 'House',
  kind: 'house',
  from: planned,
  to: { by: 'offset', station: inches('-2 0'), offset: inches('20 0'), side: 'left' },
  keep: inches('3 0'),
  noStakes: 'left',
};

describe('lines on the ground in a plan', () => {
  const fits = (line: object) => v.safeParse(PlanSchema, { ...samplePlan, lines: [line] }).success;

  test('fit the schema, with and without what may be absent; a plan without any means what it meant', () => {
    expect(fits(house)).toBe(true);
    expect(fits({ name: 'Fence', kind: 'other', from: planned, to: pulled('20 0', '18 6') })).toBe(true);
    expect(v.parse(PlanSchema, samplePlan)).toEqual(samplePlan);
  });
  test.each([
    ['no name', { ...house, name: '' }],
    ['no such kind', { ...house, kind: 'hedge' }],
    ['a side that is none', { ...house, noStakes: 'north' }],
    ['a tape whose text and metres disagree', { ...house, keep: { ...inches('3 0'), m: 1 } }],
    ['something else in it', { ...house, height: inches('9 0') }],
  ])('do not with %s', (_, line) => {
    expect(fits(line)).toBe(false);
  });
});

describe('a plan that is laid on what is there', () => {
  const { site } = sampleBodies;
  const line = (laid: object) => {
    const body = v.parse(BodySchema, { ...site, laid });
    return describeEntry({ body }, samplePlan);
  };

  test('says in the field book what was measured, as it was typed', () => {
    const centre = pulled('18 6', '19 0');
    expect(
      line({ on: 'stakes', baseline: inches('24 0'), centre, front: { by: 'way', way: 'left' } }),
    ).toMatch(
      /\. Laid on two points that are there, A to B 24′ 0″: centre 18′ 6″ from A and 19′ 0″ from B, left of A–B; front looks left of A–B$/,
    );
    const off = { by: 'offset', station: inches('12 0'), offset: inches('28 0'), side: 'left' };
    expect(line({ on: 'stakes', baseline: inches('24 0'), centre, front: off })).toMatch(
      /front toward a place 12′ 0″ along A–B and 28′ 0″ to the left$/,
    );
    const pegs = [
      { hole: '1', ...pulled('20 0', '18 0') },
      { hole: '5', ...pulled('14 0', '13 0') },
    ];
    expect(line({ on: 'pegs', baseline: inches('24 0'), pegs })).toMatch(
      /Laid on two stakes of holes that are there, A to B 24′ 0″: stake 1 20′ 0″ from A and 18′ 0″ from B, left of A–B; stake 5 14′ 0″ from A and 13′ 0″ from B, left of A–B$/,
    );
  });
});
