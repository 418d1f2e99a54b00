import { distance, dot, subtract, type Vec } from '../geometry/point.ts';
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

/**
 * Metres of a straight tape that would run through the house: what lies behind its wall and between the wall's two ends,
 * however deep the house is. 0 for other lines, over which a tape goes.
 */
export function runThrough(line: LineInPlace, p: Vec, q: Vec): number {
  if (line.kind !== 'house' || line.noStakes === null) return 0;
  const [one, other] = [alongWall(line, p), alongWall(line, q)];
  // Clipped against each side of the house in turn (Liang and Barsky's clipping, from memory).
  let [enter, leave] = [0, 1];
  const sides: readonly (readonly [number, number])[] = [
    [beyond(line, p), beyond(line, q)],
    [one.station, other.station],
    [one.run - one.station, other.run - other.station],
  ];
  for (const [atP, atQ] of sides) {
    const [inP, inQ] = [atP - GIVE, atQ - GIVE];
    if (inP <= 0 && inQ <= 0) return 0;
    if (inP < 0) enter = Math.max(enter, inP / (inP - inQ));
    if (inQ < 0) leave = Math.min(leave, inP / (inP - inQ));
  }
  return Math.max(0, leave - enter) * distance(p, q);
}

/** Which wall a tape meets between two places, if any does. */
export const wallBetween = (lines: readonly LineInPlace[], p: Vec, q: Vec): LineInPlace | undefined =>
  lines.find((line) => runThrough(line, p, q) > 0);
