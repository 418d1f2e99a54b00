import { bearingOf, dot, type SitePoint, subtract, unit, type Vec } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { lengthBy, tapeOf } from '../measure/index.ts';
import { refind } from '../stakeout/refind.ts';
import type { Refound, StandingThing } from '../stakeout/refind-types.ts';
import { type RecordedTie, recordedTies } from './recorded-ties.ts';
import { type JobView, pointOf, stakeOf } from './view.ts';

/** A string that was read while the stake stood, and where the planned centre lies along it. */
export interface ReadString {
  readonly from: Thing;
  readonly to: Thing;
  /** From the first thing, metres: what was read, and how far the stake stood from the planned centre. */
  readonly station: number;
  /** Metres off the string, left positive of a walk from the first to the second. */
  readonly offset: number;
}

/** Every way back to the planned centre of a hole, by what still stands. */
export interface WaysBack extends Refound {
  /** Strings that were read to its stake before it was dug. */
  readonly read: readonly ReadString[];
  /** What could be pulled from, for saying that it is gone. */
  readonly standing: readonly Thing[];
}

/**
 * How the planned centre of a hole is found again. Works without A or B as well, for everything that was measured keeps its
 * place.
 *
 * @param gone keys of things that the user says stand no more
 * @returns null before the plan lies on the site
 */
export function waysBack(view: JobView, hole: string, gone: ReadonlySet<string>): WaysBack | null {
  const sited = view.sited.get(hole);
  if (!sited) return null;
  const all = standingThings(view, hole);
  const here = all.filter(({ thing }) => !gone.has(thingKey(thing)));
  const { instruments } = view.plan;
  return {
    ...refind({ target: sited.site, standing: here, instruments }),
    read: recordedTies(view, hole).flatMap((tie) =>
      tie.things.some((thing) => gone.has(thingKey(thing))) ? [] : (readString(view, hole, tie) ?? []),
    ),
    standing: all.map(({ thing }) => thing),
  };
}

/** Stakes, nails, set posts and stakes of holes that are not dug, with known places; not what the hole itself holds. */
function standingThings(view: JobView, hole: string): StandingThing[] {
  const moved = new Set(view.shaken.stakes.map(thingKey));
  return [...view.points.values()].flatMap(({ thing, fix }): StandingThing[] => {
    const own = 'hole' in thing && thing.hole === hole;
    const dug = thing.kind === 'dug-hole' || (thing.kind === 'hole-stake' && view.dugHoles.has(thing.hole));
    if (!fix || own || dug || moved.has(thingKey(thing))) return [];
    const sited = thing.kind === 'post' ? view.sited.get(thing.hole) : undefined;
    const post = sited ? { ...sited, site: fix.place } : null;
    return [{ thing, place: fix.place, covariance: fix.covariance, post }];
  });
}

function readString(
  view: JobView,
  hole: string,
  { things: [from, to], read }: RecordedTie,
): ReadString | null {
  if (!read) return null;
  const { station, offset, side } = read.body;
  const tape = tapeOf(read.body, view.plan.instruments) ?? null;
  const along = directionOf(view, from, to);
  if (station === undefined || !along) return null;
  const square = { x: -along.y, y: along.x };
  const aside = side === 'on' ? 0 : (side === 'left' ? 1 : -1) * (offset ? lengthBy(tape, offset.m) : 0);
  const off = stakeOff(view, hole);
  return { from, to, station: lengthBy(tape, station.m) + dot(along, off), offset: aside + dot(square, off) };
}

/** From where the hole's stake stood to the planned centre; nothing where it was never measured. */
function stakeOff(view: JobView, hole: string): Vec {
  const stood = pointOf(view, stakeOf(hole))?.fix?.place;
  const planned = view.sited.get(hole)?.site;
  return stood && planned ? subtract(planned, stood) : { x: 0, y: 0 };
}

function directionOf(view: JobView, from: Thing, to: Thing): Vec | null {
  const place = (thing: Thing): SitePoint | undefined =>
    pointOf(view, thing)?.fix?.place ??
    view.laid?.references.find((each) => thingKey(each.thing) === thingKey(thing))?.site;
  const [p, q] = [place(from), place(to)];
  return p && q ? unit(bearingOf(subtract(q, p))) : null;
}
