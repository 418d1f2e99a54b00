import type { Plan } from '../../job/plan-schema.ts';
import { type Hole, type LaidLine, placeOf } from '../../plan/index.ts';
import { compareStakes, judgeStakes, proposeStakes, type StakeChoice } from '../../stakeout/index.ts';
import type { Units } from '../../units/index.ts';
import { flattestWords, typedPlace } from './place-words.ts';

/** Own places that are this many times as bad as the best are asked back about, once: they may be a slip. */
const ASKED_BACK = 2;

/** The tool's proposal as it will be logged: in the units' own steps. Null where it has none. */
export function proposal(plan: Plan, holes: readonly Hole[], lines: readonly LaidLine[]): StakeChoice | null {
  const best = proposeStakes(holes, plan.instruments, { units: plan.units, lines });
  if (!best) return null;
  const [a, b] = [best.a, best.b].map((place) => placeOf(typedPlace(place, plan.units)));
  return a && b ? judgeStakes(a, b, holes, plan.instruments, plan.units, lines) : null;
}

/** What is said before places are taken that are more than twice as bad as the best; null of better ones. */
export function priceToAsk(own: StakeChoice, best: StakeChoice | null, units: Units): string | null {
  const cost = best && compareStakes(own, best, units);
  if (!cost || cost.times <= ASKED_BACK) return null;
  const flattest = flattestWords(own) || crossingThere(own);
  return `What your own choice costs: ${cost.text} ${flattest} To use them all the same, tap again.`;
}

const DEGREES = 180 / Math.PI;

/** Of the worst hole, where it is the flattest crossing too. */
function crossingThere({ worst }: StakeChoice): string {
  if (!worst) return '';
  const { angle } = worst.crossing;
  const sharp = Math.round(Math.min(angle, Math.PI - angle) * DEGREES);
  return `There the tapes cross at ${sharp}°, the flattest of all.`;
}
