import { cross, distance, dot, subtract, type Vec } from '../geometry/point.ts';

/** A tape that passes a driven stake nearer than this may lie against it: half a foot, a stake and a hand. */
const IN_THE_WAY = 0.15;

interface Place {
  readonly label: string;
  readonly at: Vec;
}

/**
 * An order of the holes, as labels, for one person with a tape hooked on A and one on B: where a stake would stand in the way of
 * a tape to another hole, that other hole comes first, for nobody is there to lift the tape over it. Otherwise always the
 * nearest hole that is left, from the one farthest off the line A–B.
 *
 * Only holes on the line A–B itself can wait for each other, each in the way of the other's tape: then the farthest goes first.
 *
 * @param holes places in the frame of `a` and `b`, metres
 */
export function aloneOrder(holes: readonly Place[], a: Vec, b: Vec): string[] {
  const waits = waitingFor(holes, a, b);
  const left = new Set(holes.keys());
  const order: string[] = [];
  let at: Vec | null = null;
  while (left.size > 0) {
    const next = nextOf(holes, left, waits, at, [a, b]);
    left.delete(next);
    order.push(holes[next]!.label);
    at = holes[next]!.at;
  }
  return order;
}

/** By hole, which others must be staked before it: those whose tapes would lie on its stake. */
function waitingFor(holes: readonly Place[], a: Vec, b: Vec): number[][] {
  return holes.map((near, i) =>
    [...holes.keys()].filter(
      (j) => j !== i && [a, b].some((stake) => isInTheWay(near.at, stake, holes[j]!.at)),
    ),
  );
}

/** Whether a stake at `near` stands in the way of a tape from `stake` to `far`. */
function isInTheWay(near: Vec, stake: Vec, far: Vec): boolean {
  const run = distance(stake, far);
  if (run === 0) return false;
  const [line, reach] = [subtract(far, stake), subtract(near, stake)];
  const along = dot(line, reach) / run;
  return along > 0 && along < run - IN_THE_WAY && Math.abs(cross(line, reach)) / run < IN_THE_WAY;
}

function nextOf(
  holes: readonly Place[],
  left: ReadonlySet<number>,
  waits: readonly (readonly number[])[],
  at: Vec | null,
  stakes: readonly [Vec, Vec],
): number {
  const far = (i: number) => stakes.reduce((sum, stake) => sum + distance(stake, holes[i]!.at), 0);
  const free = [...left].filter((i) => !waits[i]!.some((j) => left.has(j)));
  const from = free.length > 0 ? free : [...left];
  const worth = (i: number) => (at === null || free.length === 0 ? -far(i) : distance(at, holes[i]!.at));
  return from.reduce((best, i) => (worth(i) < worth(best) - SAME ? i : best));
}

/** Ways that differ by less are one, and the order of the plan decides: a centimetre. */
const SAME = 0.01;
