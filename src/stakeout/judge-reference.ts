import { distance, type PlanPoint, subtract } from '../geometry/point.ts';
import { GUARDED_FROM } from '../measure/reliability.ts';
import { formatLength } from '../units/index.ts';
import { wallBetween } from './ground.ts';
import { barredWords, hiddenWords } from './ground-objections.ts';
import { nearHoles, STAKE_CLEARANCE } from './objections.ts';
import { guardFrom, type ReferenceAsked, type Triangle, triangleOf } from './reference-guard.ts';
import { sineBetween } from './squarest.ts';

/** A place for a further stake or nail, and what it gives. */
export interface ReferenceChoice {
  readonly at: PlanPoint;
  /** What level tapes from A and from B will read, metres. */
  readonly fromA: number;
  readonly fromB: number;
  /** Of the triangle A, B and this one, radians. */
  readonly angles: Triangle;
  /** Holes whose two tapes from A and B a tape from here guards. */
  readonly guards: readonly string[];
  /** What speaks against the place, worst trouble first, each a sentence with what to do. */
  readonly objections: readonly string[];
}

/** A flatter corner fixes too little across: as where two tapes cross at under 30° (common practice). */
const FLAT_BELOW = Math.PI / 6;
/** What a place for a further stake or nail gives. @param name `C`, `nail N1` */
export function judgeReference(at: PlanPoint, name: string, asked: ReferenceAsked): ReferenceChoice {
  const { a, b, holes, lines = [], units } = asked;
  const angles = triangleOf(a, b, at);
  const troubles = [
    ...nearHoles(asked, name, at),
    ...nearStakes(asked, name, at),
    ...barredWords(name, at, lines, units),
    ...hiddenWords(name, at, holes, lines),
    ...beyondTape(asked, name, at),
    ...flat(angles, name),
  ];
  return {
    at,
    fromA: distance(a, at),
    fromB: distance(b, at),
    angles,
    guards: holes
      .filter(({ place }) => guardFrom(asked, at, place) >= GUARDED_FROM)
      .map(({ label }) => label),
    // A place that has to be given up anyhow needs no fine points.
    objections: (troubles.length > 0 ? troubles : inLine(asked, name, at)).map(capital),
  };
}

function nearStakes({ a, b, others, units }: ReferenceAsked, name: string, at: PlanPoint): string[] {
  const nearest = Math.min(...[a, b, ...others].map((stake) => distance(stake, at)));
  if (nearest >= STAKE_CLEARANCE) return [];
  const words = [nearest, STAKE_CLEARANCE].map((m) => formatLength(m, units));
  return [
    `${name} is ${words[0]} from another stake: what knocks one knocks the other. Put it ${words[1]} away or more.`,
  ];
}

function beyondTape({ a, b, instruments, units }: ReferenceAsked, name: string, at: PlanPoint): string[] {
  const reach = instruments.tapeLength.m;
  const far = Math.max(distance(a, at), distance(b, at));
  if (far <= reach) return [];
  const from = distance(a, at) === far ? 'A' : 'B';
  return [
    `${name} is ${formatLength(far, units)} from ${from}, and the tape is ${formatLength(reach, units)}: move it nearer.`,
  ];
}

function flat({ a, b, c }: Triangle, name: string): string[] {
  const least = Math.min(a, b, c);
  if (least >= FLAT_BELOW) return [];
  const degrees = Math.floor((least * 180) / Math.PI);
  return [
    `A, B and ${name} lie nearly in one line, with a corner of ${degrees}°: a stake that moves across it would not show. Put ${name} farther to the side.`,
  ];
}

/** Holes that lie nearly in line with the place and A, or with B: two of the three tapes then run together, and nothing guards the third. */
function inLine(asked: ReferenceAsked, name: string, at: PlanPoint): string[] {
  const { a, b, holes, instruments, lines = [] } = asked;
  const bare = holes.filter(
    ({ place }) =>
      guardFrom(asked, at, place) < GUARDED_FROM &&
      distance(place, at) <= instruments.tapeLength.m &&
      !wallBetween(lines, at, place),
  );
  const [first] = bare;
  if (!first) return [];
  const [near, other] =
    sineBetween(subtract(at, first.place), subtract(a, first.place)) <
    sineBetween(subtract(at, first.place), subtract(b, first.place))
      ? ['A', 'B']
      : ['B', 'A'];
  const more = bare.length > 1 ? ` (and ${bare.length - 1} more like it)` : '';
  return [
    `${name} lies nearly in line with ${near} and hole ${first.label}${more}: a misread tape from ${other} would not show there. Put ${name} off that line.`,
  ];
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
