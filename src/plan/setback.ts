import { add, cross, distance, dot, subtract, type Vec } from '../geometry/point.ts';
import { type LaidLine, leftOf, middleOf } from './ground-lines.ts';
import type { Hole, Section } from './hole.ts';
import { touchOffset } from './touch.ts';

/** Which side of a line the structure is on: 1 for its left, −1 for its right, of a person who walks along it. */
export type Hand = 1 | -1;

/** Opposite the house, or, of a line that runs through the open, where most of the holes are. */
export function structureSide(line: LaidLine, holes: readonly Pick<Hole, 'place'>[]): Hand {
  if (line.kind === 'house' && line.noStakes !== null) return line.noStakes === 'left' ? -1 : 1;
  return leftOf(line, middleOf(holes)) < 0 ? -1 : 1;
}

/** What stands in a hole: where, how large, and which way its front face looks. All in the frame of the lines. */
export interface Standing {
  readonly place: Vec;
  readonly section: Section;
  readonly facing: number;
}

/**
 * Shortest level distance from the outer face of a post or pier to a line, metres; negative for what lies beyond the line,
 * by as much. Of a wall, to the wall itself and its ends, and beyond it is under the house.
 */
export function faceGap(line: LaidLine, hand: Hand, { place, section, facing }: Standing): number {
  if (section.kind === 'pier') return roundGap(line, hand, place, section.diameter / 2);
  const corners = (['front', 'left', 'back', 'right'] as const).map((side) =>
    add(place, touchOffset(section, facing, { at: 'corner', side }, 0) ?? { x: 0, y: 0 }),
  );
  const within = corners.map((corner) => hand * leftOf(line, corner));
  if (line.kind !== 'house') return Math.min(...within);
  const under = within.filter((gap, i) => gap < 0 && besideWall(line, corners[i]!));
  if (under.length > 0) return Math.min(...under);
  // The shortest way between a wall and a straight-sided post begins at a corner of one or the other.
  return Math.min(
    ...corners.map((corner) => toSegment(corner, line.from, line.to)),
    ...corners.flatMap((corner, i) =>
      [line.from, line.to].map((end) => toSegment(end, corner, corners[(i + 1) % corners.length]!)),
    ),
  );
}

/** As `faceGap`, of something round: a pier, or a deck's edge. */
export function roundGap(line: LaidLine, hand: Hand, centre: Vec, radius: number): number {
  const off = hand * leftOf(line, centre);
  if (line.kind !== 'house' || (off < 0 && besideWall(line, centre))) return off - radius;
  return toSegment(centre, line.from, line.to) - radius;
}

/** Whether the foot of a place on the line lies between the ends of the wall. */
function besideWall({ from, to }: LaidLine, at: Vec): boolean {
  const along = dot(subtract(at, from), subtract(to, from)) / distance(from, to);
  return along > 0 && along < distance(from, to);
}

function toSegment(at: Vec, p: Vec, q: Vec): number {
  const run = distance(p, q);
  const along = dot(subtract(at, p), subtract(q, p)) / run;
  if (along <= 0) return distance(at, p);
  if (along >= run) return distance(at, q);
  return Math.abs(cross(subtract(q, p), subtract(at, p))) / run;
}
