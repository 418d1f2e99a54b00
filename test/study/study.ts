import { assessSituation } from '../../src/judge/assess.ts';
import { situate } from '../../src/judge/situation.ts';
import { Alarms } from './alarms.ts';
import { Draws } from './draws.ts';
import { studyJob } from './job.ts';
import { OneInch } from './misreadings.ts';
import { Moves, StoodStill } from './moves.ts';
import { OtherSlips } from './other-slips.ts';
import { Places } from './places.ts';
import { studyPlans } from './plans.ts';
import { JUDGED, Verdicts } from './verdicts.ts';

/** Keeps the seeds of one study's jobs apart from those of the next. */
const SEEDS_APART = 1_000_003;

/** Stakes are knocked in one job of so many, and by so much: metres. */
const KNOCKED_EVERY = 4;
const KNOCKED_BY_M = [0.025, 0.015] as const;

/** What many simulated jobs came to, beside what was claimed of them. */
export class Study {
  readonly verdicts = JUDGED.map((quantity) => ({ quantity, counts: new Verdicts(quantity) }));
  readonly places = new Places();
  readonly alarms = new Alarms();
  readonly oneInch = new OneInch();
  readonly otherSlips = new OtherSlips();
  readonly moves = KNOCKED_BY_M.map((by) => new Moves(by));
  readonly stoodStill = new StoodStill();
  readonly seed: number;
  jobs = 0;
  readonly #plans: ReturnType<typeof studyPlans>;
  readonly #misreader: Draws;
  readonly #otherSlips: Draws;

  constructor(seed: number) {
    this.seed = seed;
    this.#plans = studyPlans(seed);
    this.#misreader = new Draws(seed * SEEDS_APART - 1);
    this.#otherSlips = new Draws(seed * SEEDS_APART - 2);
  }

  /** Simulates the next job, has it judged as the phone would, and counts. */
  addJob(): void {
    const plan = this.#plans[this.jobs % this.#plans.length]!;
    const seed = this.seed * SEEDS_APART + this.jobs;
    const job = studyJob(plan, seed);
    const situation = situate(job.log);
    if (!situation.measured) throw new Error(`job ${this.jobs} was not measured`);
    const assessment = assessSituation(situation);
    for (const { counts } of this.verdicts) counts.addJob(job, assessment);
    this.places.addJob(job, situation.measured);
    this.alarms.addJob(job, situation.measured);
    this.oneInch.addJob(job, situation.measured, this.#misreader);
    this.otherSlips.addJob(job, this.jobs, this.#otherSlips);
    if (this.jobs % KNOCKED_EVERY === 0) {
      for (const counts of [...this.moves, this.stoodStill]) counts.addJob(plan, seed);
    }
    this.jobs++;
  }
}
