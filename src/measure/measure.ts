import type { Vec } from '../geometry/point.ts';
import type { Entry } from '../job/entry-schema.ts';
import { standing } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole, SitedReference } from '../plan/hole.ts';
import { type Adjusted, adjusted, adjustedWithout } from './adjusted.ts';
import { chiSquareChance } from './chi-square.ts';
import { type Datum, presentDatum } from './datum.ts';
import { isKnown, type Known } from './determined.ts';
import { ellipseOf } from './ellipse.ts';
import { type Heights, heights } from './heights.ts';
import { PER_NODE, rowsOf } from './model.ts';
import { movesIn } from './moved.ts';
import { networkOf, nodesOf, type PullReading } from './network.ts';
import type { OffsetReading } from './offset-rows.ts';
import { smallestCaught, unseenShifts } from './reliability.ts';
import { standardised, suspicionsOf } from './snooping.ts';
import { covariancesAmong, leanCovariance, type Solution, solvingAgain, testedOf } from './solution.ts';
import { readingFor } from './taped.ts';
import type { GlobalTest, Lack, Measured, MeasuredPoint, OffsetResult, PullResult } from './types.ts';

/** What all readings come to, and what they come to without some. */
export interface Ways {
  readonly all: Measured;
  /**
   * As `all`, without the readings of some entries. Only the whole tells what is believed misread or moved: there is none of
   * that in it.
   */
  without(entries: readonly string[]): Measured;
}

/**
 * Where everything is, as far as the readings tell: one weighted least-squares adjustment of all pulls and plumb readings
 * that stand, with A at the origin and B on the +x axis, and one of all rod readings. Whoever leaves readings out as well
 * has it from what they all came to.
 *
 * @param entries a whole log, in any order
 * @param holes of the plan that stands, laid on the site
 * @param baseline planned A–B, metres; null when not planned
 * @param references further stakes and nails, where they are meant to stand
 * @returns never throws and holds no NaN: what cannot be known is said to be so, point by point
 */
export function measureWays(
  entries: readonly Entry[],
  holes: readonly SitedHole[],
  baseline: number | null,
  instruments: Instruments,
  references: readonly SitedReference[] = [],
): Ways {
  const stands = standing(entries);
  const levelling = heights(stands, instruments);
  const settle = (log: readonly Entry[], levels: Heights) =>
    adjusted(networkOf(log, holes, levels.heights, instruments, references), baseline, instruments);
  const all = settle(stands, levelling);
  const again = solvingAgain();
  const tested = testedOf(all.solution, again);
  return {
    all: {
      ...resultsOf(all, baseline, levelling),
      suspicions: [...suspicionsOf(tested), ...levelling.suspicions],
      moves: movesIn(stands, all.solution, tested, (log) => settle(log, levelling)),
    },
    without: (out) => {
      const { placing } = all.solution.model.network;
      const rows = placing.map(({ entry }) => out.includes(entry));
      const isPlacing = out.every((id) => placing.some(({ entry }) => entry === id));
      const quick = isPlacing ? adjustedWithout(all, rows, instruments, again) : null;
      if (quick) return resultsOf(quick, baseline, levelling);
      const rest = stands.filter(({ id }) => !out.includes(id));
      // No height hangs on a tape or a plumb reading: without one the levels stay the very same.
      const ofLevels = levelling.suspicions.some((one) => one.entries.some((id) => out.includes(id)));
      const levels = ofLevels ? heights(rest, instruments) : levelling;
      return resultsOf(settle(rest, levels), baseline, levels);
    },
  };
}

/** As `measureWays`, for whoever leaves nothing out. */
export const measure = (...job: Parameters<typeof measureWays>): Measured => measureWays(...job).all;

function resultsOf({ solution, places }: Adjusted, baseline: number | null, levelling: Heights): Measured {
  const { network } = solution.model;
  const isIn = (k: number) => solution.weights[k]! > 0;
  const first = network.pulls.length;
  return {
    points: pointsOf(solution, places),
    pulls: network.pulls.flatMap((pull, k) => (isIn(k) ? [pullResult(solution, pull, k)] : [])),
    offsets: network.offsets.flatMap((row, i) =>
      isIn(first + i) ? [offsetResult(solution, row, first + i)] : [],
    ),
    suspicions: [],
    globalTest: globalTest(solution),
    moves: null,
    baseline: baselineOf(solution, places, presentDatum(network)),
    frameBaseline: baselineOf(solution, places, solution.model.datum)?.length ?? null,
    designedBaseline: baseline,
    heights: levelling.heights,
    heightsTest: levelling.test,
    levelling: levelling.levelling,
    unused: [...network.unused, ...levelling.unused],
    settled: solution.settled,
  };
}

function pointsOf(solution: Solution, places: readonly (Known | Lack)[]): MeasuredPoint[] {
  const shifts = unseenShifts(solution);
  const { leans } = solution.model.network;
  const guessed = new Set(leans.flatMap(({ node, entry }) => (entry === null ? [node] : [])));
  return solution.model.network.nodes.map(({ index, thing, stand, current }) => {
    const one = places[index]!;
    const fix = isKnown(one)
      ? {
          place: one.place,
          covariance: one.covariance,
          ellipse: ellipseOf(one.covariance),
          unseenShift: shifts[index]!,
        }
      : null;
    return {
      thing,
      stand,
      current,
      fix,
      lack: isKnown(one) ? null : one,
      lean: leanOf(solution, index, guessed),
    };
  });
}

/** Given only where plumb was read across both pairs of faces: a lean that rests on a guess is not a measured one. */
function leanOf(solution: Solution, node: number, guessed: ReadonlySet<number>): MeasuredPoint['lean'] {
  const covariance = guessed.has(node) ? null : leanCovariance(solution, node);
  if (!covariance) return null;
  const at = node * PER_NODE;
  return { perMetre: { x: solution.state[at + 2]!, y: solution.state[at + 3]! }, covariance };
}

/** In terms of what the tape of that pull reads. */
function pullResult(solution: Solution, pull: PullReading, k: number): PullResult {
  const predicted = readingFor(pull.taped, solution.evaluation.predicted[k]!);
  return rowResult(solution, pull, k, { predicted, residual: pull.read - predicted });
}

function offsetResult(solution: Solution, row: OffsetReading, k: number): OffsetResult {
  const { part } = row;
  const predicted = solution.evaluation.predicted[k]!;
  return { part, ...rowResult(solution, row, k, { predicted, residual: row.reading - predicted }) };
}

function rowResult(
  solution: Solution,
  row: PullReading | OffsetReading,
  k: number,
  { predicted, residual }: Pick<PullResult, 'predicted' | 'residual'>,
): PullResult {
  const { model, evaluation, weights } = solution;
  const { nodes } = model.network;
  const { entry, sigma } = row;
  const redundancy = solution.redundancy[k]!;
  return {
    entry,
    current: nodesOf(row).every((node) => nodes[node]!.current),
    predicted,
    residual,
    sigma,
    redundancy,
    standardised: standardised(
      { residual: evaluation.residual, weights, redundancy: solution.redundancy },
      k,
    ),
    smallestCaught: smallestCaught(sigma, redundancy),
  };
}

/**
 * χ² of what was read. The guess that a post is about plumb holds the equations together where nobody read it, and is no
 * reading: its own misfit and its own redundancy are left out of the sum and of the degrees of freedom. Where the guess
 * only supplies a lean that nothing else tells of, both are nothing; where pulls tell of the lean themselves, a post that
 * leans more than was guessed is no disagreement between readings.
 */
function globalTest(solution: Solution): GlobalTest {
  const { evaluation, weights, redundancy } = solution;
  let { chiSquare, degreesOfFreedom: spare } = solution;
  rowsOf(solution.model.network).forEach(({ entry }, k) => {
    if (entry !== null) return;
    chiSquare -= weights[k]! * evaluation.residual[k]! ** 2;
    spare -= redundancy[k]!;
  });
  const degreesOfFreedom = Math.max(Math.round(spare), 0);
  chiSquare = Math.max(chiSquare, 0);
  return { chiSquare, degreesOfFreedom, chance: chiSquareChance(chiSquare, degreesOfFreedom) };
}

function baselineOf(
  solution: Solution,
  places: readonly (Known | Lack)[],
  { a, b }: Datum,
): Measured['baseline'] {
  const { state } = solution;
  if (!isKnown(places[a]!) || !isKnown(places[b]!)) return null;
  const e = {
    x: state[b * PER_NODE]! - state[a * PER_NODE]!,
    y: state[b * PER_NODE + 1]! - state[a * PER_NODE + 1]!,
  };
  const length = Math.hypot(e.x, e.y);
  if (!(length > 0)) return null;
  return {
    length,
    sigma: Math.sqrt(Math.max(varianceBetween(solution, a, b, { x: e.x / length, y: e.y / length }), 0)),
  };
}

/** Variance of the distance of two nodes along the unit vector between them. */
function varianceBetween(solution: Solution, a: number, b: number, e: Vec): number {
  const terms = [
    [a * PER_NODE, -e.x],
    [a * PER_NODE + 1, -e.y],
    [b * PER_NODE, e.x],
    [b * PER_NODE + 1, e.y],
  ] as const;
  const covariances = covariancesAmong(
    solution,
    terms.map(([at]) => at),
  );
  return terms.reduce(
    (sum, [, p], i) => sum + terms.reduce((inner, [, q], j) => inner + p * q * covariances[i]![j]!, 0),
    0,
  );
}
