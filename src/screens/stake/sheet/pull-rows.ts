import type { Situation } from '../../../judge/situation.ts';
import { type ListedHole, type ListedTape, pullList } from '../../../stakeout/index.ts';
import type { PullToRead } from '../../pull-flow.tsx';
import { riseBetween } from '../../rise.ts';
import { nailPull, pullToStake } from '../stake-pulls.ts';
import { STAKE_A, STAKE_B } from '../stake-step.ts';
import { orderOfWork, pullsFromStakes } from '../use-stake.ts';

const STAKES = { A: STAKE_A, B: STAKE_B };

/** The pull list of a job, in the order of the work; empty until the plan lies on the site. */
export function pullRows(
  situation: Pick<Situation, 'plan' | 'laid' | 'measured'>,
  alone: boolean,
): ListedHole[] {
  const { plan } = situation;
  if (!plan) return [];
  return pullList({
    pulls: new Map(pullsFromStakes(situation).map((each) => [each.hole, each])),
    order: orderOfWork(situation, alone),
    rise: (from, hole) => {
      const pull = pullToStake(STAKES[from], hole, 0);
      return riseBetween(situation, pull.from, pull.to);
    },
    reach: plan.instruments.tapeLength.m,
  });
}

/** A tape of the list as a pull that the screens can show and read. */
export const pullOfTape = (hole: string, { from, level }: ListedTape): PullToRead & { expected: number } =>
  nailPull(STAKES[from], { kind: 'hole-stake', hole }, level);
