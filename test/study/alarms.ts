import type { Measured } from '../../src/measure/index.ts';
import type { StudyJob } from './job.ts';
import { Mean, Share } from './share.ts';
import { ALPHA, BEYOND_LUCK } from './theory.ts';

/** The global test is looked at where it fails one clean job in twenty. */
export const GLOBAL_FAILS = 0.05;

/** Alarms in jobs in which nobody misread anything. */
export class Alarms {
  /** Of the pulls that anything guards, those beyond 3.29. */
  readonly pulls = new Share();
  /** Jobs in which a pull, a plumb reading or a rod reading is suspected. */
  readonly jobs = new Share();
  /** The share of such jobs if each of their readings had a test independent of all others. */
  readonly jobsAtMost = new Mean();
  readonly globalTests = new Share();

  addJob({ log }: StudyJob, { pulls, suspicions, globalTest }: Measured): void {
    const guarded = pulls.filter(({ redundancy }) => redundancy > 0);
    this.pulls.addJob(
      guarded.filter(({ standardised }) => standardised > BEYOND_LUCK).length,
      guarded.length,
    );
    this.jobs.addJob(suspicions.length > 0 ? 1 : 0, 1);
    const others = log.filter(({ body }) => body.kind === 'plumb' || body.kind === 'rod').length;
    this.jobsAtMost.add(1 - (1 - ALPHA) ** (guarded.length + others));
    this.globalTests.addJob(globalTest.chance < GLOBAL_FAILS ? 1 : 0, 1);
  }
}
