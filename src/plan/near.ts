import { distance, scale, type Vec } from '../geometry/point.ts';

/** Of each hole no more than this many of the nearest are looked at, so that a thousand holes stay quick. */
const MOST_CANDIDATES = 8;
/** A hole this close to a circle is on it, and counts as inside, so that a square has no diagonals: a tenth of a millimetre. */
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
    for (const j of nearest(places, i)) {
      if (!clear(places, place, places[j]!)) continue;
      found[i]!.add(j);
      found[j]!.add(i);
    }
  });
  return found.map((set, i) => {
    const away = (j: number) => distance(places[i]!, places[j]!);
    return [...set].sort((j, k) => away(j) - away(k) || j - k);
  });
}

function nearest(places: readonly Vec[], i: number): number[] {
  return places
    .map((place, j) => ({ j, away: distance(place, places[i]!) }))
    .filter(({ j }) => j !== i)
    .sort((p, q) => p.away - q.away || p.j - q.j)
    .slice(0, MOST_CANDIDATES)
    .map(({ j }) => j);
}

function clear(places: readonly Vec[], p: Vec, q: Vec): boolean {
  const middle = scale({ x: p.x + q.x, y: p.y + q.y }, 0.5);
  const radius = distance(p, q) / 2 + ON_CIRCLE;
  return !places.some((other) => other !== p && other !== q && distance(other, middle) < radius);
}
