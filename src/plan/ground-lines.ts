import { circlesMeet } from '../geometry/circles.ts';
import { cross, distance, type PlanPoint, type SitePoint, subtract, type Vec } from '../geometry/point.ts';
import { type RigidMotion, toPlan } from '../geometry/rigid.ts';
import { lengthWords } from '../job/length.ts';
import type { FromStakes, GroundLine, GroundPlace } from '../job/place-schema.ts';
import type { Plan } from '../job/plan-schema.ts';
import { formatLength, ok, type Problem, type Result, refuse } from '../units/index.ts';
import type { Hole } from './hole.ts';

/** A line on the ground where it lies, in any frame. Metres. */
export interface LineInPlace {
  readonly name: string;
  /** A house is a wall between its two points, with the house behind it; the others run on beyond them. */
  readonly kind: GroundLine['kind'];
  readonly from: Vec;
  readonly to: Vec;
  /** Least distance of posts and of the deck's edge; null where none is asked for. */
  readonly keep: number | null;
  /** Where no stake can stand, of a person who walks from `from` to `to`; of a wall, where the house is. */
  readonly noStakes: 'left' | 'right' | null;
}

/** The same in the plan frame. */
export interface LaidLine extends LineInPlace {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** Where A and B stand, for places that are told from them. */
export interface StandingStakes {
  readonly motion: RigidMotion;
  /** A to B, as pulled where it was pulled, metres. */
  readonly baseline: number;
}

export interface GroundLines {
  readonly lines: readonly LaidLine[];
  /** Names of lines that are told from A and B, while these have no place. */
  readonly waiting: readonly string[];
  readonly problems: readonly Problem[];
}

/** Nearer to each other than this, two points tell no direction: a foot. Metres. */
const LEAST_LINE = 0.3;

/**
 * The plan's lines on the ground, in the plan frame. Those that are told from A and B go where A and B are.
 *
 * @param stakes null until A and B are placed
 */
export function groundLines(plan: Plan, holes: readonly Hole[], stakes: StandingStakes | null): GroundLines {
  const lines: LaidLine[] = [];
  const waiting: string[] = [];
  const problems: Problem[] = [];
  for (const line of plan.lines ?? []) {
    if (!stakes && (line.from.by !== 'plan' || line.to.by !== 'plan')) {
      waiting.push(line.name);
      continue;
    }
    const laid = layLine(line, holes, stakes);
    if (laid.ok) lines.push(laid.value);
    else problems.push(laid.problem);
  }
  return { lines, waiting, problems };
}

/** One line, where it lies. Refuses points that no two tapes reach, and two points in one place. */
export function layLine(
  { name, kind, from, to, keep, noStakes }: GroundLine,
  holes: readonly Hole[],
  stakes: StandingStakes | null,
): Result<LaidLine> {
  const ends = [
    groundPlace(from, `${name}, first point`, stakes),
    groundPlace(to, `${name}, second point`, stakes),
  ];
  const [p, q] = ends as [Result<PlanPoint>, Result<PlanPoint>];
  if (!p.ok) return p;
  if (!q.ok) return q;
  const apart = distance(p.value, q.value);
  if (apart < LEAST_LINE) {
    const { units } = from.by === 'plan' ? from.right : from.by === 'pulls' ? from.fromA : from.station;
    const words = [apart, LEAST_LINE].map((m) => formatLength(m, units));
    return refuse(
      name,
      `${name}: its two points are ${words[0]} apart; take two that are ${words[1]} apart or more.`,
    );
  }
  const line = { name, kind, from: p.value, to: q.value, keep: keep?.m ?? null };
  return ok({ ...line, noStakes: noStakes ?? (kind === 'house' ? awayFrom(line, holes) : null) });
}

function groundPlace(at: GroundPlace, field: string, stakes: StandingStakes | null): Result<PlanPoint> {
  if (at.by === 'plan') return ok({ x: at.right.m, y: at.front.m });
  if (!stakes)
    return refuse(field, `${field}: it is told from A and B, and these have no place yet; place them first.`);
  const site = placeFromStakes(at, stakes.baseline, field);
  return site.ok ? ok(toPlan(stakes.motion, site.value)) : site;
}

/** The two tapes of a point just meet: what is missing is less than a tape shows, 3 mm. */
const JUST_MEETS = 0.003;

/**
 * A place that is told from A and B, site frame: by two level tapes (`circlesMeet`), or by station and offset.
 *
 * @param baseline A to B, metres
 * @returns a sentence where the two tapes do not meet: A–B, and each of them, must be shorter than the other two together
 */
export function placeFromStakes(at: FromStakes, baseline: number, field: string): Result<SitePoint> {
  const hand = at.side === 'left' ? 1 : -1;
  if (at.by === 'offset') return ok({ x: at.station.m, y: hand * at.offset.m });
  const [a, b] = [at.fromA.m, at.fromB.m];
  const meeting = circlesMeet({ x: 0, y: 0 }, a, { x: baseline, y: 0 }, b);
  const missing = Math.max(Math.abs(a - b) - baseline, baseline - a - b);
  if (meeting && (meeting.meets || missing <= JUST_MEETS)) return ok(meeting[at.side]);
  const words = {
    a: lengthWords(at.fromA),
    b: lengthWords(at.fromB),
    line: formatLength(baseline, at.fromA.units),
  };
  if (baseline - a - b > 0)
    return refuse(
      field,
      `${field}: ${words.a} from A and ${words.b} from B do not meet, for A to B is ${words.line}; pull both again, and A to B.`,
    );
  const [longer, shorter] = a > b ? ['A', 'B'] : ['B', 'A'];
  return refuse(
    field,
    `${field}: ${words.a} from A and ${words.b} from B differ by more than A to B, ${words.line}, so that no such place is there; pull again from ${longer} and from ${shorter}, and A to B.`,
  );
}

/** The side of a line on which the holes are not. */
function awayFrom({ from, to }: Pick<LaidLine, 'from' | 'to'>, holes: readonly Hole[]): 'left' | 'right' {
  return leftOf({ from, to }, middleOf(holes)) > 0 ? 'right' : 'left';
}

/** Distance of a place to the left of a line, of a person who walks from its first point to its second; metres. */
export const leftOf = ({ from, to }: Pick<LineInPlace, 'from' | 'to'>, at: Vec): number =>
  cross(subtract(to, from), subtract(at, from)) / distance(from, to);

/** Mean of the holes' places. */
export function middleOf(holes: readonly Pick<Hole, 'place'>[]): Vec {
  const sum = holes.reduce(({ x, y }, { place }) => ({ x: x + place.x, y: y + place.y }), { x: 0, y: 0 });
  const count = Math.max(holes.length, 1);
  return { x: sum.x / count, y: sum.y / count };
}
