import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geometry/point.ts';
import { assess } from '../../src/judge/assess.ts';
import { Field, noise, post, stake } from './field.ts';

const HOLES = ['1', '2', '3', '4', '5', '6'] as const;
const JOBS = 200;
/** One sigma of where posts really stand, each way: wide enough for plenty of both kinds. */
const SPREAD = 0.007;

/** Posts really in or out, by what they were called. */
function tally() {
  const counts = { in: [0, 0], out: [0, 0], unsure: [0, 0], unmeasured: [0, 0] };
  for (let seed = 1; seed <= JOBS; seed++) {
    const n = noise(seed);
    const field = new Field().site();
    field.pull(stake('A'), stake('B'), { error: n(0.002) });
    for (const hole of HOLES) {
      field.off(post(hole), n(SPREAD), n(SPREAD)).set(hole);
      for (const from of ['A', 'B']) field.pull(stake(from), post(hole), { error: n(0.002), side: 'back' });
    }
    HOLES.forEach((hole, i) => {
      field.pull(post(hole), post(HOLES[(i + 1) % HOLES.length]!), { error: n(0.002), side: 'left' });
    });
    for (const { hole, designed, set } of assess(field.log).holes) {
      if (hole === 'P' || !designed) continue;
      const truly = distance(field.placeOf(post(hole)), designed) <= field.plan.tolerances.position.m;
      counts[set.position.verdict][truly ? 0 : 1]! += 1;
    }
  }
  return counts;
}

describe(`verdicts of ${JOBS} seeded jobs against the truth`, () => {
  const counts = tally();
  const share = ([good, bad]: readonly number[], wrong: number) => wrong / (good! + bad!);

  it('of the posts called in, at most 5 % are really out', () => {
    expect(counts.in[0]).toBeGreaterThan(300);
    expect(share(counts.in, counts.in[1]!)).toBeLessThanOrEqual(0.05);
  });
  it('of the posts called out, at most 5 % are really in', () => {
    expect(counts.out[1]).toBeGreaterThan(100);
    expect(share(counts.out, counts.out[0]!)).toBeLessThanOrEqual(0.05);
  });
  it('unsure is said of both kinds, and unmeasured of none', () => {
    expect(Math.min(...counts.unsure)).toBeGreaterThan(30);
    expect(counts.unmeasured).toEqual([0, 0]);
  });
});
