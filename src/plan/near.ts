import { distance, scale, type Vec } from '../geometry/point.ts';

/** Of each place no more than this many of the nearest are looked at, so that a thousand places stay quick. */
const MOST_CANDIDATES = 8;
/** As near to a circle as this is on it, and counts as inside, so that a square has no diagonals: 0.1 mm. */
const ON_CIRCLE = 1e-4;

/**
 * Who stands next to whom among free points: two are neighbours when no third lies in or on the circle that has them
 * at the ends of a diameter (Gabriel and Sokal, "A new statistical approach to geographic variation analysis", 1969).
 *
 * @returns for each place the indices of its neighbours, nearest first
 */
export function nearNeighbours(places: readonly Vec[]): number[][] {
  const found = places.map(() => new Set<number>());
  places.forEach((place, i) => {
    const near = nearest(places, i);
    near.forEach((j, rank) => {
      // Whatever lies in the circle is nearer than its far end, so it comes before it in the list.
      const between = near.slice(0, rank).map((k) => places[k]!);
      if (!clear(between, place, places[j]!)) return;
      found[i]!.add(j);
      found[j]!.add(i);
    });
  });
  return found.map((set, i) => {
    const away = (j: number) => distance(places[i]!, places[j]!);
    return [...set].sort((j, k) => away(j) - away(k) || j - k);
  });
}

/** Indices of the places nearest to place `i`, nearest first; of equals the earlier. */
function nearest(places: readonly Vec[], i: number): number[] {
  const best: { readonly j: number; readonly away: number }[] = [];
  places.forEach((place, j) => {
    if (j === i) return;
    const away = distance(place, places[i]!);
    if (best.length === MOST_CANDIDATES && away >= best[MOST_CANDIDATES - 1]!.away) return;
    const at = best.findIndex((other) => away < other.away);
    best.splice(at < 0 ? best.length : at, 0, { j, away });
    best.length = Math.min(best.length, MOST_CANDIDATES);
  });
  return best.map(({ j }) => j);
}

function clear(between: readonly Vec[], p: Vec, q: Vec): boolean {
  const middle = scale({ x: p.x + q.x, y: p.y + q.y }, 0.5);
  const radius = distance(p, q) / 2 + ON_CIRCLE;
  return !between.some((other) => distance(other, middle) < radius);
}
