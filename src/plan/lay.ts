import { bearingOf, distance, type PlanPoint, subtract } from '../geometry/point.ts';
import { type RigidMotion, toSite } from '../geometry/rigid.ts';
import type { EntryOf } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { PlanPlace } from '../job/place-schema.ts';
import { formatLength, ok, type Result, refuse } from '../units/index.ts';
import type { Hole, SitedHole, SitedReference } from './hole.ts';

/**
 * Least distance from A to B, metres. Over half a metre a nail that is 2 mm off turns the whole plan by a quarter of a
 * degree, 45 mm at 10 m: nobody can mean it.
 */
export const LEAST_BASELINE = 0.5;

/** The plan as it lies on the site. */
export interface LaidPlan {
  readonly motion: RigidMotion;
  /** A to B as designed, metres. */
  readonly baseline: number;
  readonly holes: readonly SitedHole[];
  /** Further stakes and nails where they are meant to stand; not A and B, which carry the frame. */
  readonly references: readonly SitedReference[];
}

export const placeOf = ({ right, front }: PlanPlace): PlanPoint => ({ x: right.m, y: front.m });

/**
 * Lays the plan on A and on the direction from A to B, by a rigid motion: turned and shifted, never scaled.
 *
 * Nothing but the designed places of A and B counts. Where A–B is pulled longer or shorter than designed, the holes
 * stay where they are, and only B stands at another station; a plan stretched to fit would hide a bad tape.
 *
 * @param site where A and B stand in the plan frame
 * @param references in the order in which they were logged: of one thing the last counts
 * @returns a sentence when A and B are nearer than `LEAST_BASELINE`
 */
export function layPlan(
  site: { readonly a: PlanPlace; readonly b: PlanPlace },
  holes: readonly Hole[],
  references: readonly EntryOf<'reference'>['body'][] = [],
): Result<LaidPlan> {
  const a = placeOf(site.a);
  const b = placeOf(site.b);
  const baseline = distance(a, b);
  if (!(baseline >= LEAST_BASELINE)) {
    const { units } = site.b.right;
    const words = [baseline, LEAST_BASELINE].map((m) => formatLength(m, units));
    return refuse('A and B', `A and B: they are ${words[0]} apart; they must be ${words[1]} apart or more.`);
  }
  const motion = motionTo(a, b);
  return ok({
    motion,
    baseline,
    holes: holes.map((hole) => sited(hole, motion)),
    references: sitedReferences(references, motion),
  });
}

/** The motion that brings `a` to the site's origin and the direction to `b` to its +x. */
function motionTo(a: PlanPoint, b: PlanPoint): RigidMotion {
  const turn = -bearingOf(subtract(b, a));
  const moved = toSite({ turn, shift: { x: 0, y: 0 } }, a);
  return { turn, shift: { x: -moved.x, y: -moved.y } };
}

function sited({ place, ...hole }: Hole, motion: RigidMotion): SitedHole {
  return { ...hole, facing: hole.facing + motion.turn, site: toSite(motion, place) };
}

function sitedReferences(
  references: readonly EntryOf<'reference'>['body'][],
  motion: RigidMotion,
): SitedReference[] {
  const byKey = new Map(references.map(({ thing, at }) => [thingKey(thing), { thing, at }]));
  for (const label of ['A', 'B']) byKey.delete(thingKey({ kind: 'stake', label }));
  return [...byKey.values()].map(({ thing, at }) => ({ thing, site: toSite(motion, placeOf(at)) }));
}
