import { roundedLength } from '../../job/length.ts';
import type {
  HoleOverride,
  HoleSpec,
  Instruments,
  Plan,
  Points,
  Ring,
  Rows,
  Rules,
  Shape,
  TapeSpec,
  Tolerances,
} from '../../job/plan-schema.ts';
import { defaultPlan, holesOf, PIER_LABEL } from '../../plan/index.ts';

/**
 * Changes to a plan, as pure functions from plan to plan. None of them converts or rounds a length that was typed; a
 * change that does not apply gives the plan back as it is.
 */

export type Point = Points['points'][number];

export const withName = (plan: Plan, name: string): Plan => ({ ...plan, name });

/** Lengths keep the text and the units they were typed in; only how the tool writes them changes. */
export const withUnits = (plan: Plan, units: Plan['units']): Plan => ({ ...plan, units });

/**
 * Another kind of shape. Points begin as the holes that were there, to the units' step, so that a few can be moved; the
 * other kinds begin afresh. Holes of another shape are other holes, so what single ones had is dropped with them.
 */
export function withShapeKind(plan: Plan, kind: Shape['kind']): Plan {
  if (plan.shape.kind === kind) return plan;
  if (kind === 'points') return asPoints(plan);
  const { size } = freshRing(plan);
  const shape: Shape =
    kind === 'ring'
      ? freshRing(plan)
      : { kind, columns: 3, rows: 2, measuredTo: 'centres', columnSpacing: size, rowSpacing: size };
  return turned({ ...plan, shape, overrides: {} }, kind === 'ring' ? 'centre' : 'grid');
}

function freshRing({ units }: Plan): Ring {
  const { shape } = defaultPlan(units);
  if (shape.kind !== 'ring') throw new TypeError('The default plan is not a ring');
  return shape;
}

/** Posts of a ring look away from its centre, all others along the grid, until someone says otherwise. */
function turned(plan: Plan, way: 'centre' | 'grid'): Plan {
  const { holds } = plan.each;
  return holds.kind === 'post' ? withEach(plan, { holds: { ...holds, turned: way } }) : plan;
}

function asPoints(plan: Plan): Plan {
  const points = holesOf(plan).map(({ label, place }) => ({
    label,
    right: roundedLength(place.x, plan.units),
    front: roundedLength(place.y, plan.units),
  }));
  const hadPier = plan.shape.kind === 'ring' && plan.shape.pier;
  const overrides = hadPier
    ? { ...plan.overrides, [PIER_LABEL]: { ...plan.pier, ...ownOf(plan, PIER_LABEL) } }
    : plan.overrides;
  return { ...plan, shape: { kind: 'points', points }, overrides };
}

export function withRing(plan: Plan, part: Partial<Omit<Ring, 'kind'>>): Plan {
  return plan.shape.kind === 'ring' ? { ...plan, shape: { ...plan.shape, ...part } } : plan;
}

export function withRows(plan: Plan, part: Partial<Omit<Rows, 'kind'>>): Plan {
  return plan.shape.kind === 'rows' ? { ...plan, shape: { ...plan.shape, ...part } } : plan;
}

/** All points anew, as a list brings them. What a hole had of its own stays with its label. */
export function withPoints(plan: Plan, shape: Points): Plan {
  const labels = new Set(shape.points.map(({ label }) => label));
  const kept = Object.entries(plan.overrides).filter(([label]) => labels.has(label));
  return { ...plan, shape, overrides: Object.fromEntries(kept) };
}

/**
 * Adds a point, or puts it in the place of the one that was called `before`; what that hole had of its own goes with it.
 */
export function withPoint(plan: Plan, before: string | null, point: Point): Plan {
  if (plan.shape.kind !== 'points') return plan;
  const { points } = plan.shape;
  if (before === null) return { ...plan, shape: { ...plan.shape, points: [...points, point] } };
  const changed = points.map((old) => (old.label === before ? point : old));
  const own = ownOf(plan, before);
  const rest = withoutOwn(plan, before);
  const overrides = own ? { ...rest.overrides, [point.label]: own } : rest.overrides;
  return { ...plan, shape: { ...plan.shape, points: changed }, overrides };
}

export function withoutPoint(plan: Plan, label: string): Plan {
  if (plan.shape.kind !== 'points') return plan;
  const points = plan.shape.points.filter((point) => point.label !== label);
  return { ...withoutOwn(plan, label), shape: { ...plan.shape, points } };
}

/** The next number that no point is called by. */
export function nextLabel(points: readonly Point[]): string {
  const taken = new Set(points.map(({ label }) => label));
  let n = points.length + 1;
  while (taken.has(String(n))) n += 1;
  return String(n);
}

export const withEach = (plan: Plan, part: Partial<HoleSpec>): Plan => ({
  ...plan,
  each: { ...plan.each, ...part },
});

/** The pier in the middle of a ring. */
export const withPier = (plan: Plan, part: Partial<HoleSpec>): Plan => ({
  ...plan,
  pier: { ...plan.pier, ...part },
});

/** What one hole has instead of what all have. The pier of a ring has a spec of its own, and that is changed. */
export function withOwn(plan: Plan, hole: string, part: Partial<HoleSpec>): Plan {
  if (isMiddlePier(plan, hole)) return withPier(plan, part);
  return { ...plan, overrides: { ...plan.overrides, [hole]: { ...ownOf(plan, hole), ...part } } };
}

export function withoutOwn(plan: Plan, hole: string): Plan {
  const kept = Object.entries(plan.overrides).filter(([label]) => label !== hole);
  return { ...plan, overrides: Object.fromEntries(kept) };
}

export const withRules = (plan: Plan, part: Partial<Rules>): Plan => ({
  ...plan,
  rules: { ...plan.rules, ...part },
});

export const withTolerances = (plan: Plan, part: Partial<Tolerances>): Plan => ({
  ...plan,
  tolerances: { ...plan.tolerances, ...part },
});

export const withInstruments = (plan: Plan, part: Partial<Instruments>): Plan => ({
  ...plan,
  instruments: { ...plan.instruments, ...part },
});

/** Tops are then held to the level's own tolerance. */
export function withoutTops(plan: Plan): Plan {
  const { tops: _, ...tolerances } = plan.tolerances;
  return { ...plan, tolerances };
}

/** The usual cover then counts. */
export function withoutCover(plan: Plan): Plan {
  const { cover: _, ...rules } = plan.rules;
  return { ...plan, rules };
}

/** Beams then lie on the tops. */
export function withoutSeat(plan: Plan): Plan {
  const { seat: _, ...deck } = plan.deck ?? {};
  const { deck: __, ...rest } = plan;
  return Object.keys(deck).length === 0 ? rest : { ...rest, deck };
}

/** How long concrete can be pushed, or when it is set, is then not known. */
export function withoutTime(plan: Plan, which: 'workingTime' | 'setTime'): Plan {
  const { [which]: _, ...supplies } = plan.supplies ?? {};
  const { supplies: __, ...rest } = plan;
  return Object.keys(supplies).length === 0 ? rest : { ...rest, supplies };
}

export function withoutRodLength(plan: Plan): Plan {
  const { rodLength: _, ...instruments } = plan.instruments;
  return { ...plan, instruments };
}

/** Adds a tape, or puts it in the place of the one that was called `before`. */
export function withTape(plan: Plan, before: string | null, tape: TapeSpec): Plan {
  const tapes = plan.instruments.tapes ?? [];
  if (before === null) return withInstruments(plan, { tapes: [...tapes, tape] });
  return withInstruments(plan, { tapes: tapes.map((old) => (old.label === before ? tape : old)) });
}

export function withoutTape(plan: Plan, label: string): Plan {
  const tapes = (plan.instruments.tapes ?? []).filter((tape) => tape.label !== label);
  const { tapes: _, ...others } = plan.instruments;
  return { ...plan, instruments: tapes.length === 0 ? others : { ...others, tapes } };
}

export const isMiddlePier = ({ shape }: Plan, hole: string): boolean =>
  hole === PIER_LABEL && shape.kind === 'ring' && shape.pier;

/** What this hole has instead of what all have; null when it has nothing of its own. */
export const ownOf = (plan: Plan, hole: string): HoleOverride | null =>
  (Object.hasOwn(plan.overrides, hole) ? plan.overrides[hole] : null) ?? null;

/** What this hole has, its own put in. */
export function specOf(plan: Plan, hole: string): HoleSpec {
  const common = isMiddlePier(plan, hole) ? plan.pier : plan.each;
  const own = ownOf(plan, hole);
  return {
    holds: own?.holds ?? common.holds,
    top: own?.top ?? common.top,
    holeDiameter: own?.holeDiameter ?? common.holeDiameter,
  };
}

/** Whether two plans are word for word the same, texts as typed included. */
export const samePlan = (one: Plan, other: Plan): boolean => JSON.stringify(one) === JSON.stringify(other);
