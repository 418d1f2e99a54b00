import type { Instruments } from '../job/plan-schema.ts';
import { type Datum, firstDatum, presentDatum } from './datum.ts';
import { determine, isKnown, type Known } from './determined.ts';
import { modelOf } from './model.ts';
import type { Network } from './network.ts';
import { settleSides } from './sides.ts';
import { type Solution, solve } from './solution.ts';
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

function adjustIn(
  datum: Datum,
  network: Network,
  baseline: number | null,
  instruments: Instruments,
): Adjusted {
  const model = modelOf(network, datum);
  const { solution, eitherSide } = settleSides(
    solve(model, startState(network, datum, baseline), model.weights),
  );
  return { solution, places: determine(solution, eitherSide, instruments) };
}
