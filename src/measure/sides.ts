import { distance, type Vec } from '../geometry/point.ts';
import { ellipseOf } from './ellipse.ts';
import { type Image, Images, SIDES_ALIKE } from './mirror.ts';
import { PER_NODE } from './model.ts';
import { placeCovariance, placeOf, type Solution, solve } from './solution.ts';

/** One turn does for honest readings; more would mean that nodes turn each other to and fro. */
const MOST_TURNS = 8;
/** A place is on its planned side when it lies at most this share as far from its plan as its image does. */
const CLEARLY_NEARER = 0.5;

export interface Sided {
  readonly solution: Solution;
  /** Nodes that would stand elsewhere in another solution that fits as well. */
  readonly eitherSide: ReadonlySet<number>;
  /** Of that solution. */
  readonly images: Images;
}

/**
 * Settles on which side of what they were pulled from things stand. Two tapes always meet twice: nodes that fit better at
 * their image, and holes that fit as well there and are planned there, are turned over.
 */
export function settleSides(first: Solution): Sided {
  let best = first;
  let images = new Images(best);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const state = withSidesTurned(best, images);
    if (!state) break;
    const next = solve(best.model, state, best.weights);
    if (!(next.chiSquare < best.chiSquare + SIDES_ALIKE)) break;
    best = next;
    images = new Images(best);
  }
  return tryOtherSides(best, images);
}

function withSidesTurned(solution: Solution, images: Images): Float64Array | null {
  const { network, datum, byNode } = solution.model;
  const state = solution.state.slice();
  let turned = false;
  for (const { index, designed } of network.nodes) {
    if (index === datum.a || index === datum.b || byNode[index]!.length < 2) continue;
    const image = images.of(index);
    if (!image || !belongsAt(image, placeOf(solution, index), designed)) continue;
    put(state, index, image.place);
    turned = true;
  }
  return turned ? state : null;
}

function belongsAt(image: Image, place: Vec, designed: Vec | null): boolean {
  if (image.misfit < -SIDES_ALIKE) return true;
  return image.misfit < SIDES_ALIKE && designed !== null && clearlyNearer(image.place, place, designed);
}

function put(state: Float64Array, node: number, place: Vec): void {
  state[node * PER_NODE] = place.x;
  state[node * PER_NODE + 1] = place.y;
}

/** True when `p` is where the plan means, rather than its image `q`. */
export function clearlyNearer(p: Vec, q: Vec, designed: Vec): boolean {
  return distance(p, designed) < CLEARLY_NEARER * distance(q, designed);
}

/**
 * A stake or nail may have no planned place to tell its side by, and the things it was pulled from may give way a little when it
 * is turned over. Where its own pulls misfit by less than this at its image (a tape of 2 mm half a metre out), the whole
 * network is settled again from there.
 */
const WORTH_A_TRY = 62_500;

function tryOtherSides(first: Solution, imagesOfFirst: Images): Sided {
  let best = first;
  let images = imagesOfFirst;
  const alike: Solution[] = [];
  const { network, datum, byNode } = first.model;
  for (const { index, thing, designed } of network.nodes) {
    // Where a stake is meant to stand is no proof that it was driven there; a hole is not mistaken for another.
    const sure = designed && thing.kind !== 'stake' && thing.kind !== 'nail';
    if (sure || index === datum.a || index === datum.b || byNode[index]!.length < 2) continue;
    const image = images.of(index);
    if (!image || image.misfit > WORTH_A_TRY) continue;
    const state = best.state.slice();
    put(state, index, image.place);
    const other = solve(best.model, state, best.weights);
    if (other.chiSquare < best.chiSquare - SIDES_ALIKE) {
      best = other;
      images = new Images(best);
    } else if (other.chiSquare < best.chiSquare + SIDES_ALIKE) alike.push(other);
  }
  const rivals = alike.filter((other) => other.chiSquare < best.chiSquare + SIDES_ALIKE);
  const eitherSide = new Set(rivals.flatMap((other) => placedElsewhere(best, other)));
  return { solution: best, eitherSide, images };
}

/** Two solutions put a node in one place when they differ by fewer of its sigmas. */
const SAME_WITHIN = 4;

function placedElsewhere(best: Solution, other: Solution): number[] {
  return best.model.network.nodes.flatMap(({ index, designed }) => {
    const covariance = placeCovariance(best, index);
    if (!covariance) return [];
    const p = placeOf(best, index);
    const q = placeOf(other, index);
    const same = distance(p, q) <= SAME_WITHIN * ellipseOf(covariance).semiMajor;
    return same || (designed && clearlyNearer(p, q, designed)) ? [] : [index];
  });
}
