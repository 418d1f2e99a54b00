import { formatSmall, type Units } from '../units/index.ts';
import type { StakeChoice } from './types.ts';

/** What one choice of A and B costs against another. */
export interface StakeCost {
  /** Worst DRMS over the other's worst: 1.5 is half as much error again. Infinity when a hole is not fixed at all. */
  readonly times: number;
  /** After `What your own choice costs:`; whole sentences but for that. */
  readonly text: string;
}

/** Below this the difference is nothing that a tape could show. */
const AS_GOOD = 1.05;

/** Holds the user's own stakes against the best ones. Null when the plan has no holes. */
export function compareStakes(own: StakeChoice, best: StakeChoice, units: Units): StakeCost | null {
  if (!own.worst || !best.worst) return null;
  const times = own.worst.crossing.drms / best.worst.crossing.drms;
  const [mine, theirs] = [own, best].map((choice) => formatSmall(choice.worst!.crossing.drms, units));
  if (times <= AS_GOOD)
    return {
      times,
      text: `nothing to speak of. At the worst hole, ${own.worst.hole}, tapes are good to ${mine}; the best places give ${theirs}.`,
    };
  if (!Number.isFinite(times))
    return {
      times,
      text: `hole ${own.worst.hole} is not fixed at all from here; the best places give ${theirs}.`,
    };
  return {
    times,
    text: `${timesWords(times)} the error. At the worst hole, ${own.worst.hole}, tapes are good to ${mine} from here; the best places give ${theirs}.`,
  };
}

/** `1.6 times`; whole above ten, where nobody minds the rest. */
const timesWords = (times: number): string => `${times < 10 ? times.toFixed(1) : Math.round(times)} times`;
