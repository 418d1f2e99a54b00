import { describe, expect, it } from 'vitest';
import { assess } from '../../src/judge/assess.ts';
import { situate } from '../../src/judge/situation.ts';
import { studyJob } from './job.ts';
import { pageOf } from './page.ts';
import { studyPlans } from './plans.ts';
import { percent, rowsOf } from './rows.ts';
import type { Share } from './share.ts';
import { Study } from './study.ts';
import { ALPHA, namedFirst, power, powerOf2 } from './theory.ts';

/** Each drawing once. */
const JOBS = 64;
/** So many standard errors off is a fault, not luck: one study in 16 000, and the seed is fixed. */
const FAULT = 4;

const study = new Study(7);
while (study.jobs < JOBS) study.addJob();
const rows = new Map(rowsOf(study).map((row) => [row.question, row]));
const share = (question: string): Share => {
  const row = rows.get(question);
  if (!row) throw new Error(`no row ${question}`);
  return row.measured;
};

describe(`${JOBS} jobs`, () => {
  it.each(['position', 'plumb', 'level'])(
    'have posts called in, out and unsure by %s, few of them wrongly',
    (q) => {
      for (const called of [`${q}: called in, really out`, `${q}: called out, really in`]) {
        expect(share(called).of).toBeGreaterThan(30);
        expect(share(called).value).toBeLessThanOrEqual(0.05);
      }
      expect(share(`${q}: called unsure`).value).toBeGreaterThan(0.1);
      expect(share(`${q}: called unsure`).value).toBeLessThan(0.6);
    },
  );

  it('have chances that come true', () => {
    for (const { quantity, counts } of study.verdicts) {
      const middle = counts.calibration.bands.find(({ from }) => from === 0.4)!;
      const off = Math.abs(middle.isIn.value - middle.claimed.value);
      expect(middle.isIn.of, quantity).toBeGreaterThan(10);
      expect(off, quantity).toBeLessThanOrEqual(FAULT * middle.isIn.standardError);
    }
  });

  it('have ellipses that hold 95 % of the true places', () => {
    const { inside } = study.places;
    expect(inside.of).toBeGreaterThan(10 * JOBS);
    expect(Math.abs(inside.value - 0.95)).toBeLessThanOrEqual(FAULT * inside.standardError);
  });

  it('have an inch noticed, and mostly named first', () => {
    const { all } = study.oneInch;
    expect(all.noticed.of).toBe(JOBS);
    expect(all.noticed.value).toBeGreaterThanOrEqual(0.97);
    expect(all.first.value).toBeGreaterThanOrEqual(0.94);
    expect(all.noticedExpected.value).toBeGreaterThan(0.99);
    expect(all.firstAtLeast.value).toBeLessThanOrEqual(all.firstAtMost.value);
  });

  it('raise false alarms at about the stated rate', () => {
    const { pulls } = study.alarms;
    expect(pulls.of).toBeGreaterThan(40 * JOBS);
    expect(Math.abs(pulls.value - ALPHA)).toBeLessThanOrEqual(FAULT * Math.sqrt(ALPHA / pulls.of));
  });

  it('have no more of them with a suspicion than independent tests would raise', () => {
    const { jobs, jobsAtMost } = study.alarms;
    expect(jobs.hits).toBeGreaterThan(0);
    expect(jobs.value).toBeLessThanOrEqual(jobsAtMost.value + 2 * jobs.standardError);
  });

  it('have knocked stakes noticed, and none where none was knocked', () => {
    expect(share('stake knocked by 25 mm: noticed').hits).toBe(JOBS / 4);
    expect(share('stake knocked by 25 mm: right stake named first').value).toBeGreaterThanOrEqual(0.9);
    expect(share('no stake knocked: a move believed').hits).toBeLessThanOrEqual(1);
  });

  it('fill every row of the page', () => {
    const page = pageOf(study, 'npm run study');
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
    for (const [question, { measured }] of rows)
      expect(page, question).toContain(`${measured.hits} of ${measured.of}`);
  });
});

describe('a job of the study', () => {
  const plans = studyPlans(7);

  it('is the same from the same seed, and another from another', () => {
    const job = (seed: number) => JSON.stringify(studyJob(plans[3]!, seed).log);
    expect(job(11)).toBe(job(11));
    expect(job(11)).not.toBe(job(12));
  });

  it('is judged in full: every post has a place, every reading is used', () => {
    for (const plan of plans.slice(0, 8)) {
      const { log } = studyJob(plan, 21);
      expect(situate(log).problems).toEqual([]);
      expect(situate(log).measured?.unused).toEqual([]);
      for (const { hole, set } of assess(log).holes) expect([hole, set.position.chance]).not.toContain(null);
    }
  });
});

describe('the theory', () => {
  const pull = { entry: 'a', current: true, predicted: 5, residual: 0, sigma: 0.002, smallestCaught: 0 };

  it('finds 80 % power at a non-centrality of 4.132 (Baarda 1968)', () => {
    const at = power({ ...pull, redundancy: 0.25, standardised: 0 }, (4.132 * 0.002) / 0.5);
    expect(percent(at, 1)).toBe('80.0 %');
  });

  it('gives the test of two unknowns its own level where nothing moved, and all power far out', () => {
    expect(percent(powerOf2(0), 3)).toBe('0.100 %');
    // λ of 80 % power, two unknowns, α 0.001: scipy.stats.ncx2, derived, not published.
    expect(percent(powerOf2(19.66238560933), 3)).toBe('80.000 %');
    expect(powerOf2(80)).toBeGreaterThan(0.9999);
  });

  it('tosses a coin between two pulls whose tests are one', () => {
    const clean = ['a', 'b'].map((entry) => ({ ...pull, entry, redundancy: 0.5, standardised: 0 }));
    const spoilt = clean.map((each) => ({ ...each, residual: 0.01 }));
    expect(namedFirst(clean, spoilt, 'a')).toEqual({ least: 0.5, most: 0.5 });
  });
});
