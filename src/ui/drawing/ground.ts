import { add, distance, dot, scale, subtract, type Vec } from '../../geometry/point.ts';
import type { DrawnLine } from './drawn.ts';
import type { Segment } from './labels.ts';
import { middle } from './pointers.ts';
import type { Spot, View } from './view.ts';

/** A line on the ground as far as it is in view. */
export interface PlacedLine {
  readonly name: string;
  readonly wall: boolean;
  readonly line: Segment;
  /** Short strokes off it, on the side that is barred. */
  readonly strokes: readonly Segment[];
}

/** Between strokes, and their length, pixels. */
const STROKES = { apart: 12, long: 8 };

/** A line that lies farther off than this many times the reach of what is drawn would make that too small. */
const WORTH_SHOWING = 1.6;

/** Places to keep in the drawing, so that lines near by are seen: of each the point that is nearest to the middle. */
export function placesOfLines(lines: readonly DrawnLine[], all: readonly Vec[]): Vec[] {
  if (all.length === 0) return [];
  const centre = middle(all);
  const reach = Math.max(...all.map((place) => distance(place, centre)));
  return lines
    .map((line) => nearest(line, centre))
    .filter((place) => distance(place, centre) <= WORTH_SHOWING * reach);
}

function nearest({ from, to, wall }: DrawnLine, at: Vec): Vec {
  const line = subtract(to, from);
  const share = dot(subtract(at, from), line) / dot(line, line);
  return add(from, scale(line, wall ? Math.min(1, Math.max(0, share)) : share));
}

/** The part of a line that is in view; null where none is. A wall ends at its two points, other lines run on. */
export function placeLine({ name, from, to, wall, barred }: DrawnLine, view: View): PlacedLine | null {
  const [p, q] = [view.spot(from), view.spot(to)];
  const line = clipped(p, q, wall, view);
  if (!line) return null;
  return { name, wall, line, strokes: barred ? strokesOff(line, p, q, barred) : [] };
}

/** Clipped to the drawing (Liang and Barsky, from memory). */
function clipped(p: Spot, q: Spot, ends: boolean, { width, height }: View): Segment | null {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  let [enter, leave] = ends ? [0, 1] : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const edges: readonly (readonly [number, number])[] = [
    [-dx, p.x],
    [dx, width - p.x],
    [-dy, p.y],
    [dy, height - p.y],
  ];
  for (const [along, room] of edges) {
    if (along === 0 && room < 0) return null;
    if (along < 0) enter = Math.max(enter, room / along);
    if (along > 0) leave = Math.min(leave, room / along);
  }
  const at = (share: number): Spot => ({ x: p.x + dx * share, y: p.y + dy * share });
  return enter < leave && Number.isFinite(leave - enter) ? { from: at(enter), to: at(leave) } : null;
}

function strokesOff({ from, to }: Segment, p: Spot, q: Spot, barred: 'left' | 'right'): Segment[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const run = Math.hypot(q.x - p.x, q.y - p.y);
  const u = { x: (q.x - p.x) / run, y: (q.y - p.y) / run };
  // On the drawing y runs downwards, so left of a line is this way.
  const hand = barred === 'left' ? 1 : -1;
  const out = { x: u.y * hand, y: -u.x * hand };
  const slant = { x: (out.x - u.x) / Math.SQRT2, y: (out.y - u.y) / Math.SQRT2 };
  return Array.from({ length: Math.floor(long / STROKES.apart) }, (_, i) => {
    const start = add(from, scale(u, (i + 1) * STROKES.apart));
    return { from: start, to: add(start, scale(slant, STROKES.long)) };
  });
}
