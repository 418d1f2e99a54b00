import type { Body } from '../../src/job/entry-schema.ts';
import { type Length, roundedLength } from '../../src/job/length.ts';
import type { PlanPlace } from '../../src/job/place-schema.ts';
import type { Plan, Shape } from '../../src/job/plan-schema.ts';
import { defaultPlan, holesOf, type LaidPlan, layPlan } from '../../src/plan/index.ts';
import { proposeStakes } from '../../src/stakeout/index.ts';
import type { Units } from '../../src/units/index.ts';
import { Draws } from './draws.ts';

/** A drawing with its reference stakes, before anybody has driven one. */
export interface StudyPlan {
  readonly plan: Plan;
  readonly site: Extract<Body, { kind: 'site' }>;
  readonly laid: LaidPlan;
}

/** So many drawings; jobs take one after another. Even ones are rings, odd ones grids. */
const PLANS = 64;
/** One sigma of a pull: 2 mm, and 0.1 mm for each metre. */
const TAPE_ERROR_M = 0.002;
const POSITION_TOLERANCES_M = [0.006, 0.009, 0.012] as const;

/** How many posts a drawing has, ends included. */
interface Sizes {
  readonly ring: readonly [number, number];
  readonly columns: readonly [number, number];
  readonly rows: readonly [number, number];
}

const EVERY_SIZE: Sizes = { ring: [5, 12], columns: [2, 4], rows: [2, 4] };
const SMALL: Sizes = { ring: [4, 6], columns: [2, 3], rows: [2, 2] };

/** Drawings of every size that people build, in inches and in millimetres, with A and B where the tool puts them. */
export const studyPlans = (seed: number): StudyPlan[] => plansOf(seed, EVERY_SIZE);

/** Of four to seven posts, for builds that are followed tap by tap. */
export const smallPlans = (seed: number): StudyPlan[] =>
  plansOf(seed, SMALL).map((job) => ({ ...job, plan: withUsualTape(job.plan) }));

const withUsualTape = (plan: Plan): Plan => ({ ...plan, instruments: defaultPlan(plan.units).instruments });

function plansOf(seed: number, sizes: Sizes): StudyPlan[] {
  const draws = new Draws(seed);
  return Array.from({ length: PLANS }, (_, i) => studyPlan(i, draws, sizes));
}

function studyPlan(i: number, draws: Draws, sizes: Sizes): StudyPlan {
  const units: Units = draws.happens(0.5) ? 'ft-in-16' : 'mm';
  const length = (m: number) => roundedLength(m, units);
  const base = defaultPlan(units);
  const tolerance = length(draws.pick(POSITION_TOLERANCES_M));
  const plan: Plan = {
    ...base,
    name: `Study ${i + 1}`,
    shape: i % 2 === 0 ? ring(draws, length, sizes) : rows(draws, length, sizes),
    rules: { ...base.rules, frostDepth: length(0.9) },
    tolerances: { ...base.tolerances, position: tolerance, spacing: tolerance },
    instruments: { ...base.instruments, tapeError: inMillimetres(TAPE_ERROR_M) },
  };
  const choice = proposeStakes(holesOf(plan), plan.instruments, { units });
  if (!choice) throw new RangeError(`${plan.name} has no place for A and B`);
  const place = (p: { x: number; y: number }): PlanPlace => ({ right: length(p.x), front: length(p.y) });
  const site = { kind: 'site', a: place(choice.a), b: place(choice.b), chosenBy: 'tool' } as const;
  const laid = layPlan(site, holesOf(plan));
  if (!laid.ok) throw new RangeError(laid.problem.text);
  return { plan, site, laid: laid.value };
}

type Rounded = (m: number) => Length;

const ring = (draws: Draws, length: Rounded, sizes: Sizes): Shape => ({
  kind: 'ring',
  count: draws.whole(...sizes.ring),
  sizeBy: 'radius',
  size: length(draws.between(1.8, 5)),
  front: draws.pick(['post', 'flat']),
  pier: draws.happens(0.5),
});

const rows = (draws: Draws, length: Rounded, sizes: Sizes): Shape => ({
  kind: 'rows',
  columns: draws.whole(...sizes.columns),
  rows: draws.whole(...sizes.rows),
  measuredTo: 'centres',
  columnSpacing: length(draws.between(1.5, 3)),
  rowSpacing: length(draws.between(1.5, 3)),
});

const inMillimetres = (m: number): Length => roundedLength(m, 'mm');
