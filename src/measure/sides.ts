import { distance, type Vec } from '../geometry/point.ts';
import { type Image, Images, pullsByNode, SIDES_ALIKE } from './mirror.ts';
import { PER_NODE } from './model.ts';
import { placeOf, type Solution, solve } from './solution.ts';

/** One turn does for honest readings; more would mean that nodes turn each other to and fro. */
const MOST_TURNS = 8;
/** A place is on its planned side when it lies at most this share as far from its plan as its image does. */
const CLEARLY_NEARER = 0.5;

/**
 * Turns the nodes that settled at the wrong one of the two places where their tapes meet over to the other, and settles
 * again: those that fit better there, and holes that fit as well there and are planned there.
 */
export function settleSides(solution: Solution): Solution {
  const pulls = pullsByNode(solution.model);
  let best = solution;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const state = withSidesTurned(best, pulls);
    if (!state) return best;
    const next = solve(best.model, state, best.weights);
    if (!(next.chiSquare < best.chiSquare + SIDES_ALIKE)) return best;
    best = next;
  }
  return best;
}

function withSidesTurned(solution: Solution, pulls: readonly (readonly number[])[]): Float64Array | null {
  const { network, datum } = solution.model;
  const images = new Images(solution);
  const state = solution.state.slice();
  let turned = false;
  for (const { index, designed } of network.nodes) {
    if (index === datum.a || index === datum.b || pulls[index]!.length < 2) continue;
    const image = images.of(index, pulls[index]!);
    if (!image || !belongsAt(image, placeOf(solution, index), designed)) continue;
    state[index * PER_NODE] = image.place.x;
    state[index * PER_NODE + 1] = image.place.y;
    turned = true;
  }
  return turned ? state : null;
}

function belongsAt(image: Image, place: Vec, designed: Vec | null): boolean {
  if (image.misfit < -SIDES_ALIKE) return true;
  return image.misfit < SIDES_ALIKE && designed !== null && clearlyNearer(image.place, place, designed);
}

/** True when `p` is where the plan means, rather than its image `q`. */
export function clearlyNearer(p: Vec, q: Vec, designed: Vec): boolean {
  return distance(p, designed) < CLEARLY_NEARER * distance(q, designed);
}
