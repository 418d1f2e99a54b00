import { distance, type Vec } from '../geometry/point.ts';
import { sineBetween } from './squarest.ts';
import type { PlaceGrid } from './string-grid.ts';
import { type HoleLine, lineThrough } from './string-lines.ts';

/** Strings that cross flatter than 30° fix a place too loosely to be a way back, as tapes do (common practice). */
const LEAST_CROSSING = Math.PI / 6;
const LEAST_SINE = Math.sin(LEAST_CROSSING);
/** Crossings are compared with this much slack: 30° by design is 30°. */
const SINE_SLACK = 1e-9;

/** Whether two strings cross sharply enough to fix a place. */
export const crossesWell = (one: Vec, other: Vec): boolean =>
  sineBetween(one, other) >= LEAST_SINE - SINE_SLACK;

/** The two of the directions that cross nearest to square, by their places in the list; null of fewer than two. */
export function squarestPair(ways: readonly Vec[]): readonly [number, number] | null {
  let best: { readonly pair: readonly [number, number]; readonly sine: number } | null = null;
  for (let i = 0; i < ways.length; i++)
    for (let j = i + 1; j < ways.length; j++) {
      const sine = sineBetween(ways[i]!, ways[j]!);
      if (!best || sine > best.sine + SINE_SLACK) best = { pair: [i, j], sine };
    }
  return best?.pair ?? null;
}

/** Directions of the strings over each hole, as they are chosen one by one. */
export class Cover {
  readonly #ways: Vec[][];

  constructor(holes: number) {
    this.#ways = Array.from({ length: holes }, () => []);
  }

  put({ along, holes }: HoleLine): void {
    for (const i of holes) this.#ways[i]!.push(along);
  }

  ways(hole: number): readonly Vec[] {
    return this.#ways[hole]!;
  }

  /** Two strings cross over the hole well enough. */
  isCrossed(hole: number): boolean {
    const ways = this.#ways[hole]!;
    const pair = squarestPair(ways);
    return pair !== null && crossesWell(ways[pair[0]]!, ways[pair[1]]!);
  }

  /** What a line would do: 1 for a hole without a string, up to 1 for a crossing, 0 where it crosses too flat or is not needed. */
  worthOf({ along, holes }: HoleLine): number {
    return holes.reduce((sum, i) => sum + this.#worthAt(i, along), 0);
  }

  #worthAt(hole: number, along: Vec): number {
    const ways = this.#ways[hole]!;
    if (ways.length === 0) return 1;
    if (this.isCrossed(hole)) return 0;
    const sine = Math.max(...ways.map((way) => sineBetween(way, along)));
    return sine >= LEAST_SINE - SINE_SLACK ? sine : 0;
  }
}

/** A string must serve two holes well; less, and a string of its own serves one of them better. */
const WORTH_A_STRING = 1.5;

/**
 * Chooses lines through two holes or more for those that are not crossed twice yet, the one that serves most first.
 *
 * @param accept whether a string can be put up there; what is refused is not asked for again
 */
export function chooseShared(grid: PlaceGrid, cover: Cover, accept: (line: HoleLine) => boolean): void {
  const { places } = grid;
  if (places.every((_, i) => cover.isCrossed(i))) return;
  const lines = sharedLines(grid);
  const over = places.map((): number[] => []);
  for (const [k, { holes }] of lines.entries()) for (const hole of holes) over[hole]!.push(k);
  const worth = lines.map((line) => cover.worthOf(line));
  for (;;) {
    const best = indexOfGreatest(worth);
    const line = lines[best];
    if (!line || worth[best]! < WORTH_A_STRING) return;
    if (accept(line)) {
      cover.put(line);
      for (const hole of line.holes)
        for (const k of over[hole]!) if (worth[k]! >= 0) worth[k] = cover.worthOf(lines[k]!);
    }
    worth[best] = DONE_WITH;
  }
}

/** Of a line that was chosen or refused. */
const DONE_WITH = -1;

function indexOfGreatest(worth: readonly number[]): number {
  let best = 0;
  for (let k = 1; k < worth.length; k++) if (worth[k]! > worth[best]! + SINE_SLACK) best = k;
  return best;
}

/** Up to so many holes every pair is looked at; beyond, each hole with its nearest. */
const ALL_PAIRS_TO = 40;
const NEAREST = 6;

/** Lines through pairs of holes, each once, shortest pairs first. */
function sharedLines(grid: PlaceGrid): HoleLine[] {
  const { places } = grid;
  const seen = new Set<string>();
  const pairs = places.flatMap((place, i) =>
    partnersOf(grid, i).map((j) => ({ i, j, away: distance(place, places[j]!) })),
  );
  return pairs
    .sort((p, q) => p.away - q.away)
    .flatMap(({ i, j, away }) => {
      if (away < SAME_PLACE || seen.has(`${Math.min(i, j)} ${Math.max(i, j)}`)) return [];
      const line = lineThrough(grid, i, j);
      for (const p of line.holes) for (const q of line.holes) if (p < q) seen.add(`${p} ${q}`);
      return [line];
    });
}

/** Two holes nearer than this have no line through them: a millimetre. */
const SAME_PLACE = 1e-3;

const partnersOf = (grid: PlaceGrid, i: number): number[] =>
  grid.places.length <= ALL_PAIRS_TO
    ? [...grid.places.keys()].filter((j) => j !== i)
    : grid.nearest(i, NEAREST);
