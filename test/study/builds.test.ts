import { describe, expect, it } from 'vitest';
import { Builds, buildsOf } from './builds.ts';
import { buildBars, buildsPage } from './builds-page.ts';
import { CUT_KINDS } from './cut-list.ts';

const BUILDS = 20;
/** So many standard errors short of a bar is a fault, not luck; the seed is fixed. */
const FAULT = 3;

const SEED = 5;
const builds = new Builds(SEED);
const build = buildsOf(SEED);
while (builds.count < BUILDS) builds.add(build(builds.count));

/** The least share that a true rate of `bar` gives in so many draws, but for bad luck. */
const leastOf = (bar: number, of: number): number => bar - FAULT * Math.sqrt((bar * (1 - bar)) / of);

describe(`${BUILDS} builds that follow the cards`, () => {
  it('come to an end, with every post really in', () => {
    expect(builds.ended.value).toBe(1);
    expect(builds.posts.of).toBeGreaterThan(4 * BUILDS);
    expect(builds.posts.value).toBeGreaterThanOrEqual(leastOf(0.99, builds.posts.of));
    expect(builds.whole.value).toBeGreaterThanOrEqual(leastOf(0.99, BUILDS));
  });

  it('push every post a few times, and none for ever', () => {
    const pushes = builds.pushed / builds.posts.of;
    expect(pushes).toBeGreaterThan(1);
    expect(pushes).toBeLessThan(8);
  });

  it.each(CUT_KINDS)('have a cut list that fits the true posts: %s', (kind) => {
    const { asTold } = builds.cuts.kinds.get(kind)!;
    expect(asTold.of).toBeGreaterThan(BUILDS / 4);
    expect(asTold.value).toBeGreaterThanOrEqual(leastOf(0.95, asTold.of));
  });

  it('fill every row of the page', () => {
    const page = buildsPage(builds, 'npm run builds');
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
    for (const { what, measured } of buildBars(builds))
      expect(page, what).toContain(`${measured.hits} of ${measured.of}`);
  });
});
