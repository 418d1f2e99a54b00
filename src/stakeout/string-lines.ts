import { cross, distance, dot, scale, subtract, type Vec } from '../geometry/point.ts';
import type { Ring, Rows, Shape } from '../job/plan-schema.ts';
import type { PlaceGrid } from './string-grid.ts';

/** A line that a string may take. */
export interface HoleLine {
  /** A place on it, and its direction, a unit vector. */
  readonly through: Vec;
  readonly along: Vec;
  /** Indices of the holes whose centres lie on it, in order along it. */
  readonly holes: readonly number[];
}

/** A centre as near as this to a line is on it: a tenth of a millimetre, a fifth of the thinnest string. */
const ON_LINE = 1e-4;

/** The line through the centres of two holes, with every other hole that lies on it. */
export function lineThrough(grid: PlaceGrid, i: number, j: number): HoleLine {
  const [p, q] = [grid.places[i]!, grid.places[j]!];
  const along = scale(subtract(q, p), 1 / distance(p, q));
  return lineAlong(grid, p, along);
}

/** The line through a place in a direction, with every hole on it. */
export function lineAlong(grid: PlaceGrid, through: Vec, along: Vec): HoleLine {
  const on = grid
    .beside(through, along, ON_LINE)
    .map((index) => ({ index, off: subtract(grid.places[index]!, through) }))
    .filter(({ off }) => Math.abs(cross(along, off)) < ON_LINE)
    .map(({ index, off }) => ({ index, station: dot(along, off) }));
  return {
    through,
    along,
    holes: on.sort((p, q) => p.station - q.station).map(({ index }) => index),
  };
}

/**
 * The lines that the holes of a shape share by design, few enough that each crosses many. Of free points there are none.
 *
 * @param grid of the holes' places in the order of `holesOf`: a ring's, then its pier's; rows from the front's left end
 */
export function designedLines(shape: Shape, grid: PlaceGrid): HoleLine[] {
  if (shape.kind === 'points') return [];
  const pairs = shape.kind === 'ring' ? ringPairs(shape) : rowPairs(shape);
  return pairs.map(([i, j]) => lineThrough(grid, i, j));
}

type Pair = readonly [number, number];

/**
 * A ring of an even count: its diameters, which run over the pier too, and every other side; the two cross at
 * 90° − 180°/n. A square without a pier: its four sides. An odd ring: see `starPairs`.
 */
function ringPairs({ count, pier }: Ring): Pair[] {
  const all = Array.from({ length: count }, (_, i) => i);
  if (count % 2 === 1) return starPairs(count, pier);
  if (count === 4 && !pier) return all.map((i) => [i, (i + 1) % count]);
  const half = count / 2;
  return [
    ...all.slice(0, half).map((i): Pair => [i, i + half]),
    ...all.slice(0, half).map((i): Pair => [2 * i, 2 * i + 1]),
  ];
}

/**
 * An odd ring shares no line by threes, so no fewer strings than holes will do: the chords from each hole to the k-th after
 * it cross there at 180° − 360° k/n, nearest to square for k = n/4. With a pier one chord gives way to two from the pier, one
 * to each of its ends.
 */
function starPairs(count: number, pier: boolean): Pair[] {
  const step = Math.max(1, Math.round(count / 4));
  const chords = Array.from({ length: count }, (_, i): Pair => [i, (i + step) % count]);
  if (!pier) return chords;
  return [[count, 0], [count, step], ...chords.slice(1)];
}

/** Rows from left to right, then columns from front to back. A single row or column is one line; one hole is none. */
function rowPairs({ columns, rows }: Rows): Pair[] {
  const along = (count: number, other: number, first: (i: number) => number, step: number): Pair[] =>
    count < 2 ? [] : Array.from({ length: other }, (_, i): Pair => [first(i), first(i) + (count - 1) * step]);
  return [...along(columns, rows, (i) => i * columns, 1), ...along(rows, columns, (i) => i, columns)];
}
