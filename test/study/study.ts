import { assessSituation } from '../../src/judge/assess.ts';
import { situate } from '../../src/judge/situation.ts';
import { Alarms } from './alarms.ts';
import { Draws } from './draws.ts';
import { studyJob } from './job.ts';
import { OneInch } from './misreadings.ts';
import { Places } from './places.ts';
import { studyPlans } from './plans.ts';
import { JUDGED, Verdicts } from './verdicts.ts';

/** Keeps the seeds of one study's jobs apart from those of the next. */
const SEEDS_APART = 1_000_003;

/** What many simulated jobs came to, beside what was claimed of them. */
export class Study {
  readonly verdicts = JUDGED.map((quantity) => ({ quantity, counts: new Verdicts(quantity) }));
  readonly places = new Places();
  readonly alarms = new Alarms();
  readonly oneInch = new OneInch();
  readonly seed: number;
  jobs = 0;
  readonly #plans: ReturnType<typeof studyPlans>;
  readonly #misreader: Draws;

  constructor(seed: number) {
    this.seed = seed;
    this.#plans = studyPlans(seed);
    this.#misreader = new Draws(seed * SEEDS_APART - 1);
  }

  /** Simulates the next job, has it judged as the phone would, and counts. */
  addJob(): void {
    const job = studyJob(this.#plans[this.jobs % this.#plans.length]!, this.seed * SEEDS_APART + this.jobs);
    const situation = situate(job.log);
    if (!situation.measured) throw new Error(`job ${this.jobs} was not measured`);
    const assessment = assessSituation(situation);
    for (const { counts } of this.verdicts) counts.addJob(job, assessment);
    this.places.addJob(job, situation.measured);
    this.alarms.addJob(job, situation.measured);
    this.oneInch.addJob(job, situation.measured, this.#misreader);
    this.jobs++;
  }
}

export function runStudy(jobs: number, seed: number): Study {
  const study = new Study(seed);
  while (study.jobs < jobs) study.addJob();
  return study;
}
