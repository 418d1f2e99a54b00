import { Mean, Share } from './share.ts';

/** Lower ends of the bands of chance; the last ends at 1, which belongs to it. The verdicts change at 5 and 95 %. */
export const CHANCES = [0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95] as const;

/** Of things that were given about the same chance of being in, the share that is. */
export class Calibration {
  readonly bands = CHANCES.map((from) => ({ from, isIn: new Share(), claimed: new Mean() }));

  /** Everything of one job. */
  addJob(judged: readonly { readonly chance: number; readonly isIn: boolean }[]): void {
    this.bands.forEach(({ from, isIn, claimed }, i) => {
      const to = CHANCES[i + 1] ?? Number.POSITIVE_INFINITY;
      const within = judged.filter(({ chance }) => chance >= from && chance < to);
      isIn.addJob(within.filter((each) => each.isIn).length, within.length);
      for (const { chance } of within) claimed.add(chance);
    });
  }
}
