import { distance, unit, type Vec } from '../geometry/point.ts';
import type { SitedHole } from '../plan/index.ts';
import { ROUND } from './round-stakes.ts';
import { type Ground, isClear, isOpen, NAIL_CLEARANCE, nailPulls } from './string-nails.ts';
import type { NailPlace, StringsAsked } from './string-types.ts';

/**
 * Two offset stakes in one line with a hole's centre: on both sides at the same distance, or both on one side, the farther at
 * twice the distance of the nearer.
 */
export interface OffsetPair {
  readonly how: 'both-sides' | 'one-side';
  /** From the centre, metres: to each of the two, or to the nearer. */
  readonly away: number;
  readonly stakes: readonly [NailPlace, NailPlace];
}

/** No offset stake is farther from its hole: 8 ft, a short tape's easy reach from the hole's edge. */
const MOST_AWAY = 2.4;
const DEGREE = Math.PI / 180;
/** Ways to look from the hole, the way its front looks first; both ways of a line count as one. */
const LINES = [0, 90, 45, 135, 15, 165, 30, 150, 60, 120, 75, 105].map((degrees) => degrees * DEGREE);
/** Ways out of the hole: the same and their opposites. */
const WAYS_OUT = [...LINES, ...LINES.map((way) => way + Math.PI)];
/** Ways that count as square to a first pair: within 30°. */
const SQUARE_TO = [0, 15, -15, 30, -30].map((degrees) => (90 + degrees) * DEGREE);

/**
 * Offset stakes for a hole, clear of the digging of every hole, in round distances and no farther out than they must be: a
 * pair in line, and, where there is room, a second pair square to it. On both sides where that can be had, for halfway is
 * found without arithmetic.
 *
 * @param taken nails and stakes that have their places
 */
export function offsetPairs(hole: SitedHole, asked: StringsAsked, taken: readonly Vec[]): OffsetPair[] {
  const around = nearby(hole, { asked, taken });
  const first = bestPair(
    hole,
    around,
    LINES.map((way) => hole.facing + way),
  );
  if (!first) {
    const beside = besidePair(
      hole,
      around,
      WAYS_OUT.map((way) => hole.facing + way),
    );
    return beside ? [beside.pair] : [];
  }
  const rest = { asked: around.asked, taken: [...taken, ...first.pair.stakes.map(({ site }) => site)] };
  const ways = SQUARE_TO.map((turn) => first.way + turn);
  const second =
    bestPair(hole, rest, ways, 2) ??
    besidePair(hole, rest, [...ways, ...ways.map((way) => way + Math.PI)], 2);
  return second ? [first.pair, second.pair] : [first.pair];
}

interface Found {
  readonly way: number;
  readonly pair: OffsetPair;
}

/** Only what an offset stake of this hole could come near. */
function nearby(hole: SitedHole, { asked, taken }: Ground): Ground {
  const reach = 2 * MOST_AWAY + NAIL_CLEARANCE;
  return {
    asked: {
      ...asked,
      holes: asked.holes.filter(
        ({ site, holeDiameter }) => distance(site, hole.site) < reach + holeDiameter / 2,
      ),
    },
    taken: taken.filter((place) => distance(place, hole.site) < reach),
  };
}

/** The pair on both sides that stands nearest to the hole; of equals the first way. */
const bestPair = (hole: SitedHole, ground: Ground, ways: readonly number[], order = 1): Found | null =>
  nearest(hole, ground, ways, order, 'both-sides');

const besidePair = (hole: SitedHole, ground: Ground, ways: readonly number[], order = 1): Found | null =>
  nearest(hole, ground, ways, order, 'one-side');

function nearest(
  hole: SitedHole,
  ground: Ground,
  ways: readonly number[],
  order: number,
  how: OffsetPair['how'],
): Found | null {
  const [, step = NAIL_CLEARANCE] = ROUND[ground.asked.units];
  const first = Math.ceil((hole.holeDiameter / 2 + NAIL_CLEARANCE - TINY) / step);
  for (let k = first; k * step <= MOST_AWAY; k++) {
    const away = k * step;
    for (const way of ways) {
      const places = placesOf(hole, way, away, how);
      if (!places.every((at) => isClear(ground, at) && isOpen(ground.asked, hole.site, at))) continue;
      return { way, pair: pairAt(hole, places, away, how, order, ground.asked) };
    }
  }
  return null;
}

/** A whole number of steps stays what it is, whatever its last bits say. */
const TINY = 1e-9;

function placesOf({ site }: SitedHole, way: number, away: number, how: OffsetPair['how']): [Vec, Vec] {
  const u = unit(way);
  const at = (k: number) => ({ x: site.x + u.x * away * k, y: site.y + u.y * away * k });
  return [at(1), at(how === 'both-sides' ? -1 : 2)];
}

function pairAt(
  hole: SitedHole,
  places: readonly [Vec, Vec],
  away: number,
  how: OffsetPair['how'],
  order: number,
  asked: StringsAsked,
): OffsetPair {
  const letters = order === 1 ? ['a', 'b'] : ['c', 'd'];
  const [one, other] = places.map((site, k): NailPlace => {
    const label = offsetLabel(hole.label, letters[k]!, asked.holes);
    return { label, site, pulls: nailPulls(label, site, asked) };
  });
  return { how, away, stakes: [one!, other!] };
}

/** Labels have twelve characters at most; the mark and the letter take two. */
const LONGEST_IN_LABEL = 10;

/** `T4a`: a tie of hole 4. A long label gives way to the hole's number in the list. */
function offsetLabel(hole: string, letter: string, holes: readonly SitedHole[]): string {
  const short = hole.length <= LONGEST_IN_LABEL;
  return short ? `T${hole}${letter}` : `Tx${holes.findIndex(({ label }) => label === hole) + 1}${letter}`;
}
