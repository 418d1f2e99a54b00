import { length } from '../../src/geometry/point.ts';
import { assess } from '../../src/judge/assess.ts';
import { Builder } from './builder.ts';
import { type CutCount, CutLists, countCuts } from './cut-list.ts';
import { Draws } from './draws.ts';
import { type StudyPlan, smallPlans } from './plans.ts';
import { Share } from './share.ts';
import { Yard } from './yard.ts';

/** Keeps the seeds of one study's builds apart from those of the next. */
const SEEDS_APART = 1_000_033;

/** Pushes of one post are counted up to so many. */
export const MOST_COUNTED = 12;

/** What became of one post: plain data, so that one process can tell another. */
interface PostTally {
  /** Really so, at the end. */
  readonly place: boolean;
  readonly plumb: boolean;
  readonly height: boolean;
  /** What the tool says. */
  readonly calledIn: boolean;
  readonly pushes: number;
}

export interface BuildTally {
  readonly posts: readonly PostTally[];
  readonly readings: number;
  readonly ended: boolean;
  readonly cuts: readonly CutCount[];
}

/** Sets the jobs of one study by their cards, and looks at what stands. Each build is the same whichever come before it. */
export function buildsOf(seed: number): (index: number) => BuildTally {
  const plans = smallPlans(seed);
  return (index) => {
    const job = plans[index % plans.length]!;
    const draws = new Draws(seed * SEEDS_APART + index);
    const yard = new Yard(job, draws);
    const { log, nudges, readings, ended } = new Builder(job, yard, draws).build();
    const posts = assess(log).holes.map(({ hole, set }) => ({
      ...reallyIn(job, yard, hole),
      calledIn: set.verdict === 'in',
      pushes: nudges.get(hole) ?? 0,
    }));
    return { posts, readings, ended, cuts: countCuts(log, job, yard).counts };
  };
}

function reallyIn({ plan: { tolerances } }: StudyPlan, yard: Yard, label: string) {
  return {
    place: yard.offMark(label) <= tolerances.position.m,
    plumb: length(yard.postOf(label).lean) <= tolerances.plumb,
    height: Math.abs(yard.offHeight(label)) <= tolerances.level.m,
  };
}

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

  constructor(seed: number) {
    this.seed = seed;
  }

  add({ posts, readings, ended, cuts }: BuildTally): void {
    const count = (is: (post: PostTally) => boolean) => posts.filter(is).length;
    const isIn = ({ place, plumb, height }: PostTally) => place && plumb && height;
    for (const part of ['place', 'plumb', 'height', 'calledIn'] as const)
      this[part].addJob(
        count((post) => post[part]),
        posts.length,
      );
    this.posts.addJob(count(isIn), posts.length);
    this.whole.addJob(count(isIn) === posts.length ? 1 : 0, 1);
    this.inIsIn.addJob(
      count((post) => post.calledIn && isIn(post)),
      count(({ calledIn }) => calledIn),
    );
    this.ended.addJob(ended ? 1 : 0, 1);
    this.cuts.add(cuts);
    this.readings += readings;
    for (const { pushes } of posts) {
      this.nudges[Math.min(pushes, MOST_COUNTED)]!++;
      this.pushed += pushes;
    }
    this.count++;
  }
}
