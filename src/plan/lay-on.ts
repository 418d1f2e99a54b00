import { bearingOf, distance, type PlanPoint, type SitePoint, subtract } from '../geometry/point.ts';
import { type RigidMotion, toPlan } from '../geometry/rigid.ts';
import { fitRigid } from '../geometry/rigid-fit.ts';
import type { LaidBy } from '../job/entry-schema.ts';
import { type Length, lengthWords } from '../job/length.ts';
import type { Pulled } from '../job/place-schema.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { formatLength, ok, type Result, refuse } from '../units/index.ts';
import { placeFromStakes } from './ground-lines.ts';
import type { Hole } from './hole.ts';
import { LEAST_BASELINE } from './lay.ts';
import { CRITICAL } from './luck.ts';
import { tapeSigma } from './tape.ts';

export type LaidOnStakes = Extract<LaidBy, { on: 'stakes' }>;
export type LaidOnPegs = Extract<LaidBy, { on: 'pegs' }>;

/** Where A and B stand in the plan frame, for a plan that is laid on what is there. Metres. */
export interface LaidOn {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
}

/** Two stakes of holes, and how well the five tapes to them close. */
export interface LaidOnTwo extends LaidOn {
  /** Between the two holes by the plan, and between the two stakes by the five tapes, metres. */
  readonly planned: number;
  readonly found: number;
  /** Within this the tapes' own errors explain the difference. */
  readonly allowed: number;
}

/** From A to B, as the sheets and these refusals call it. */
const BASELINE_FIELD = 'A to B';
/** From the centre to the place before it, nearer than this nothing tells which way is front: a foot. Metres. */
const LEAST_FRONT = 0.3;

/**
 * Two points that are there already, with the centre and the front told from them: where A and B then stand in the plan
 * frame. The plan is turned and shifted to the centre and the front, never scaled.
 */
export function layOnStakes(
  { baseline, centre, front }: LaidOnStakes,
  { tapeLength }: Instruments,
): Result<LaidOn> {
  const long = tooLong(
    [
      ['', baseline],
      ...tapesOf(centre, 'the centre'),
      ...(front.by === 'way' ? [] : tapesOf(front, 'the front')),
    ],
    tapeLength,
  );
  const line = checkBaseline(baseline);
  if (!line.ok) return line;
  if (long) return long;
  const at = placeFromStakes(centre, baseline.m, 'Centre');
  if (!at.ok) return at;
  const bearing = frontBearing(front, at.value, baseline.m);
  if (!bearing.ok) return bearing;
  const motion = { turn: bearing.value - Math.PI / 2, shift: at.value };
  return ok(stakesIn(motion, baseline.m));
}

const WAYS = { left: Math.PI / 2, right: -Math.PI / 2, 'A to B': 0, 'B to A': Math.PI } as const;

/** Bearing that the plan's front looks to, site frame. */
function frontBearing(front: LaidOnStakes['front'], centre: SitePoint, baseline: number): Result<number> {
  if (front.by === 'way') return ok(WAYS[front.way]);
  const at = placeFromStakes(front, baseline, 'Front');
  if (!at.ok) return at;
  const apart = distance(at.value, centre);
  if (apart >= LEAST_FRONT) return ok(bearingOf(subtract(at.value, centre)));
  const { units } = front.by === 'pulls' ? front.fromA : front.offset;
  const words = [apart, LEAST_FRONT].map((m) => formatLength(m, units));
  return refuse(
    'Front',
    `Front: that place is ${words[0]} from the centre; take one straight before it and ${words[1]} away or more, as far off as the posts if you can.`,
  );
}

const stakesIn = (motion: RigidMotion, baseline: number): LaidOn => ({
  a: toPlan(motion, { x: 0, y: 0 }),
  b: toPlan(motion, { x: baseline, y: 0 }),
});

/**
 * Two stakes that stand where two holes are to be, pulled to from A and from B: where A and B then stand in the plan frame.
 *
 * A–B and the four tapes fix both stakes; what they are apart is held against the plan. What the two differ by is shared: the
 * plan is laid midway, turned and shifted, never scaled. What the tapes may differ by is worked out from each tape's own
 * error, by how far it moves the distance found.
 */
export function layOnPegs(
  laid: LaidOnPegs,
  holes: readonly Hole[],
  instruments: Instruments,
): Result<LaidOnTwo> {
  const { baseline, pegs } = laid;
  const [one, other] = pegs.map(({ hole }) => holes.find(({ label }) => label === hole));
  if (!one || !other) {
    const missing = pegs[one ? 1 : 0].hole;
    return refuse('Stake', `Stake ${missing}: the plan has no such hole; choose one that it has.`);
  }
  if (one === other)
    return refuse('Stake', `Stake ${one.label}: both stakes are said to be of this hole; choose two holes.`);
  const line = checkBaseline(baseline);
  if (!line.ok) return line;
  const long = tooLong(
    [['', baseline], ...pegs.flatMap((peg) => tapesOf(peg, `stake ${peg.hole}`))],
    instruments.tapeLength,
  );
  if (long) return long;
  const places = pegs.map((peg) => placeFromStakes(peg, baseline.m, `Stake ${peg.hole}`));
  const [p, q] = places as [Result<SitePoint>, Result<SitePoint>];
  if (!p.ok) return p;
  if (!q.ok) return q;
  const fit = fitRigid([
    { planned: one.place, found: p.value },
    { planned: other.place, found: q.value },
  ]);
  if (!fit)
    return refuse(
      'Stake',
      `Stakes ${one.label} and ${other.label}: by these tapes they stand in one place; pull again.`,
    );
  const allowed = CRITICAL * sigmaOfFound(laid, instruments);
  if (!Number.isFinite(allowed))
    return refuse(
      'Stake',
      `Stakes ${one.label} and ${other.label}: one of them is so near A or B that such tapes do not tell how far apart the two are; take A and B farther from both.`,
    );
  return ok({
    ...stakesIn(fit.motion, baseline.m),
    planned: distance(one.place, other.place),
    found: distance(p.value, q.value),
    allowed,
  });
}

/** The five tapes, in the order that `foundBy` takes them. */
export const fiveTapes = ({ baseline, pegs: [p, q] }: LaidOnPegs): readonly Length[] => [
  baseline,
  p.fromA,
  p.fromB,
  q.fromA,
  q.fromB,
];

/** How far apart the two stakes would be by five other tapes, metres; not a number where these do not meet. */
export function foundBy({ pegs: [p, q] }: LaidOnPegs, [line, pa, pb, qa, qb]: readonly number[]): number {
  const at = (peg: Pulled, a: number, b: number) =>
    placeFromStakes({ ...peg, fromA: { ...peg.fromA, m: a }, fromB: { ...peg.fromB, m: b } }, line!, '');
  const [one, other] = [at(p, pa!, pb!), at(q, qa!, qb!)];
  return one.ok && other.ok ? distance(one.value, other.value) : Number.NaN;
}

/**
 * One sigma of the distance between two stakes by five tapes: each shifted a little, and the squares added. A tape that would not
 * meet the others if it were longer is shifted the other way; Infinity where it meets them neither way.
 */
function sigmaOfFound(laid: LaidOnPegs, instruments: Instruments): number {
  const tapes = fiveTapes(laid).map(({ m }) => m);
  const here = foundBy(laid, tapes);
  const effects = tapes.map((m, i) => {
    const sigma = tapeSigma(m, instruments);
    const [up, down] = [sigma, -sigma].map((by) => Math.abs(foundBy(laid, tapes.with(i, m + by)) - here));
    if (!Number.isNaN(up)) return up!;
    return Number.isNaN(down) ? Number.POSITIVE_INFINITY : down!;
  });
  return Math.hypot(...effects);
}

function checkBaseline(baseline: Length): Result<null> {
  if (baseline.m >= LEAST_BASELINE) return ok(null);
  const least = formatLength(LEAST_BASELINE, baseline.units);
  return refuse(
    BASELINE_FIELD,
    `${BASELINE_FIELD}: they are ${lengthWords(baseline)} apart; take two points that are ${least} apart or more.`,
  );
}

type Tape = readonly [to: string, reading: Length];

const tapesOf = (at: LaidOnStakes['centre'], to: string): Tape[] =>
  at.by === 'pulls'
    ? [
        [`from A to ${to}`, at.fromA],
        [`from B to ${to}`, at.fromB],
      ]
    : [];

/** A reading that the tape cannot have. */
function tooLong(tapes: readonly Tape[], tapeLength: Length) {
  const found = tapes.find(([, reading]) => reading.m > tapeLength.m);
  if (!found) return null;
  const [what, reading] = found;
  const field = what === '' ? BASELINE_FIELD : `Tape ${what}`;
  return refuse(
    field,
    `${field}: ${lengthWords(reading)} is more than the tape, ${lengthWords(tapeLength)}; take points that are nearer, or put the length of a longer tape in the plan.`,
  );
}
