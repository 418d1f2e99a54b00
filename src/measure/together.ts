import { add, scale, type Vec } from '../geometry/point.ts';
import type { Entry } from '../job/entry-schema.ts';
import { standing } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole, SitedReference } from '../plan/hole.ts';
import { adjusted } from './adjusted.ts';
import { isKnown } from './determined.ts';
import { heights } from './heights.ts';
import { PER_NODE } from './model.ts';
import { networkOf } from './network.ts';
import { placeOf, type Solution } from './solution.ts';
import { InverseColumns, LANES } from './sparse-inverse.ts';

/** The middle of a post so far above its ground, metres. */
export interface PostSpot {
  readonly hole: string;
  readonly height: number;
}

/** How much a figure changes when a spot moves, per metre towards x and y. */
export interface Pull {
  readonly spot: PostSpot;
  readonly by: Vec;
}

/** All posts as one adjustment has them, so that what is shared by two of them falls out of what lies between them. */
export interface PostsTogether {
  /** Site frame; null for a post whose place no reading fixes. */
  at(spot: PostSpot): Vec | null;
  /** Variance of a figure of several spots that are all known: gᵀ Q g. */
  variance(pulls: readonly Pull[]): number;
}

/**
 * The posts as they stand now, with how their doubts hang together: what `measure` leaves out, since it is wanted for the
 * cutting only and is large. Parameters as `measure` has them.
 */
export function postsTogether(
  entries: readonly Entry[],
  holes: readonly SitedHole[],
  baseline: number | null,
  instruments: Instruments,
  references: readonly SitedReference[] = [],
): PostsTogether {
  const stands = standing(entries);
  const levelling = heights(stands, instruments);
  const network = networkOf(stands, holes, levelling.heights, instruments, references);
  const { solution, places } = adjusted(network, baseline, instruments);
  const nodes = new Map<string, number>();
  for (const { index, thing, current } of network.nodes) {
    if (thing.kind === 'post' && current && solution.settled && isKnown(places[index]!))
      nodes.set(thing.hole, index);
  }
  const columns = new InverseColumns(solution.model.symbolic, solution.factor);
  const found = new Float64Array(LANES * solution.model.symbolic.size);
  return {
    at: ({ hole, height }) => {
      const node = nodes.get(hole);
      return node === undefined ? null : add(placeOf(solution, node), scale(leanOf(solution, node), height));
    },
    variance: (pulls) => {
      const { positions, values } = termsOf(solution, nodes, pulls);
      columns.at([{ positions, values }], positions, found);
      const sum = positions.reduce((total, at, i) => total + values[i]! * found[LANES * at]!, 0);
      return Math.max(sum, 0);
    },
  };
}

const leanOf = ({ state }: Solution, node: number): Vec => ({
  x: state[node * PER_NODE + 2]!,
  y: state[node * PER_NODE + 3]!,
});

/** A vector over the unknowns, by position. */
interface Terms {
  readonly positions: readonly number[];
  readonly values: readonly number[];
}

function termsOf({ model }: Solution, nodes: ReadonlyMap<string, number>, pulls: readonly Pull[]): Terms {
  const positions: number[] = [];
  const values: number[] = [];
  const put = (place: number, value: number) => {
    const unknown = model.unknownOf[place]!;
    if (unknown === -1) return;
    positions.push(model.symbolic.position[unknown]!);
    values.push(value);
  };
  for (const { spot, by } of pulls) {
    const node = nodes.get(spot.hole);
    if (node === undefined) throw new RangeError(`The place of post ${spot.hole} is not known`);
    const at = node * PER_NODE;
    put(at, by.x);
    put(at + 1, by.y);
    put(at + 2, by.x * spot.height);
    put(at + 3, by.y * spot.height);
  }
  return { positions, values };
}
