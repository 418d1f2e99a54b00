import { distance } from '../../../src/geometry/point.ts';
import type { Body, Entry, PullEnd, Thing } from '../../../src/job/entry-schema.ts';
import { roundedLength } from '../../../src/job/length.ts';
import { assessSituation } from '../../../src/judge/assess.ts';
import { situate } from '../../../src/judge/situation.ts';
import { holesOf, layPlan } from '../../../src/plan/index.ts';
import { checksOf } from '../../../src/screens/stake/checks-of.ts';
import { type Stake, stakeOf } from '../../../src/screens/stake/use-stake.ts';
import { holePulls, workOrder } from '../../../src/stakeout/index.ts';
import { entry, inches, sampleBodies, samplePlan } from '../../job/sample.ts';

/** Eight posts round a pier, all laid out by the book: what the tapes read is what the plan asks for, to the sixteenth. */
const site = { ...sampleBodies.site };
const holes = holesOf(samplePlan);
const laid = layPlan(site, holes);
if (!laid.ok) throw new Error(laid.problem.text);

const laidOut = laid.value.holes;
export const BASELINE = laid.value.baseline;
export const ORDER = workOrder(laid.value.holes.map(({ label, site: at }) => ({ label, at })));
export const PULLS = new Map(
  holePulls(laid.value.holes, BASELINE, samplePlan.instruments).map((pull) => [pull.hole, pull]),
);
/** The pulls that guard every hole, then the rest of the sides and diagonals. */
export const CHECK_SET = checksOf({ plan: samplePlan, laid: laid.value });
export const CHECKS = [...CHECK_SET.guarding, ...CHECK_SET.further];

export const stake = (label: string): Thing => ({ kind: 'stake', label });
export const holeStake = (hole: string): Thing => ({ kind: 'hole-stake', hole });
const nail = (thing: Thing): PullEnd => ({ thing, touch: { at: 'nail' } });

/** A level pull of `m` metres, read to the sixteenth. */
export const pull = (from: Thing, to: Thing, m: number): Body => ({
  kind: 'pull',
  from: nail(from),
  to: nail(to),
  reading: roundedLength(m, 'ft-in-16'),
  hold: { how: 'level' },
});
export const stand = (thing: Thing, event: 'driven' | 'moved' = 'driven'): Body => ({
  kind: 'stand',
  thing,
  event,
});
export const tick = (item: 'utilities' | 'ties', hole?: string): Body =>
  hole === undefined ? { kind: 'check', item, done: true } : { kind: 'check', item, hole, done: true };

export const PLAN: Body[] = [sampleBodies.plan];
export const PLACED: Body[] = [...PLAN, site];
export const MARKED: Body[] = [...PLACED, tick('utilities')];
export const READY: Body[] = [
  ...MARKED,
  stand(stake('A')),
  stand(stake('B')),
  pull(stake('A'), stake('B'), BASELINE),
];

export const fromA = (hole: string, error = 0): Body =>
  pull(stake('A'), holeStake(hole), PULLS.get(hole)!.fromA + error);
export const fromB = (hole: string, error = 0): Body =>
  pull(stake('B'), holeStake(hole), PULLS.get(hole)!.fromB + error);
export const staked = (hole: string): Body[] => [stand(holeStake(hole)), fromA(hole), fromB(hole)];
/** Driven, and pulled to along a slope of unknown rise: the places fit, and nothing is sure of them. */
export const unsure = (hole: string): Body[] => [
  stand(holeStake(hole)),
  ...[fromA(hole), fromB(hole)].map(
    (body): Body => (body.kind === 'pull' ? { ...body, hold: { how: 'slope' } } : body),
  ),
];
export const STAKED: Body[] = [...READY, ...ORDER.flatMap(staked)];
export const checked = (n: number): Body[] =>
  CHECKS.slice(0, n).map(({ from, to, expected }) => pull(from.thing, to.thing, expected));
export const PROVED: Body[] = [...STAKED, ...checked(CHECKS.length)];
export const DIGGABLE: Body[] = [...PROVED, tick('ties')];

export const dug = (hole: string, depth: string, obstruction: 'none' | 'rock' = 'none'): Body => ({
  kind: 'dug',
  hole,
  depth: inches(depth),
  width: inches('1 6'),
  obstruction,
});

const METRES_PER_INCH = 0.0254;

/** Tapes from A and B to the middle of a dug hole, so many inches off its planned centre, towards B. */
export function middleOf(hole: string, off = 0.5): Body[] {
  const { site: at } = laidOut.find(({ label }) => label === hole)!;
  const middle = { x: at.x + off * METRES_PER_INCH, y: at.y };
  return [[stake('A'), { x: 0, y: 0 }] as const, [stake('B'), { x: BASELINE, y: 0 }] as const].map(
    ([from, place]) => ({
      kind: 'pull',
      from: nail(from),
      to: { thing: { kind: 'dug-hole', hole }, touch: { at: 'centre' } },
      reading: roundedLength(distance(place, middle), 'ft-in-16'),
      hold: { how: 'level' },
    }),
  );
}

export const logOf = (bodies: readonly Body[]): Entry[] => bodies.map((body, i) => entry(i + 1, body));

/** What the Stake phase makes of a log. */
export function stakeAfter(bodies: readonly Body[], focused: string | null = null, goOn = false): Stake {
  const situation = situate(logOf(bodies));
  return stakeOf({ situation, assessment: assessSituation(situation) }, focused, { goOn });
}
