import { METRES_PER_FOOT, METRES_PER_INCH, type Units } from '../units/index.ts';
import type { Stakes } from './search.ts';

/** Numbers that people find round, coarsest first, metres. */
export const ROUND: Record<Units, readonly number[]> = {
  'ft-in-16': [METRES_PER_FOOT, 6 * METRES_PER_INCH, METRES_PER_INCH],
  'ft-in-32': [METRES_PER_FOOT, 6 * METRES_PER_INCH, METRES_PER_INCH],
  ft: [METRES_PER_FOOT, METRES_PER_FOOT / 2, METRES_PER_FOOT / 10],
  m: [0.5, 0.1, 0.01],
  mm: [0.5, 0.1, 0.01],
};

/**
 * The roundest stakes nearby that are still `goodEnough`; as they are when none is. A line along the plan stays one.
 */
export function roundStakes(stakes: Stakes, units: Units, goodEnough: (stakes: Stakes) => boolean): Stakes {
  for (const step of ROUND[units]) {
    const found = nearby(stakes, step).find(goodEnough);
    if (found) return found;
  }
  return stakes;
}

/** Numbers that agree within this are one number: a line along the plan. A hundredth of a millimetre. */
const SAME = 1e-5;

/** All pairs of places whose four numbers are the multiples of `step` on either side, nearest first. */
function nearby(stakes: Stakes, step: number): Stakes[] {
  const [axs, ays, bxs, bys] = stakes.map((value) => eitherSide(value, step)) as [
    number[],
    number[],
    number[],
    number[],
  ];
  const keepsX = Math.abs(stakes[0] - stakes[2]) < SAME;
  const keepsY = Math.abs(stakes[1] - stakes[3]) < SAME;
  const all = axs.flatMap((ax) =>
    ays.flatMap((ay) => bxs.flatMap((bx) => bys.map((by): Stakes => [ax, ay, bx, by]))),
  );
  const away = (other: Stakes) => Math.hypot(...other.map((value, i) => value - stakes[i]!));
  return all
    .filter(([ax, ay, bx, by]) => (!keepsX || ax === bx) && (!keepsY || ay === by))
    .sort((p, q) => away(p) - away(q));
}

function eitherSide(value: number, step: number): number[] {
  const below = Math.floor(value / step);
  return [below * step, (below + 1) * step];
}
