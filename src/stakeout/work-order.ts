import { distance, type Vec } from '../geometry/point.ts';

/** A walk that is shorter by less is not worth another order: a centimetre. */
const WORTH_IT = 0.01;
/** Above this many holes the nearest-next order is kept as it is: straightening takes the square of their number. */
const MOST_TO_STRAIGHTEN = 120;

/**
 * An order of the holes, as labels, that keeps walking small: on a ring once round from the first, in rows to and fro.
 *
 * From the first hole always to the nearest one left, the earlier where two are as near; then stretches of the walk are
 * turned round as long as that shortens it (2-opt; Croes, "A method for solving traveling-salesman problems", 1958). The
 * plan's own order is mended in the same way, and kept where it comes out shorter.
 *
 * @param holes places in any one frame, metres
 */
export function workOrder(holes: readonly { readonly label: string; readonly at: Vec }[]): string[] {
  const places = holes.map(({ at }) => at);
  const walks = [nearestNext(places), [...places.keys()]].map((walk) =>
    walk.length <= MOST_TO_STRAIGHTEN ? straighten(walk, places) : walk,
  );
  const best = walks.reduce((p, q) => (lengthOf(q, places) < lengthOf(p, places) - WORTH_IT ? q : p));
  return best.map((i) => holes[i]!.label);
}

const lengthOf = (walk: readonly number[], places: readonly Vec[]): number =>
  walk.slice(1).reduce((sum, i, k) => sum + distance(places[walk[k]!]!, places[i]!), 0);

function nearestNext(places: readonly Vec[]): number[] {
  const left = new Set(places.keys());
  const walk: number[] = [];
  let at = 0;
  while (left.size > 0) {
    left.delete(at);
    walk.push(at);
    let next = at;
    let near = Number.POSITIVE_INFINITY;
    for (const i of left) {
      const away = distance(places[at]!, places[i]!);
      if (away < near - WORTH_IT) [next, near] = [i, away];
    }
    at = next;
  }
  return walk;
}

/** Turns stretches round while that shortens the walk. The first place stays first; the last may change. */
function straighten(walk: readonly number[], places: readonly Vec[]): number[] {
  let best = [...walk];
  for (let turned = true; turned; ) {
    turned = false;
    for (let i = 1; i < best.length - 1; i++) {
      for (let j = i + 1; j < best.length; j++) {
        if (gain(best, i, j, places) <= WORTH_IT) continue;
        best = [...best.slice(0, i), ...best.slice(i, j + 1).reverse(), ...best.slice(j + 1)];
        turned = true;
      }
    }
  }
  return best;
}

/** How much shorter the walk gets when its stretch from `i` to `j` is turned round. */
function gain(walk: readonly number[], i: number, j: number, places: readonly Vec[]): number {
  const at = (k: number) => places[walk[k]!]!;
  const before = distance(at(i - 1), at(i)) + (j + 1 < walk.length ? distance(at(j), at(j + 1)) : 0);
  const after = distance(at(i - 1), at(j)) + (j + 1 < walk.length ? distance(at(i), at(j + 1)) : 0);
  return before - after;
}
