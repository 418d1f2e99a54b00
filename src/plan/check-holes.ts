import { distance } from '../geometry/point.ts';
import type { Plan } from '../job/plan-schema.ts';
import { formatLength } from '../units/index.ts';
import { FIELDS } from './fields.ts';
import type { Hole, Section } from './hole.ts';
import { type PlanProblem, stop, warn } from './plan-problem.ts';

/** Labels of the reference stakes: a hole of that name would be taken for one. */
const STAKE_LABELS = ['A', 'B'];

/** Trouble between the holes, and between a hole and what it holds. */
export function checkHoles(plan: Plan, holes: readonly Hole[]): PlanProblem[] {
  return [
    ...checkLabels(plan),
    ...checkOverrides(plan, holes),
    ...checkRoom(plan, holes),
    ...checkTurn(plan),
    ...checkApart(holes, plan),
  ];
}

function checkLabels({ shape }: Plan): PlanProblem[] {
  if (shape.kind !== 'points') return [];
  if (shape.points.length === 0)
    return [stop(FIELDS.points, 'there are none yet; type one, or paste a list.')];
  const labels = shape.points.map(({ label }) => label);
  const twice = labels.find((label, i) => labels.indexOf(label) < i);
  const stake = labels.find((label) => STAKE_LABELS.includes(label));
  return [
    ...(twice ? [stop(FIELDS.points, `two have the label “${twice}”; give each its own.`)] : []),
    ...(stake
      ? [stop(FIELDS.points, `“${stake}” is the name of a reference stake; give that hole another label.`)]
      : []),
  ];
}

function checkOverrides({ overrides }: Plan, holes: readonly Hole[]): PlanProblem[] {
  if (holes.length === 0) return [];
  const labels = new Set(holes.map(({ label }) => label));
  return Object.keys(overrides)
    .filter((label) => !labels.has(label))
    .map((label) =>
      warn(`Hole ${label}`, 'it has sizes of its own, but the plan has no such hole; they are not used.'),
    );
}

/** A post has to go into its hole, turned as it may be: its diagonal counts. */
function checkRoom({ units }: Plan, holes: readonly Hole[]): PlanProblem[] {
  const tight = holes.filter(({ section, holeDiameter }) => across(section) > holeDiameter);
  const first = tight[0];
  if (!first) return [];
  const need = formatLength(across(first.section), units);
  const has = formatLength(first.holeDiameter, units);
  const what =
    first.section.kind === 'post' ? `its post is ${need} from corner to corner` : `its pier is ${need} wide`;
  return [
    stop(
      FIELDS.holeDiameter,
      `hole ${first.label} is ${has} wide, but ${what}${andMore(tight.length)}; type a wider hole.`,
    ),
  ];
}

function checkTurn({ shape, each }: Plan): PlanProblem[] {
  const out = shape.kind === 'rows' && shape.measuredTo === 'out-to-out';
  if (!out || each.holds.kind !== 'post' || each.holds.turned === 'grid') return [];
  return [
    warn(
      FIELDS.wholeWidth,
      'a size over the outer faces is meant for posts turned to the grid; these are turned to the centre, and their corners will stand out.',
    ),
  ];
}

/** The field that sets holes of a shape apart. */
const SPACED_BY = { ring: FIELDS.size, rows: FIELDS.columnSpacing, points: FIELDS.points } as const;

/** Things that surely stand in each other, whatever their turn, stop the work; holes that run into each other are said. */
function checkApart(holes: readonly Hole[], plan: Plan): PlanProblem[] {
  const pairs = closePairs(holes);
  const clash = pairs.filter(({ p, q, apart }) => apart < (inner(p.section) + inner(q.section)) / 2);
  if (clash[0]) {
    const { p, q, apart } = clash[0];
    const words = formatLength(apart, plan.units);
    const clause = `holes ${p.label} and ${q.label} are ${words} apart, so that what they hold stands in one another${andMore(clash.length)}; move them apart.`;
    return [stop(SPACED_BY[plan.shape.kind], clause)];
  }
  const first = pairs[0];
  if (!first) return [];
  const clause = `holes ${first.p.label} and ${first.q.label} run into each other${andMore(pairs.length)}; dig narrower holes, or move them apart.`;
  return [warn(FIELDS.holeDiameter, clause)];
}

interface Pair {
  readonly p: Hole;
  readonly q: Hole;
  readonly apart: number;
}

/** A thousandth of a millimetre: holes whose edges just meet do not run into each other. */
const TOUCHING = 1e-6;

function closePairs(holes: readonly Hole[]): Pair[] {
  const pairs: Pair[] = [];
  holes.forEach((p, i) => {
    for (let j = i + 1; j < holes.length; j++) {
      const q = holes[j]!;
      const apart = distance(p.place, q.place);
      if (apart < (p.holeDiameter + q.holeDiameter) / 2 - TOUCHING) pairs.push({ p, q, apart });
    }
  });
  return pairs;
}

/** Greatest width of a section, however it is turned. */
const across = (section: Section): number =>
  section.kind === 'post' ? Math.hypot(section.width, section.depth) : section.diameter;
/** Least width of a section, however it is turned. */
const inner = (section: Section): number =>
  section.kind === 'post' ? Math.min(section.width, section.depth) : section.diameter;

const andMore = (count: number): string =>
  count < 2 ? '' : ` (and ${count - 1} more ${count === 2 ? 'is' : 'are'} like it)`;
