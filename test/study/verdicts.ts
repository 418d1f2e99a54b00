import { length } from '../../src/geometry/point.ts';
import type { Assessment, HoleAssessment, Judgement } from '../../src/judge/types.ts';
import { Calibration } from './calibration.ts';
import type { StudyJob } from './job.ts';
import { Mean, Share } from './share.ts';

export const JUDGED = ['position', 'plumb', 'level'] as const;
export type Judged = (typeof JUDGED)[number];

/** What was called in, out or unsure of one quantity, and what was so. */
export class Verdicts {
  readonly #quantity: Judged;
  /** Of those called in, those really out; and the other way round. */
  readonly inIsOut = new Share();
  readonly outIsIn = new Share();
  readonly unsure = new Share();
  /** Shares that the verdicts' own chances promise. */
  readonly inIsOutClaimed = new Mean();
  readonly outIsInClaimed = new Mean();
  readonly calibration = new Calibration();

  constructor(quantity: Judged) {
    this.#quantity = quantity;
  }

  addJob(job: StudyJob, { holes }: Assessment): void {
    const judged = holes.flatMap((hole) => {
      const judgement = hole.set[this.#quantity];
      return judgement.chance === null
        ? []
        : [{ judgement, chance: judgement.chance, isIn: isIn(job, hole, judgement) }];
    });
    this.calibration.addJob(judged);
    const ins = judged.filter(({ judgement }) => judgement.verdict === 'in');
    const outs = judged.filter(({ judgement }) => judgement.verdict === 'out');
    this.inIsOut.addJob(ins.filter((each) => !each.isIn).length, ins.length);
    this.outIsIn.addJob(outs.filter((each) => each.isIn).length, outs.length);
    this.unsure.addJob(judged.length - ins.length - outs.length, judged.length);
    for (const { chance } of ins) this.inIsOutClaimed.add(1 - chance);
    for (const { chance } of outs) this.outIsInClaimed.add(chance);
  }
}

function isIn({ yard }: StudyJob, { hole }: HoleAssessment, { quantity, tolerance }: Judgement): boolean {
  if (quantity === 'position') return yard.offMark(hole) <= tolerance;
  if (quantity === 'plumb') return length(yard.postOf(hole).lean) <= tolerance;
  return Math.abs(yard.offHeight(hole)) <= tolerance;
}
