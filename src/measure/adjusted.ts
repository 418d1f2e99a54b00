import type { Instruments } from '../job/plan-schema.ts';
import { type Datum, firstDatum, presentDatum } from './datum.ts';
import { determine, isKnown, type Known } from './determined.ts';
import { modelOf } from './model.ts';
import type { Network } from './network.ts';
import { settleSides } from './sides.ts';
import { type Solution, type SolveAgain, solve } from './solution.ts';
import { startState } from './start.ts';
import type { Lack } from './types.ts';

export interface Adjusted {
  readonly solution: Solution;
  readonly places: readonly (Known | Lack)[];
}

/** In the frame of the stakes as they first stood if that reaches the stakes as they stand now, else in these. */
export function adjusted(network: Network, baseline: number | null, instruments: Instruments): Adjusted {
  const first = firstDatum(network);
  const present = presentDatum(network);
  const inFirst = adjustIn(first, network, baseline, instruments);
  const same = first.a === present.a && first.b === present.b;
  if (same || (isKnown(inFirst.places[present.a]!) && isKnown(inFirst.places[present.b]!))) return inFirst;
  return adjustIn(present, network, baseline, instruments);
}

/**
 * The same without some readings of places, from what they all came to.
 *
 * @param out by row, which are left out: pulls and offsets only, since a post without plumb readings is guessed to be plumb
 * @returns null where the frame would be another one: then `adjusted` has to be asked anew
 */
export function adjustedWithout(
  { solution }: Adjusted,
  out: readonly boolean[],
  instruments: Instruments,
  again: SolveAgain,
): Adjusted | null {
  const { network, datum } = solution.model;
  const weights = solution.weights.map((weight, k) => (out[k] ? 0 : weight));
  const sided = settleSides(again(solution, weights));
  const places = determine(sided, instruments);
  const present = presentDatum(network);
  const same = datum.a === present.a && datum.b === present.b;
  if (!same && !(isKnown(places[present.a]!) && isKnown(places[present.b]!))) return null;
  return { solution: sided.solution, places };
}

function adjustIn(
  datum: Datum,
  network: Network,
  baseline: number | null,
  instruments: Instruments,
): Adjusted {
  const model = modelOf(network, datum);
  const sided = settleSides(solve(model, startState(network, datum, baseline), model.weights));
  return { solution: sided.solution, places: determine(sided, instruments) };
}
