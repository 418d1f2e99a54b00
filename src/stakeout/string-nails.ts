import { bearingOf, distance, dot, subtract, type Vec } from '../geometry/point.ts';
import { toPlan } from '../geometry/rigid.ts';
import { barredBy, wallBetween } from './ground.ts';
import { holePulls } from './hole-pulls.ts';
import { SLACK } from './objections.ts';
import { ROUND } from './round-stakes.ts';
import type { PlaceGrid } from './string-grid.ts';
import type { HoleLine } from './string-lines.ts';
import type { NailPlace, StringsAsked } from './string-types.ts';

/**
 * A batter board or an offset stake stands this far outside the edge of every hole: 2 ft, out of the way of the bar, with the
 * spoil thrown to another side (common practice for holes dug by hand; a machine wants twice as much).
 */
export const NAIL_CLEARANCE = 0.6096;
/** Nails nearer to each other are mistaken for one another: a hand's breadth. */
const NAIL_APART = 0.1;
/** Who hammers a board beside A or B knocks them: a foot. */
const FROM_STAKE = 0.3;
/** A string does not run farther than this past its last hole: 6 m, beyond which other ground begins. */
const MOST_BEYOND = 6;
/** A nail goes so much farther out than it must where the tapes from A and B then cross better: 8 ft. */
const FARTHER_FOR_TAPES = 2.4;

/** What a nail of a string must keep clear of. */
export interface Ground {
  readonly asked: StringsAsked;
  /** Nails that have their places already. */
  readonly taken: readonly Vec[];
  /** Of the places of all of `asked.holes`, where many lines are asked for. */
  readonly grid?: PlaceGrid;
}

/** Whether a nail can stand at a place: on open ground, clear of the digging of every hole, of other nails and of A and B. */
export function isClear({ asked, taken }: Ground, at: Vec): boolean {
  return (
    asked.holes.every(
      ({ site, holeDiameter }) => distance(site, at) - holeDiameter / 2 >= NAIL_CLEARANCE - SLACK,
    ) &&
    taken.every((nail) => distance(nail, at) >= NAIL_APART) &&
    [asked.a, asked.b].every((stake) => distance(stake, at) >= FROM_STAKE) &&
    (asked.lines ?? []).every((line) => barredBy(line, at) === 0)
  );
}

/** Whether a string or a tape runs straight from one place to the other without a house in its way. */
export const isOpen = ({ lines = [] }: Pick<StringsAsked, 'lines'>, p: Vec, q: Vec): boolean =>
  wallBetween(lines, p, q) === undefined;

/**
 * The two nails of a string: each a round length beyond the last hole at its end, the nearest that is clear; a little farther
 * where only there the tapes from A and B reach it and cross well. The one nearer to A comes first.
 *
 * @returns null when an end has no clear place, or a house stands in between
 */
export function nailsOf(line: HoleLine, ground: Ground): readonly [Vec, Vec] | null {
  const { holes, a } = ground.asked;
  const ends = [line.holes[0], line.holes.at(-1)].map((i) => (i === undefined ? undefined : holes[i]));
  const [first, last] = ends;
  if (!first || !last) return null;
  const back = { x: -line.along.x, y: -line.along.y };
  const one = nailBeyond(first.site, back, first.holeDiameter / 2, ground);
  const other = nailBeyond(last.site, line.along, last.holeDiameter / 2, ground);
  if (!one || !other || !isOpen(ground.asked, one, other)) return null;
  return distance(one, a) <= distance(other, a) ? [one, other] : [other, one];
}

function nailBeyond(from: Vec, along: Vec, radius: number, everywhere: Ground): Vec | null {
  const ground = besideLine(from, along, everywhere);
  const [, step = NAIL_CLEARANCE] = ROUND[ground.asked.units];
  const first = Math.ceil((radius + NAIL_CLEARANCE - SLACK) / step);
  let nearest: { readonly at: Vec; readonly beyond: number } | null = null;
  for (let k = first; k * step <= MOST_BEYOND; k++) {
    const beyond = k * step;
    if (nearest && beyond > nearest.beyond + FARTHER_FOR_TAPES) break;
    const at = { x: from.x + along.x * beyond, y: from.y + along.y * beyond };
    if (!isOpen(ground.asked, from, at)) break;
    if (!isClear(ground, at)) continue;
    if (isReached(ground.asked, at)) return at;
    nearest ??= { at, beyond };
  }
  return nearest?.at ?? null;
}

/** Whether tapes from A and B come there and cross well. */
function isReached(asked: StringsAsked, at: Vec): boolean {
  const { withinTape, crossing } = nailPulls('', at, asked);
  return (
    withinTape && crossing.grade !== 'poor' && [asked.a, asked.b].every((stake) => isOpen(asked, stake, at))
  );
}

/** The same ground with only what a nail on the line could come near: of a thousand holes, a few. */
function besideLine(from: Vec, along: Vec, { asked, taken, grid }: Ground): Ground {
  // Of thousands of nails: no vector is made for each.
  const off = ({ x, y }: Vec) => Math.abs(along.x * (y - from.y) - along.y * (x - from.x));
  const widest = asked.holes.reduce((most, { holeDiameter }) => Math.max(most, holeDiameter), 0);
  const holes =
    grid?.beside(from, along, widest / 2 + NAIL_CLEARANCE).map((i) => asked.holes[i]!) ?? asked.holes;
  return {
    asked: {
      ...asked,
      holes: holes.filter(({ site, holeDiameter }) => off(site) < holeDiameter / 2 + NAIL_CLEARANCE),
    },
    taken: taken.filter((nail) => off(nail) < NAIL_APART),
  };
}

/** What tapes from A and B read at a place, as for a hole's stake. */
export function nailPulls(
  label: string,
  site: Vec,
  { a, b, instruments }: Pick<StringsAsked, 'a' | 'b' | 'instruments'>,
): NailPlace['pulls'] {
  const line = subtract(b, a);
  const seen = toPlan({ turn: bearingOf(line), shift: a }, site);
  const [pulls] = holePulls([{ label, site: { x: seen.x, y: seen.y } }], distance(a, b), instruments);
  return pulls!;
}

/** Level length from one nail along the string to where a place lies on it. */
export const stationOn = ([one, other]: readonly [Vec, Vec], place: Vec): number =>
  dot(subtract(place, one), subtract(other, one)) / distance(one, other);
