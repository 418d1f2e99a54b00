import { length } from '../../src/geometry/point.ts';
import { assess } from '../../src/judge/assess.ts';
import { Builder } from './builder.ts';
import { CutLists } from './cut-list.ts';
import { Draws } from './draws.ts';
import { type StudyPlan, smallPlans } from './plans.ts';
import { Share } from './share.ts';
import { Yard } from './yard.ts';

/** Keeps the seeds of one study's builds apart from those of the next. */
const SEEDS_APART = 1_000_033;

/** Pushes of one post are counted up to so many. */
export const MOST_COUNTED = 12;

/** What became of many builds that followed the cards, beside what was really so at their end. */
export class Builds {
  readonly seed: number;
  count = 0;
  /** Posts really in, by what is asked of them, and by all of it. */
  readonly place = new Share();
  readonly plumb = new Share();
  readonly height = new Share();
  readonly posts = new Share();
  /** Builds every post of which is really in. */
  readonly whole = new Share();
  /** Posts that the tool calls in at the end; of those, the ones really in. */
  readonly calledIn = new Share();
  readonly inIsIn = new Share();
  readonly ended = new Share();
  readonly cuts = new CutLists();
  /** Posts by how often they were pushed; the last counts all that were pushed oftener. */
  readonly nudges: number[] = Array.from({ length: MOST_COUNTED + 1 }, () => 0);
  /** Pushes and readings in all. */
  pushed = 0;
  readings = 0;
  readonly #plans: readonly StudyPlan[];

  constructor(seed: number) {
    this.seed = seed;
    this.#plans = smallPlans(seed);
  }

  /** Sets the next job by its cards, and looks at what stands. */
  addBuild(): void {
    const job = this.#plans[this.count % this.#plans.length]!;
    const draws = new Draws(this.seed * SEEDS_APART + this.count);
    const yard = new Yard(job, draws);
    const { log, nudges, readings, ended } = new Builder(job, yard, draws).build();
    const labels = job.laid.holes.map(({ label }) => label);
    const truly = labels.map((label) => reallyIn(job, yard, label));
    const all = truly.map(({ place, plumb, height }) => place && plumb && height);
    const called = assess(log).holes.map(({ set }) => set.verdict === 'in');
    const count = (some: readonly boolean[]) => some.filter(Boolean).length;
    for (const part of ['place', 'plumb', 'height'] as const)
      this[part].addJob(count(truly.map((each) => each[part])), labels.length);
    this.posts.addJob(count(all), labels.length);
    this.whole.addJob(count(all) === labels.length ? 1 : 0, 1);
    this.calledIn.addJob(count(called), labels.length);
    this.inIsIn.addJob(count(all.filter((_, i) => called[i])), count(called));
    this.ended.addJob(ended ? 1 : 0, 1);
    this.cuts.addJob(log, job, yard);
    this.#countWork(
      labels.map((label) => nudges.get(label) ?? 0),
      readings,
    );
    this.count++;
  }

  #countWork(nudges: readonly number[], readings: number): void {
    this.readings += readings;
    for (const times of nudges) {
      this.nudges[Math.min(times, MOST_COUNTED)]!++;
      this.pushed += times;
    }
  }
}

function reallyIn({ plan: { tolerances } }: StudyPlan, yard: Yard, label: string) {
  return {
    place: yard.offMark(label) <= tolerances.position.m,
    plumb: length(yard.postOf(label).lean) <= tolerances.plumb,
    height: Math.abs(yard.offHeight(label)) <= tolerances.level.m,
  };
}
