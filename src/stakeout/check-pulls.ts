import { cross, distance, length, subtract } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/index.ts';
import { holeStakeEnd } from './ends.ts';
import type { PlannedPull } from './types.ts';

/** Lengths that differ by less are equal, and the order of the holes decides: a millimetre. */
const SAME_LENGTH = 0.001;

/**
 * Pulls between hole stakes, nail to nail, that prove the staking before anybody digs: from every hole to its
 * neighbours, then across. Each hole gets at least one long pull across: on a ring the opposite hole (or, of an odd ring,
 * one of the two nearest to it), in rows a far corner. A hole without neighbours, such as the pier, gets two across, as
 * square to each other as can be.
 *
 * Pulls that the tape does not reach are left out. No pair is pulled twice. Order: neighbours, then across.
 */
export function checkPulls(holes: readonly SitedHole[], instruments: Instruments): PlannedPull[] {
  const pairs = new Pairs();
  const reach = instruments.tapeLength.m;
  const neighbours = neighbourPairs(holes).filter(
    ([p, q]) => distance(p.site, q.site) <= reach && pairs.add(p, q),
  );
  const crossed = new Set<string>();
  const across = holes.flatMap((hole) => {
    const wanted = hole.neighbours.length === 0 ? 2 : 1;
    if (crossed.has(hole.label) && wanted === 1) return [];
    const far = acrossFrom(hole, holes, reach, crossed, pairs).slice(0, wanted);
    return far.map((other) => {
      pairs.add(hole, other);
      crossed.add(hole.label).add(other.label);
      return [hole, other] as const;
    });
  });
  return [
    ...neighbours.map(([p, q]) => stakePull('neighbour', p, q)),
    ...across.map(([p, q]) => stakePull('across', p, q)),
  ];
}

type Pair = readonly [SitedHole, SitedHole];

/** Which pairs are pulled already, either way round. */
class Pairs {
  readonly #keys = new Set<string>();
  readonly #key = (p: SitedHole, q: SitedHole) => [p.label, q.label].sort().join('\n');

  has(p: SitedHole, q: SitedHole): boolean {
    return this.#keys.has(this.#key(p, q));
  }

  /** False when the pair was there before. */
  add(p: SitedHole, q: SitedHole): boolean {
    if (this.has(p, q)) return false;
    this.#keys.add(this.#key(p, q));
    return true;
  }
}

/** In the order of the holes; on a ring that is once round. */
function neighbourPairs(holes: readonly SitedHole[]): Pair[] {
  const byLabel = new Map(holes.map((hole) => [hole.label, hole]));
  const order = new Map(holes.map(({ label }, i) => [label, i]));
  return holes.flatMap((hole) =>
    hole.neighbours
      .flatMap((label) => byLabel.get(label) ?? [])
      .sort((p, q) => order.get(p.label)! - order.get(q.label)!)
      .map((other) => [hole, other] as const),
  );
}

/** Holes to pull across to, best first: the farthest that the tape reaches, then one as square to it as can be. */
function acrossFrom(
  hole: SitedHole,
  holes: readonly SitedHole[],
  reach: number,
  crossed: ReadonlySet<string>,
  pairs: Pairs,
): SitedHole[] {
  const away = (other: SitedHole) => distance(hole.site, other.site);
  const open = holes.filter((other) => other !== hole && away(other) <= reach && !pairs.has(hole, other));
  const farthest = Math.max(...open.map(away));
  const far = open.filter((other) => away(other) > farthest - SAME_LENGTH);
  const first = far.find(({ label }) => !crossed.has(label)) ?? far[0];
  if (!first) return [];
  const squareness = (other: SitedHole) => {
    const [u, v] = [subtract(first.site, hole.site), subtract(other.site, hole.site)];
    return Math.abs(cross(u, v)) / (length(u) * length(v));
  };
  const rest = open.filter((other) => other !== first);
  const second = rest.reduce<SitedHole | undefined>(
    (best, other) => (best && squareness(best) + 1e-9 >= squareness(other) ? best : other),
    undefined,
  );
  return second ? [first, second] : [first];
}

function stakePull(purpose: PlannedPull['purpose'], p: SitedHole, q: SitedHole): PlannedPull {
  return {
    purpose,
    from: holeStakeEnd(p.label),
    to: holeStakeEnd(q.label),
    expected: distance(p.site, q.site),
  };
}
