import { distance, length, scale, subtract, type Vec } from '../geometry/point.ts';
import { thingName } from '../job/words.ts';
import type { Covariance } from '../measure/types.ts';
import type { SitedHole } from '../plan/hole.ts';
import { formatLength } from '../units/index.ts';
import { chanceWithin, sigmaAlong } from './chance.ts';
import { judged, unmeasured } from './judgement.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { unseenAllowed } from './position.ts';
import type { Judgement } from './types.ts';
import { type JobView, pointOf, postOf, pullsBetween } from './view.ts';
import { capital, cellWords, listWords, small } from './words.ts';

/**
 * The measured distance from a set post to a neighbour, centre to centre, held against the planned one, two-sided.
 *
 * A pull between the two gives the sigma of their adjusted distance: σ√(1 − r), its own sigma and redundancy (q of the
 * adjusted reading is q of the reading less q of its residual; Baarda 1968, from memory). Without one the places' joint doubt
 * is not known, and the sum of both sigmas along the line bounds it whatever their correlation.
 *
 * @param first what to put right before this spacing means anything, in a sentence; null when both stand in place
 */
export function judgeSpacing(
  view: JobView,
  hole: SitedHole,
  neighbour: SitedHole,
  first: string | null,
): Judgement {
  const tolerance = view.plan.tolerances.spacing.m;
  const [here, there] = [pointOf(view, postOf(hole.label))?.fix, pointOf(view, postOf(neighbour.label))?.fix];
  const pair = `${thingName(postOf(hole.label), view.plan)} to ${thingName(postOf(neighbour.label), view.plan)}`;
  if (!here || !there) {
    const missing = thingName(postOf(here ? neighbour.label : hole.label), view.plan);
    return unmeasured('spacing', tolerance, `${capital(pair)} is not known until ${missing} is measured.`);
  }
  const planned = distance(hole.site, neighbour.site);
  const measured = distance(here.place, there.place);
  const error = measured - planned;
  const direct = sigmaOfPull(view, hole.label, neighbour.label);
  const sigma = direct ?? boundOfSigma(here, there);
  const { units } = view.plan;
  const allowed = unseenAllowed(view.plan.tolerances.position.m);
  const off = `${small(error, units)} too ${error > 0 ? 'long' : 'short'}`;
  const say = `${capital(pair)} measures ${formatLength(measured, units)}, ${off}`;
  const unguarded = [
    { fix: here, label: hole.label },
    { fix: there, label: neighbour.label },
  ].flatMap(({ fix, label }) => (fix.unseenShift <= allowed ? [] : [thingName(postOf(label), view.plan)]));
  const pull = direct === null ? `Pull from ${pair}.` : 'Pull between them once more.';
  return judged(
    {
      quantity: 'spacing',
      chance: chanceWithin(error, sigma, tolerance),
      best: () => chanceWithin(0, sigma, tolerance),
      error,
      sigma,
      tolerance,
      checked: unguarded.length === 0,
    },
    {
      cell: (verdict, e, u) =>
        `${cellWords(verdict, e, u, units)}${e === 0 ? '' : e > 0 ? ' long' : ' short'}`,
      out: () => `${say}, and ${small(tolerance, units)} is allowed.${first === null ? '' : ` ${first}`}`,
      unsure: () =>
        `${say}, known to ± ${small(HALF_WIDTH_95 * sigma, units)}, and ${small(tolerance, units)} is allowed: it may be in or out. ${first ?? pull}`,
      unchecked: () =>
        `${capital(pair)} is no surer than the two places: guard ${listWords(unguarded)} with a spare pull.`,
    },
  );
}

/** One sigma of the adjusted distance, from the best pull between two posts; null when there is none. */
function sigmaOfPull(view: JobView, one: string, other: string): number | null {
  const sigmas = pullsBetween(view, postOf(one), postOf(other)).map(
    (pull) => pull.sigma * Math.sqrt(Math.max(0, 1 - pull.redundancy)),
  );
  return sigmas.length > 0 ? Math.min(...sigmas) : null;
}

function boundOfSigma(
  here: { place: Vec; covariance: Covariance },
  there: { place: Vec; covariance: Covariance },
): number {
  const along = subtract(there.place, here.place);
  const away = length(along);
  // Two posts measured at one place: any direction is as good.
  const n = away > 0 ? scale(along, 1 / away) : { x: 1, y: 0 };
  return sigmaAlong(here.covariance, n) + sigmaAlong(there.covariance, n);
}
