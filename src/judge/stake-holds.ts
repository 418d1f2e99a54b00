import { cross, distance, dot, type SitePoint, subtract } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import type { Measured } from '../measure/types.ts';
import type { JobView } from './view.ts';

/** Something that stands, and where. */
export interface Held {
  readonly thing: Thing;
  readonly place: SitePoint;
}

/** Nearer than this a tape says little of a direction, metres. */
const NEAREST = 0.5;
/** What a stake's nail is worth over a stake in a hole that will be dug, or a post's face: sine of 12°. */
const NAIL_IS_BETTER = 0.2;

/** What can be held a tape from to a place: what stands fixed, in reach, with its nail not dug away. */
export function inReach(view: JobView, measured: Measured, at: SitePoint, but: readonly Thing[]): Held[] {
  const reach = view.plan.instruments.tapeLength.m;
  const left = new Set(but.map(thingKey));
  return measured.points.flatMap(({ thing, fix, current }) => {
    if (!current || !fix || left.has(thingKey(thing))) return [];
    if (thing.kind === 'dug-hole' || (thing.kind === 'hole-stake' && view.dugHoles.has(thing.hole)))
      return [];
    const away = distance(fix.place, at);
    return away >= NEAREST && away <= reach ? [{ thing, place: fix.place }] : [];
  });
}

/** The two things whose tapes cross nearest to square at a place; fewer where there are no two that cross. */
export function holdFrom(view: JobView, measured: Measured, stake: Thing, at: SitePoint): Held[] {
  return squarestPair(inReach(view, measured, at, [stake]), at);
}

export function squarestPair(held: readonly Held[], at: SitePoint): Held[] {
  let best: { pair: Held[]; worth: number } = { pair: [], worth: 0 };
  held.forEach((one, i) => {
    for (const other of held.slice(i + 1)) {
      const worth = crossingSine(at, one.place, other.place) * liking(one) * liking(other);
      if (worth > best.worth) best = { pair: [one, other], worth };
    }
  });
  return best.pair;
}

const liking = ({ thing }: Held): number =>
  thing.kind === 'stake' || thing.kind === 'nail' ? 1 : 1 - NAIL_IS_BETTER;

/** Sine of the angle between the tapes from two places, 0 in line to 1 square. */
export function crossingSine(at: SitePoint, one: SitePoint, other: SitePoint): number {
  const [u, v] = [subtract(one, at), subtract(other, at)];
  return Math.abs(Math.sin(Math.atan2(cross(u, v), dot(u, v))));
}
