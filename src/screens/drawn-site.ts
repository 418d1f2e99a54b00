import type { PlanPoint, SitePoint, Vec } from '../geometry/point.ts';
import { toSite } from '../geometry/rigid.ts';
import type { PullEnd, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { thingName } from '../job/words.ts';
import { groundLinesOf, type Situation } from '../judge/situation.ts';
import type { HoleAssessment } from '../judge/types.ts';
import type { LaidLine } from '../plan/index.ts';
import type { Drawn, DrawnHole, DrawnLine, DrawnPull, HoleLook, HoleState } from '../ui/index.ts';

/** How far a hole has come. */
export function stateOf({ staked, dug, set, poured }: HoleAssessment): HoleState {
  if (poured) return 'poured';
  if (set.done) return 'set';
  if (dug.at !== null) return 'dug';
  return staked.driven ? 'staked' : 'planned';
}

export interface DrawnSiteOptions {
  /** The hole that is worked on now. */
  readonly live?: string | null;
  readonly lookOf?: (hole: HoleAssessment) => HoleLook;
  readonly pulls?: readonly DrawnPull[];
  /** Shows where the plan's front is; unless said otherwise while no one hole is worked on, which then has the room. */
  readonly front?: boolean;
}

/**
 * The job from above: in the site frame with A and B as soon as the plan lies on the site, in the plan frame before.
 * Holes are drawn where they were planned, by `lookOf`: their state, where it is not given.
 */
export function drawnSite(
  situation: Pick<Situation, 'plan' | 'holes' | 'laid' | 'measured'>,
  assessed: readonly HoleAssessment[],
  options: DrawnSiteOptions = {},
): Drawn {
  const {
    live = null,
    lookOf = (hole) => ({ state: stateOf(hole) }),
    pulls = [],
    front = live === null,
  } = options;
  const { holes, laid } = situation;
  const looks = new Map(assessed.map((hole) => [hole.hole, lookOf(hole)]));
  const drawn = holes.map(
    ({ label, place, section, facing, holeDiameter }): DrawnHole => ({
      label,
      place: laid ? toSite(laid.motion, place) : place,
      section,
      facing: facing + (laid?.motion.turn ?? 0),
      holeDiameter,
      ...(looks.get(label) ?? { state: 'planned' }),
      ...(label === live ? { live: true } : {}),
    }),
  );
  const stakes = stakePlaces(situation);
  const references = referencePlaces(situation);
  const lines = groundLinesOf(situation).lines.map((line) =>
    drawnLine(line, (place) => (laid ? toSite(laid.motion, place) : place)),
  );
  return {
    holes: drawn,
    ...(front ? { front: frontIn(laid?.motion.turn ?? 0) } : {}),
    ...(stakes ? { stakes } : {}),
    ...(references.length > 0 ? { references } : {}),
    ...(lines.length > 0 ? { lines } : {}),
    pulls,
  };
}

/** @param place from the plan frame to that of the drawing */
export function drawnLine(
  { name, kind, from, to, noStakes }: LaidLine,
  place: (at: PlanPoint) => Vec = (at) => at,
): DrawnLine {
  const ends = { name, from: place(from), to: place(to), wall: kind === 'house' };
  return noStakes === null ? ends : { ...ends, barred: noStakes };
}

/** Bearing of the plan's front, its +y, in a frame in which the plan lies turned so. */
const frontIn = (turn: number): number => Math.PI / 2 + turn;

/** A pull as a line on the drawing; null while one of its ends has no place. */
export function drawnPull(
  situation: Situation,
  { from, to }: { readonly from: PullEnd; readonly to: PullEnd },
  kind: DrawnPull['kind'],
): DrawnPull | null {
  const [p, q] = [placeOfEnd(situation, from), placeOfEnd(situation, to)];
  if (!p || !q) return null;
  const { plan } = situation;
  return { from: p, to: q, kind, words: `${thingName(from.thing, plan)} to ${thingName(to.thing, plan)}` };
}

type Placed = Pick<Situation, 'laid' | 'measured'>;

/** Where A and B stand, site frame: as measured, else as planned. Null until they are placed. */
export function stakePlaces(situation: Placed): { a: SitePoint; b: SitePoint } | null {
  if (!situation.laid) return null;
  const a = measuredPlace(situation, { kind: 'stake', label: 'A' }) ?? { x: 0, y: 0 };
  const b = measuredPlace(situation, { kind: 'stake', label: 'B' }) ?? { x: situation.laid.baseline, y: 0 };
  return { a, b };
}

/** Where further stakes and nails stand, site frame: as measured, else as they are meant to. */
export function referencePlaces(situation: Placed): { thing: Thing; label: string; place: SitePoint }[] {
  return (situation.laid?.references ?? []).map(({ thing, site }) => ({
    thing,
    label: thing.label,
    place: measuredPlace(situation, thing) ?? site,
  }));
}

function measuredPlace({ measured }: Placed, thing: Thing): SitePoint | null {
  const key = thingKey(thing);
  return measured?.points.find((each) => each.current && thingKey(each.thing) === key)?.fix?.place ?? null;
}

/** Where a thing was measured to stand, else where it was planned to. */
export function placeOfEnd(situation: Placed, { thing }: PullEnd): SitePoint | null {
  const stakes = stakePlaces(situation);
  if (thing.kind === 'stake' && thing.label === 'A') return stakes?.a ?? null;
  if (thing.kind === 'stake' && thing.label === 'B') return stakes?.b ?? null;
  const at = measuredPlace(situation, thing);
  if (at) return at;
  if (thing.kind === 'stake' || thing.kind === 'nail') {
    const key = thingKey(thing);
    return situation.laid?.references.find((reference) => thingKey(reference.thing) === key)?.site ?? null;
  }
  return situation.laid?.holes.find(({ label }) => label === thing.hole)?.site ?? null;
}
