import { bearingOf, length, type PlanPoint } from '../geometry/point.ts';
import type { Holds, HoleSpec, Plan } from '../job/plan-schema.ts';
import type { Hole, Section } from './hole.ts';
import { nearNeighbours } from './near.ts';
import { FRONT, ringPlaces } from './ring.ts';
import { rowNeighbours, rowPlaces } from './rows.ts';

/** Label of the pier in the middle of a ring. */
export const PIER_LABEL = 'P';

/**
 * The holes of a plan, in the order of their labels: rings run clockwise from the front, then the pier `P`; rows from
 * the front row's left end; points as they were typed. What single holes have instead is already put in.
 *
 * Places are those of the drawing, in the plan frame, metres. Any plan that fits the schema gives holes; whether they
 * make sense together is for `checkPlan`.
 */
export function holesOf(plan: Plan): Hole[] {
  return [...outlines(plan), ...pierOutline(plan)].map((outline) => {
    const spec = specFor(plan, outline);
    return {
      label: outline.label,
      place: outline.place,
      section: sectionOf(spec.holds),
      facing: facingOf(spec.holds, outline.place),
      top: spec.top.m,
      holeDiameter: spec.holeDiameter.m,
      neighbours: outline.neighbours,
    };
  });
}

/** A hole before what it has is known. */
interface Outline {
  readonly label: string;
  readonly place: PlanPoint;
  readonly neighbours: readonly string[];
  readonly spec: HoleSpec;
}

function outlines(plan: Plan): Outline[] {
  const { shape, each } = plan;
  const section = sectionOf(each.holds);
  switch (shape.kind) {
    case 'ring': {
      const beside = (i: number) => [(i + shape.count - 1) % shape.count, (i + 1) % shape.count];
      return numbered(ringPlaces(shape, section), beside, each);
    }
    case 'rows':
      return numbered(rowPlaces(shape, section), (i) => rowNeighbours(shape, i), each);
    case 'points': {
      const places = shape.points.map(({ right, front }) => ({ x: right.m, y: front.m }));
      const labels = shape.points.map(({ label }) => label);
      const near = nearNeighbours(places);
      return places.map((place, i) => ({
        label: labels[i]!,
        place,
        neighbours: near[i]!.map((j) => labels[j]!),
        spec: each,
      }));
    }
  }
}

function numbered(
  places: readonly PlanPoint[],
  beside: (i: number) => readonly number[],
  spec: HoleSpec,
): Outline[] {
  const label = (i: number) => String(i + 1);
  return places.map((place, i) => ({ label: label(i), place, neighbours: beside(i).map(label), spec }));
}

function pierOutline({ shape, pier }: Plan): Outline[] {
  if (shape.kind !== 'ring' || !shape.pier) return [];
  return [{ label: PIER_LABEL, place: { x: 0, y: 0 }, neighbours: [], spec: pier }];
}

function specFor({ overrides }: Plan, { label, spec }: Outline): HoleSpec {
  const own = Object.hasOwn(overrides, label) ? overrides[label] : undefined;
  return {
    holds: own?.holds ?? spec.holds,
    top: own?.top ?? spec.top,
    holeDiameter: own?.holeDiameter ?? spec.holeDiameter,
  };
}

export function sectionOf(holds: Holds): Section {
  return holds.kind === 'post'
    ? { kind: 'post', width: holds.width.m, depth: holds.depth.m }
    : { kind: 'pier', diameter: holds.diameter.m };
}

/** Nearer to the plan's centre than this, "away from the centre" says nothing: a tenth of a millimetre. */
const AT_CENTRE = 1e-4;

/** Away from the centre or along +y; at the very centre, and for rounds, along +y. */
function facingOf(holds: Holds, place: PlanPoint): number {
  const away = holds.kind === 'post' && holds.turned === 'centre' && length(place) > AT_CENTRE;
  return away ? bearingOf(place) : FRONT;
}
