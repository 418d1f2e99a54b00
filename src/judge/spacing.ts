import { distance, length, scale, subtract } from '../geometry/point.ts';
import { thingName } from '../job/words.ts';
import type { Fix } from '../measure/types.ts';
import type { SitedHole } from '../plan/hole.ts';
import { formatLength } from '../units/index.ts';
import { chanceWithin, sigmaAlong } from './chance.ts';
import { judged, unmeasured, verdictFound } from './judgement.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { unseenAllowed } from './position.ts';
import type { Judgement, Verdict } from './types.ts';
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
  const name = ({ label }: SitedHole) => thingName(postOf(label), view.plan);
  const pair = () => `${name(hole)} to ${name(neighbour)}`;
  const found = spacingFound(view, hole, neighbour);
  if (!found) {
    const missing = name(fixOf(view, hole) ? neighbour : hole);
    return unmeasured('spacing', tolerance, `${capital(pair())} is not known until ${missing} is measured.`);
  }
  const { measured, error, sigma, direct } = found;
  const { units } = view.plan;
  const allowed = unseenAllowed(view.plan.tolerances.position.m);
  const unguarded = [hole, neighbour].filter((each) => !(fixOf(view, each)!.unseenShift <= allowed));
  const say = () =>
    `${capital(pair())} measures ${formatLength(measured, units)}, ${small(error, units)} too ${error > 0 ? 'long' : 'short'}`;
  const pull = () => (direct ? 'Pull between them once more.' : `Pull from ${pair()}.`);
  return judged(
    { quantity: 'spacing', ...found, tolerance, checked: unguarded.length === 0 },
    {
      cell: (verdict, e, u) =>
        `${cellWords(verdict, e, u, units)}${e === 0 ? '' : e > 0 ? ' long' : ' short'}`,
      out: () => `${say()}, and ${small(tolerance, units)} is allowed.${first === null ? '' : ` ${first}`}`,
      unsure: () =>
        `${say()}, known to ± ${small(HALF_WIDTH_95 * sigma, units)}, and ${small(tolerance, units)} is allowed: it may be in or out. ${first ?? pull()}`,
      unchecked: () =>
        `${capital(pair())} is no surer than the two places: guard ${listWords(unguarded.map(name))} with a spare pull.`,
    },
  );
}

/** As `judgeSpacing`, for whoever wants no words. */
export function spacingVerdict(view: JobView, hole: SitedHole, neighbour: SitedHole): Verdict {
  const found = spacingFound(view, hole, neighbour);
  return found ? verdictFound(found) : 'unmeasured';
}

const fixOf = (view: JobView, { label }: SitedHole): Fix | null => pointOf(view, postOf(label))?.fix ?? null;

/** A measured spacing against the planned one, metres; null until both posts have a place. */
function spacingFound(view: JobView, hole: SitedHole, neighbour: SitedHole) {
  const [here, there] = [fixOf(view, hole), fixOf(view, neighbour)];
  if (!here || !there) return null;
  const tolerance = view.plan.tolerances.spacing.m;
  const measured = distance(here.place, there.place);
  const error = measured - distance(hole.site, neighbour.site);
  const direct = sigmaOfPull(view, hole.label, neighbour.label);
  const sigma = direct ?? boundOfSigma(here, there);
  return {
    measured,
    error,
    sigma,
    direct: direct !== null,
    chance: chanceWithin(error, sigma, tolerance),
    best: () => chanceWithin(0, sigma, tolerance),
  };
}

/** One sigma of the adjusted distance, from the best pull between two posts; null when there is none. */
function sigmaOfPull(view: JobView, one: string, other: string): number | null {
  const sigmas = pullsBetween(view, postOf(one), postOf(other)).map(
    (pull) => pull.sigma * Math.sqrt(Math.max(0, 1 - pull.redundancy)),
  );
  return sigmas.length > 0 ? Math.min(...sigmas) : null;
}

function boundOfSigma(here: Fix, there: Fix): number {
  const along = subtract(there.place, here.place);
  const away = length(along);
  // Two posts measured at one place: any direction is as good.
  const n = away > 0 ? scale(along, 1 / away) : { x: 1, y: 0 };
  return sigmaAlong(here.covariance, n) + sigmaAlong(there.covariance, n);
}
