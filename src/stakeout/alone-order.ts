import { bearingOf, cross, distance, dot, subtract, type Vec } from '../geometry/point.ts';

/** A tape that passes a driven stake nearer than this may lie against it: half a foot, a stake and a hand. */
const IN_THE_WAY = 0.15;

interface Place {
  readonly label: string;
  readonly at: Vec;
}

/**
 * An order of the holes, as labels, for one person with a tape hooked on A and one on B: where a stake would stand in the way of
 * a tape to another hole, that other hole comes first, for nobody is there to lift the tape over it. Otherwise always the
 * nearest hole that is left, from the start that makes the walk shortest.
 *
 * Only holes on the line A–B itself can wait for each other, each in the way of the other's tape: then the nearest goes first.
 *
 * @param holes places in the frame of `a` and `b`, metres
 */
export function aloneOrder(holes: readonly Place[], a: Vec, b: Vec): string[] {
  const waits = waitingFor(holes, a, b);
  const far = (i: number) => distance(a, holes[i]!.at) + distance(b, holes[i]!.at);
  const starts = [...holes.keys()].filter((i) => waits[i]!.length === 0).sort((i, j) => far(j) - far(i));
  const first = starts[0] ?? 0;
  const tried = holes.length > MOST_TRIED || starts.length === 0 ? [first] : starts;
  const walks = tried.map((start) => walkFrom(start, holes, waits));
  const best = walks.reduce((p, q) => (walked(q, holes) < walked(p, holes) - SAME ? q : p));
  return best.flatMap((i) => holes[i]?.label ?? []);
}

/** Above this many holes one start has to do: trying all takes the cube of their number. */
const MOST_TRIED = 60;
/** Ways that differ by less are one, and the order of the plan decides: a centimetre. */
const SAME = 0.01;

const walked = (walk: readonly number[], holes: readonly Place[]): number =>
  walk.slice(1).reduce((sum, i, k) => sum + distance(holes[walk[k]!]!.at, holes[i]!.at), 0);

function walkFrom(start: number, holes: readonly Place[], waits: readonly (readonly number[])[]): number[] {
  const left = new Set(holes.keys());
  const walk: number[] = [];
  for (let next: number | null = left.has(start) ? start : null; next !== null; ) {
    left.delete(next);
    walk.push(next);
    next = nearestFree(next, holes, left, waits);
  }
  return walk;
}

/** The nearest hole that waits for none of those left; where all of them wait, the nearest. Null when none is left. */
function nearestFree(
  at: number,
  holes: readonly Place[],
  left: ReadonlySet<number>,
  waits: readonly (readonly number[])[],
): number | null {
  const free = [...left].filter((i) => !waits[i]!.some((j) => left.has(j)));
  const away = (i: number) => distance(holes[at]!.at, holes[i]!.at);
  const from = free.length > 0 ? free : [...left];
  return from.reduce<number | null>(
    (best, i) => (best === null || away(i) < away(best) - SAME ? i : best),
    null,
  );
}

/**
 * By hole, which others must be staked before it: those whose tapes would lie on its stake. From A, and from B, they are in a
 * narrow range of bearings about its own, so that few of a thousand holes are looked at.
 */
function waitingFor(holes: readonly Place[], a: Vec, b: Vec): number[][] {
  const waits = holes.map((): number[] => []);
  for (const stake of [a, b]) {
    const bearings = holes.map(({ at }) => bearingOf(subtract(at, stake)));
    const turning = [...holes.keys()].sort((i, j) => bearings[i]! - bearings[j]!);
    for (const [i, near] of holes.entries()) {
      const sine = IN_THE_WAY / distance(stake, near.at);
      const within = sine < 1 ? Math.asin(sine) + ROUNDING : Math.PI;
      for (const j of between(turning, bearings, bearings[i]! - within, bearings[i]! + within))
        if (j !== i && isInTheWay(near.at, stake, holes[j]!.at)) waits[i]!.push(j);
    }
  }
  return waits;
}

/** Radians: beyond what a sine and a bearing are rounded by. */
const ROUNDING = 1e-9;

/** Those whose bearings lie in a range, which may run past half a turn. */
function between(
  turning: readonly number[],
  bearings: readonly number[],
  least: number,
  most: number,
): number[] {
  const found: number[] = [];
  for (const turn of [-2 * Math.PI, 0, 2 * Math.PI]) {
    let [low, high] = [0, turning.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (bearings[turning[middle]!]! + turn < least) low = middle + 1;
      else high = middle;
    }
    for (; low < turning.length && bearings[turning[low]!]! + turn <= most; low++) found.push(turning[low]!);
  }
  return found;
}

/** Whether a stake at `near` stands in the way of a tape from `stake` to `far`. */
function isInTheWay(near: Vec, stake: Vec, far: Vec): boolean {
  const run = distance(stake, far);
  if (run === 0) return false;
  const [line, reach] = [subtract(far, stake), subtract(near, stake)];
  const along = dot(line, reach) / run;
  return along > 0 && along < run - IN_THE_WAY && Math.abs(cross(line, reach)) / run < IN_THE_WAY;
}
