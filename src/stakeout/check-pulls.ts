import { distance, subtract } from '../geometry/point.ts';
import type { Instruments } from '../job/plan-schema.ts';
import type { SitedHole } from '../plan/index.ts';
import { holeStakeEnd } from './ends.ts';
import { bestBy, sineBetween } from './squarest.ts';
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
    const alone = hole.neighbours.length === 0;
    if (crossed.has(hole.label) && !alone) return [];
    const open = holes.filter(
      (other) => other !== hole && distance(hole.site, other.site) <= reach && !pairs.has(hole, other),
    );
    const first = farthest(hole, open, crossed);
    const second = first && alone ? squarest(hole, first, open) : undefined;
    return [first, second].flatMap((other) => {
      if (!other) return [];
      pairs.add(hole, other);
      crossed.add(hole.label).add(other.label);
      return [[hole, other] as const];
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
  readonly #others = new Map<string, Set<string>>();

  has(p: SitedHole, q: SitedHole): boolean {
    return this.#of(p).has(q.label);
  }

  /** False when the pair was there before. */
  add(p: SitedHole, q: SitedHole): boolean {
    if (this.has(p, q)) return false;
    this.#of(p).add(q.label);
    this.#of(q).add(p.label);
    return true;
  }

  #of({ label }: SitedHole): Set<string> {
    const others = this.#others.get(label) ?? new Set<string>();
    this.#others.set(label, others);
    return others;
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

/** The farthest of `open`; of those as far, the first that has no pull across yet. */
function farthest(
  hole: SitedHole,
  open: readonly SitedHole[],
  crossed: ReadonlySet<string>,
): SitedHole | undefined {
  const away = open.map((other) => distance(hole.site, other.site));
  const most = away.reduce((far, next) => Math.max(far, next), 0);
  const far = open.filter((_, i) => away[i]! > most - SAME_LENGTH);
  return far.find(({ label }) => !crossed.has(label)) ?? far[0];
}

/** Of `open`, the one whose pull crosses the pull to `first` nearest to square. */
function squarest(hole: SitedHole, first: SitedHole, open: readonly SitedHole[]): SitedHole | undefined {
  const toward = (other: SitedHole) => subtract(other.site, hole.site);
  return bestBy(
    open.filter((other) => other !== first),
    (other) => sineBetween(toward(first), toward(other)),
  );
}

/** A check pull between the stakes of two holes. */
export function stakePull(purpose: PlannedPull['purpose'], p: SitedHole, q: SitedHole): PlannedPull {
  return {
    purpose,
    from: holeStakeEnd(p.label),
    to: holeStakeEnd(q.label),
    expected: distance(p.site, q.site),
  };
}
