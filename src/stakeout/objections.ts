import { cross, distance, dot, type PlanPoint, subtract, type Vec } from '../geometry/point.ts';
import { type Hole, type LaidLine, LEAST_BASELINE } from '../plan/index.ts';
import { formatLength, type Units } from '../units/index.ts';
import { gradeOf } from './crossing.ts';
import { groundObjections } from './ground-objections.ts';

/** A reference stake stands this far outside the edge of every hole, clear of spoil and feet: 4 ft (common practice). */
export const STAKE_CLEARANCE = 1.2;
/** A hole whose edge comes nearer to the line A–B lies on it: two inches, within which no eye is sure of the side. */
export const LINE_CLEARANCE = 0.05;

export interface StakesAsked {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
  readonly holes: readonly Hole[];
  /** Length of the tape, metres. */
  readonly reach: number;
  readonly units: Units;
  /** Lines on the ground, plan frame. */
  readonly lines: readonly LaidLine[];
}

/** What speaks against a choice of A and B, worst trouble first, each a sentence with what to do. */
export function objectionsTo(asked: StakesAsked): string[] {
  const apart = distance(asked.a, asked.b);
  if (apart < LEAST_BASELINE) {
    const words = [apart, LEAST_BASELINE].map((m) => formatLength(m, asked.units));
    return [`A and B are ${words[0]} apart: put them at least ${words[1]} apart.`];
  }
  return [
    ...nearHoles(asked, 'A', asked.a),
    ...nearHoles(asked, 'B', asked.b),
    ...groundObjections(asked),
    ...beyondTape(asked),
    ...onLine(asked),
    ...bothSides(asked),
    ...flatCrossings(asked),
  ];
}

/** Stands in a hole, or where its spoil will lie: one sentence, or none. */
export function nearHoles(
  { holes, units }: Pick<StakesAsked, 'holes' | 'units'>,
  stake: string,
  at: Vec,
): string[] {
  const room = ({ place, holeDiameter }: Hole) => distance(place, at) - holeDiameter / 2;
  const nearest = least(holes, room);
  if (!nearest || room(nearest) >= STAKE_CLEARANCE - SLACK) return [];
  const clear = formatLength(STAKE_CLEARANCE, units);
  if (room(nearest) <= 0)
    return [`${stake} stands in hole ${nearest.label}: move it ${clear} clear of every hole.`];
  const words = formatLength(room(nearest), units);
  return [
    `${stake} stands ${words} from the edge of hole ${nearest.label}, where spoil will lie: move it ${clear} clear.`,
  ];
}

/** A tenth of a millimetre: a stake put exactly at the limit is clear. */
export const SLACK = 1e-4;

function beyondTape({ a, b, holes, reach, units }: StakesAsked): string[] {
  const tape = formatLength(reach, units);
  const baseline = distance(a, b);
  const beyond = ([stake, at]: readonly [string, Vec]) => {
    const far = holes.filter(({ place }) => distance(place, at) > reach);
    const farthest = least(far, ({ place }) => -distance(place, at));
    if (!farthest) return [];
    const words = formatLength(distance(farthest.place, at), units);
    return [
      `Hole ${farthest.label} is ${words} from ${stake}, and the tape is ${tape}: move ${stake} nearer.`,
    ];
  };
  return [
    ...(baseline > reach
      ? [`A and B are ${formatLength(baseline, units)} apart, and the tape is ${tape}: move them nearer.`]
      : []),
    ...[['A', a] as const, ['B', b] as const].flatMap(beyond),
  ];
}

/** Distance of a place to the left of A–B, metres. */
const leftOf = (a: Vec, b: Vec, place: Vec): number =>
  cross(subtract(b, a), subtract(place, a)) / distance(a, b);

function onLine({ a, b, holes }: StakesAsked): string[] {
  const on = holes.filter(
    ({ place, holeDiameter }) => Math.abs(leftOf(a, b, place)) < holeDiameter / 2 + LINE_CLEARANCE - SLACK,
  );
  if (on.length === 0) return [];
  return [
    `${holesWords(on)} the line from A to B: two tapes cannot tell there which side is meant. Move A and B off that line.`,
  ];
}

const holesWords = (holes: readonly Hole[]): string => {
  const [first, second] = holes.map(({ label }) => label);
  if (second === undefined) return `Hole ${first} lies on`;
  return holes.length === 2 ? `Holes ${first} and ${second} lie on` : `${holes.length} holes lie on`;
};

function bothSides({ a, b, holes }: StakesAsked): string[] {
  const sides = new Set(holes.map(({ place }) => Math.sign(leftOf(a, b, place))));
  if (!(sides.has(1) && sides.has(-1))) return [];
  return [
    'Holes lie on both sides of the line from A to B, and the same two tapes fit both: put A and B where all holes lie on one side.',
  ];
}

function flatCrossings({ a, b, holes }: StakesAsked): string[] {
  const sharpness = ({ place }: Hole) => {
    const [u, v] = [subtract(a, place), subtract(b, place)];
    const angle = Math.abs(Math.atan2(cross(u, v), dot(u, v)));
    return Math.min(angle, Math.PI - angle);
  };
  const flattest = least(holes, sharpness);
  if (!flattest || gradeOf(sharpness(flattest)) !== 'poor') return [];
  // Down, for 29.7° is not the 30° that would do.
  const degrees = Math.floor((sharpness(flattest) * 180) / Math.PI);
  return [
    `At hole ${flattest.label} the tapes cross at only ${degrees}°: put A and B so that they cross nearer to square.`,
  ];
}

function least<T>(items: readonly T[], measure: (item: T) => number): T | undefined {
  return items.reduce<T | undefined>(
    (best, item) => (best === undefined || measure(item) < measure(best) ? item : best),
    undefined,
  );
}
