import { situate } from '../../src/judge/situation.ts';
import { GUARDED_FROM, type Measured } from '../../src/measure/index.ts';
import { METRES_PER_INCH } from '../../src/units/index.ts';
import type { Draws } from './draws.ts';
import { misread, type StudyJob } from './job.ts';
import { Mean, Share } from './share.ts';
import { namedFirst, power } from './theory.ts';

/** What became of one-inch misreadings of pulls in one band of redundancy. */
export class Misreadings {
  readonly noticed = new Share();
  readonly first = new Share();
  /** The right pull is among the suspects, first or not. */
  readonly named = new Share();
  readonly noticedExpected = new Mean();
  readonly firstAtLeast = new Mean();
  readonly firstAtMost = new Mean();
}

/** Bands of redundancy, from each up to the next. */
export const BANDS = [GUARDED_FROM, 0.2, 0.3, 0.5] as const;

export const SHAPES = ['ring', 'ring round a pier', 'rows'] as const;

function shapeOf({ plan: { plan } }: StudyJob): (typeof SHAPES)[number] {
  if (plan.shape.kind === 'rows') return 'rows';
  return plan.shape.kind === 'ring' && plan.shape.pier ? 'ring round a pier' : 'ring';
}

/** One inch too long or too short, in one guarded pull of each job. */
export class OneInch {
  readonly all = new Misreadings();
  readonly shapes = new Map<string, Misreadings>(SHAPES.map((shape) => [shape, new Misreadings()]));
  readonly bands = new Map<number, Misreadings>(BANDS.map((from) => [from, new Misreadings()]));

  addJob(job: StudyJob, clean: Measured, draws: Draws): void {
    const guarded = clean.pulls.filter(({ redundancy }) => redundancy >= GUARDED_FROM);
    const pull = draws.pick(guarded);
    const by = draws.pick([METRES_PER_INCH, -METRES_PER_INCH]);
    const spoilt = situate(misread(job.log, pull.entry, by)).measured;
    if (!spoilt) throw new Error('a job with a misreading was not measured');
    const pulls = new Set(clean.pulls.map(({ entry }) => entry));
    const suspicions = spoilt.suspicions.filter(({ entries }) => entries.some((entry) => pulls.has(entry)));
    const expected = namedFirst(clean.pulls, spoilt.pulls, pull.entry);
    const band = BANDS.findLast((from) => pull.redundancy >= from)!;
    for (const count of [this.all, this.bands.get(band)!, this.shapes.get(shapeOf(job))!]) {
      count.noticed.addJob(suspicions.length > 0 ? 1 : 0, 1);
      count.first.addJob(suspicions[0]?.entries[0] === pull.entry ? 1 : 0, 1);
      count.named.addJob(suspicions.some(({ entries }) => entries.includes(pull.entry)) ? 1 : 0, 1);
      count.noticedExpected.add(power(pull, by));
      count.firstAtLeast.add(expected.least);
      count.firstAtMost.add(expected.most);
    }
  }
}
