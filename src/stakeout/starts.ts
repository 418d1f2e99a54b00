import { distance, type Vec } from '../geometry/point.ts';
import type { Hole } from '../plan/index.ts';
import { STAKE_CLEARANCE } from './objections.ts';
import type { Stakes } from './search.ts';

/** Pairs of places to start a search from, and the ways in which a search may move them. */
export interface StakeFamily {
  readonly starts: readonly Stakes[];
  readonly directions: readonly Stakes[];
  /** First step of the walk, metres. */
  readonly step: number;
}

/** The middle of the holes, and the distance from it beyond which stakes are clear of all of them. */
export interface Surroundings {
  readonly middle: Vec;
  readonly clear: number;
}

export function surroundingsOf(holes: readonly Hole[]): Surroundings {
  const xs = holes.map(({ place }) => place.x);
  const ys = holes.map(({ place }) => place.y);
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  const outer = holes.map(({ place, holeDiameter }) => distance(place, middle) + holeDiameter / 2);
  return { middle, clear: Math.max(...outer) + STAKE_CLEARANCE };
}

const DEGREE = Math.PI / 180;
/** Bearings of A from the middle. */
const BEARINGS = Array.from({ length: 24 }, (_, i) => i * 15 * DEGREE);
/** Angles from A to B at the middle. Tapes cross best near a right angle; a long plan may want more. */
const OPENINGS = [50, 70, 85, 100, 120, 145].map((degrees) => degrees * DEGREE);
/** Distances from the middle, in shares of the least that is clear whichever way the plan reaches. */
const DISTANCES = [0.6, 0.9, 1.2, 1.6, 2.2, 3];
/** First step, as a share of the same. */
const FIRST_STEP = 0.2;

/** A and B anywhere round the plan, the plan on the left of A–B. */
export function freeFamily({ middle, clear }: Surroundings): StakeFamily {
  const at = (bearing: number, away: number) =>
    [middle.x + away * clear * Math.cos(bearing), middle.y + away * clear * Math.sin(bearing)] as const;
  const starts = BEARINGS.flatMap((bearing) =>
    OPENINGS.flatMap((opening) =>
      DISTANCES.flatMap((p) =>
        DISTANCES.map((q): Stakes => [...at(bearing, p), ...at(bearing + opening, q)]),
      ),
    ),
  );
  return { starts, directions: EVERY_WAY, step: FIRST_STEP * clear };
}

const WAYS = [-1, 0, 1];
/** All ways to move four numbers by a step or not at all. */
const EVERY_WAY: readonly Stakes[] = WAYS.flatMap((p) =>
  WAYS.flatMap((q) => WAYS.flatMap((r) => WAYS.map((s): Stakes => [p, q, r, s]))),
).filter((way) => way.some((step) => step !== 0));

/** Directions from A to B along the plan's lines, the plan on the left: A–B behind it, right, before, left of it. */
const LINES = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
] as const;
/** How far A and B lie from square to the middle, in shares as above. */
const STATIONS = [0.3, 0.5, 0.7, 1, 1.4, 2];

/** A–B along a line of the plan: A and B then have one number in common, which is easy to lay out and to check. */
export function alongFamilies({ middle, clear }: Surroundings): StakeFamily[] {
  return LINES.map((line) => {
    const at = (off: number, station: number) =>
      [
        middle.x + clear * (line.x * station + line.y * off),
        middle.y + clear * (line.y * station - line.x * off),
      ] as const;
    const starts = DISTANCES.flatMap((off) =>
      STATIONS.flatMap((p) => STATIONS.map((q): Stakes => [...at(off, -p), ...at(off, q)])),
    );
    return { starts, directions: waysAlong(line), step: FIRST_STEP * clear };
  });
}

/** Moves that keep the line's direction: A and B along it each for itself, and both together away from it. */
const waysAlong = ({ x, y }: Vec): Stakes[] =>
  WAYS.flatMap((off) =>
    WAYS.flatMap((p) =>
      WAYS.map((q): Stakes => [y * off + x * p, -x * off + y * p, y * off + x * q, -x * off + y * q]),
    ),
  ).filter((way) => way.some((step) => step !== 0));
