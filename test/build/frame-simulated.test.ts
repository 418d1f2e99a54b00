import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/job/entry-schema.ts';
import { roundedLength } from '../../src/job/length.ts';
import { Crew } from '../study/crew.ts';
import { CUT_KINDS, CutLists, countCuts } from '../study/cut-list.ts';
import { Draws } from '../study/draws.ts';
import { type StudyPlan, studyPlans } from '../study/plans.ts';
import { Yard } from '../study/yard.ts';

const SEED = 20261125;
const JOBS = 500;
/** The level's line of sight, as the crew's. */
const SIGHT_M = 1.6;

/** The crew reads the rod on the ground at every post, too: the frame can then be told at the tops. */
function withGround(log: readonly Entry[], job: StudyPlan, yard: Yard, draws: Draws): Entry[] {
  const { rodError } = job.plan.instruments;
  const last = log.at(-1)!;
  const ground = job.laid.holes.map(({ label }, i): Entry => {
    const height = yard.groundAt({ kind: 'post', hole: label }) + draws.normal(rodError.m);
    return {
      id: `ground-${String(i).padStart(4, '0')}`,
      seq: last.seq + 1 + i,
      at: last.at,
      body: {
        kind: 'rod',
        setup: '1',
        on: { point: 'ground', hole: label },
        reading: roundedLength(SIGHT_M - height, job.plan.units),
      },
    };
  });
  return [...log, ...ground];
}

const PLANS = studyPlans(SEED);

describe('what the frame and the tops are cut to, in 500 simulated jobs', () => {
  const lists = new CutLists();
  const draws = new Draws(SEED);
  const atTop = Array.from({ length: JOBS }, (_, n) => {
    const job = PLANS[n % PLANS.length]!;
    const yard = new Yard(job, draws);
    const plain = new Crew(job, yard, draws).work();
    const { counts, atTop: told } = countCuts(
      n % 4 < 2 ? withGround(plain, job, yard, draws) : plain,
      job,
      yard,
    );
    lists.add(counts);
    return told;
  });

  it.each(CUT_KINDS)('%s: what is told holds the truth in 95 % or more', (kind) => {
    expect(lists.kinds.get(kind)!.asTold.value).toBeGreaterThanOrEqual(0.95);
  });

  // Of 250 draws with a chance of 95 %, 92 % is two sigmas out; more than 98 % would be doubt made up.
  it.each(CUT_KINDS)('%s: 1.96 sigmas hold the truth about as often as they say', (kind) => {
    const { within } = lists.kinds.get(kind)!;
    expect(within.value).toBeGreaterThan(0.92);
    expect(within.value).toBeLessThan(0.98);
  });

  it('is told at the tops where lean and ground are read', () => {
    expect(atTop.filter(Boolean).length).toBeGreaterThan(JOBS / 3);
  });
});
