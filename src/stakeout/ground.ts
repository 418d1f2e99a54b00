import { distance, dot, scale, subtract, type Vec } from '../geometry/point.ts';
import { type LineInPlace, leftOf } from '../plan/index.ts';

/** A nail in the face of a wall or at its corner is not under the house, nor is a tape along it: an inch. */
const GIVE = 0.025;

/** Metres by which a stake stands where it cannot, across the line that bars it; 0 where it can stand. */
export function barredBy(line: LineInPlace, at: Vec): number {
  if (line.noStakes === null) return 0;
  const depth = beyond(line, at);
  if (line.kind !== 'house') return Math.max(0, depth);
  const { station, run } = alongWall(line, at);
  return Math.max(0, Math.min(depth, station, run - station) - GIVE);
}

/** Metres beyond the line, on the side where no stake can stand; negative on the other. */
const beyond = (line: LineInPlace, at: Vec): number => (line.noStakes === 'left' ? 1 : -1) * leftOf(line, at);

function alongWall({ from, to }: LineInPlace, at: Vec): { station: number; run: number } {
  const run = distance(from, to);
  return { station: dot(subtract(at, from), subtract(to, from)) / run, run };
}

/** A house's wall as its own frame, worked out once for many tapes. */
export interface Wall {
  readonly from: Vec;
  /** Unit vector along it. */
  readonly along: Vec;
  readonly run: number;
  /** 1 where the house is on its left, −1 where on its right. */
  readonly hand: 1 | -1;
}

/** A place by a wall: how deep behind it, and how far within each of its ends; metres, negative outside. */
export interface BehindWall {
  readonly depth: number;
  readonly station: number;
  readonly rest: number;
}

/** Null for a line that is no house. */
export function wallOf({ kind, noStakes, from, to }: LineInPlace): Wall | null {
  if (kind !== 'house' || noStakes === null) return null;
  const run = distance(from, to);
  return { from, along: scale(subtract(to, from), 1 / run), run, hand: noStakes === 'left' ? 1 : -1 };
}

export function behindWall({ from, along, run, hand }: Wall, x: number, y: number): BehindWall {
  const station = along.x * (x - from.x) + along.y * (y - from.y);
  const depth = hand * (along.x * (y - from.y) - along.y * (x - from.x));
  return { depth, station, rest: run - station };
}

/**
 * Metres of a straight tape that would run through the house: what lies behind its wall and between the wall's two ends,
 * however deep the house is. A tape that misses it takes no root and makes nothing new.
 */
export function throughHouse(p: BehindWall, q: BehindWall): number {
  // Clipped against each side of the house in turn (Liang and Barsky's clipping, from memory).
  if (
    (p.depth <= GIVE && q.depth <= GIVE) ||
    (p.station <= GIVE && q.station <= GIVE) ||
    (p.rest <= GIVE && q.rest <= GIVE)
  )
    return 0;
  const enter = Math.max(enters(p.depth, q.depth), enters(p.station, q.station), enters(p.rest, q.rest));
  const leave = Math.min(
    1 - enters(q.depth, p.depth),
    1 - enters(q.station, p.station),
    1 - enters(q.rest, p.rest),
  );
  return leave > enter ? (leave - enter) * Math.hypot(q.depth - p.depth, q.station - p.station) : 0;
}

/** Share of the way after which a tape comes within one side; 0 where it begins there. At most one of its ends is outside. */
const enters = (atP: number, atQ: number): number => (atP < GIVE ? (GIVE - atP) / (atQ - atP) : 0);

/** As `throughHouse`; 0 for other lines, over which a tape goes. */
function runThrough(line: LineInPlace, p: Vec, q: Vec): number {
  const wall = wallOf(line);
  return wall ? throughHouse(behindWall(wall, p.x, p.y), behindWall(wall, q.x, q.y)) : 0;
}

/** Which wall a tape meets between two places, if any does. */
export const wallBetween = (lines: readonly LineInPlace[], p: Vec, q: Vec): LineInPlace | undefined =>
  lines.find((line) => runThrough(line, p, q) > 0);
