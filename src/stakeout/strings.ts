import { distance, scale, unit, type Vec } from '../geometry/point.ts';
import { sineBetween } from './squarest.ts';
import { Cover, chooseShared, crossesWell, squarestPair } from './string-cover.ts';
import { PlaceGrid } from './string-grid.ts';
import { designedLines, type HoleLine, lineAlong } from './string-lines.ts';
import { nailPulls, nailsOf, stationOn } from './string-nails.ts';
import { stringSag } from './string-sag.ts';
import type {
  LaidString,
  NailPlace,
  StandsFor,
  StringCrossing,
  StringPlan,
  StringsAsked,
} from './string-types.ts';

/**
 * Few strings that cross every hole's centre twice, each between two nails that outlive the digging.
 *
 * The lines that the shape gives come first (diameters and sides of a ring, rows and columns); then lines through two holes
 * or more for those that are not crossed yet, the one that serves most first; then strings for single holes, square to the
 * one that is there. Whatever the holes are, what is told of a string is exact: its nails lie on the line.
 */
export function stringPlan(asked: StringsAsked): StringPlan {
  const grid = new PlaceGrid(asked.holes.map(({ site }) => site));
  const { places } = grid;
  const cover = new Cover(places.length);
  const lines: { readonly line: HoleLine; readonly nails: readonly [Vec, Vec] }[] = [];
  const taken: Vec[] = [];
  const accept = (line: HoleLine): boolean => {
    const nails = nailsOf(line, { asked, taken, grid });
    if (!nails) return false;
    lines.push({ line, nails });
    taken.push(...nails);
    return true;
  };
  for (const line of designedLines(asked.shape, grid)) if (accept(line)) cover.put(line);
  chooseShared(grid, cover, (line) => spanOf(line, places) <= asked.instruments.tapeLength.m && accept(line));
  for (const hole of places.keys()) crossAlone(grid, hole, cover, accept);
  const strings = lines.map(({ line, nails }, i) => laidString(labelOf(i), line, nails, asked));
  return {
    strings,
    ...crossingsOf(
      asked,
      lines.map(({ line }) => line),
    ),
  };
}

const spanOf = ({ holes }: HoleLine, places: readonly Vec[]): number =>
  holes.length < 2 ? 0 : distance(places[holes[0]!]!, places[holes.at(-1)!]!);

const DEGREE = Math.PI / 180;
/** Turns away from square, least first, that still cross at 30° or more. */
const TURNS = [0, 15, -15, 30, -30, 45, -45, 60, -60].map((degrees) => degrees * DEGREE);
/** A first string may lie anyhow: the way of A–B, or turned from it by up to a right angle. */
const ANY_TURNS = [...TURNS, 90 * DEGREE, 75 * DEGREE, -75 * DEGREE];

/** Strings for one hole alone, until two cross over it or there is no room for more. */
function crossAlone(grid: PlaceGrid, hole: number, cover: Cover, accept: (line: HoleLine) => boolean): void {
  const tryWays = (ways: readonly Vec[]): boolean =>
    ways.some((along) => {
      const line = lineAlong(grid, grid.places[hole]!, along);
      if (!accept(line)) return false;
      cover.put(line);
      return true;
    });
  if (cover.ways(hole).length === 0 && !tryWays(ANY_TURNS.map(unit))) return;
  if (cover.isCrossed(hole)) return;
  const [first] = cover.ways(hole);
  const square = Math.atan2(first!.x, -first!.y);
  tryWays(TURNS.map((turn) => unit(square + turn)));
}

function laidString(
  label: string,
  line: HoleLine,
  ends: readonly [Vec, Vec],
  asked: StringsAsked,
): LaidString {
  const holes = line.holes.map((i) => asked.holes[i]!);
  return stringBetween(label, ends, { what: 'centres' }, asked, (nails) =>
    holes.map(({ label: hole, site }) => ({ hole, at: stationOn(nails, site) })),
  );
}

/** A string as it is told, from where its two nails go. */
function stringBetween(
  label: string,
  ends: readonly [Vec, Vec],
  standsFor: StandsFor,
  asked: Pick<StringsAsked, 'a' | 'b' | 'instruments'>,
  marks: (ends: readonly [Vec, Vec]) => LaidString['marks'],
): LaidString {
  const suffix = standsFor.what === 'faces' ? 'f' : '';
  const nail = (site: Vec, end: string): NailPlace => {
    const name = `${label}${end}${suffix}`;
    return { label: name, site, pulls: nailPulls(name, site, asked) };
  };
  const length = distance(...ends);
  return {
    label,
    nails: [nail(ends[0], 'a'), nail(ends[1], 'b')],
    length,
    marks: [...marks(ends)].sort((p, q) => p.at - q.at),
    standsFor,
    sag: stringSag(length),
  };
}

/**
 * The same string moved aside to stand for faces: both nails by half the actual section and the gap.
 *
 * @param half from `faceHalf`, metres
 * @param aside unit vector square to the string, to the side of the face
 */
export function forFaces(
  string: LaidString,
  half: number,
  gap: number,
  aside: Vec,
  asked: Pick<StringsAsked, 'a' | 'b' | 'instruments'>,
): LaidString {
  const shift = scale(aside, half + gap);
  const [one, other] = string.nails.map(({ site }) => ({ x: site.x + shift.x, y: site.y + shift.y }));
  return stringBetween(
    string.label,
    [one!, other!],
    { what: 'faces', shift, half, gap },
    asked,
    () => string.marks,
  );
}

function crossingsOf(
  { holes }: StringsAsked,
  lines: readonly HoleLine[],
): Pick<StringPlan, 'crossings' | 'uncrossed'> {
  const over = holes.map((): number[] => []);
  for (const [s, line] of lines.entries()) for (const hole of line.holes) over[hole]!.push(s);
  const found = holes.map(({ label }, i) => crossingOf(label, over[i]!, lines));
  return {
    crossings: found.filter((crossing) => crossing !== null),
    uncrossed: holes.flatMap(({ label }, i) => (found[i] ? [] : [label])),
  };
}

/** @param over the lines over the hole, by their places in the list */
function crossingOf(
  hole: string,
  over: readonly number[],
  lines: readonly HoleLine[],
): StringCrossing | null {
  const ways = over.map((s) => lines[s]!.along);
  const pair = squarestPair(ways);
  if (!pair) return null;
  const [one, other] = pair;
  if (!crossesWell(ways[one]!, ways[other]!)) return null;
  return {
    hole,
    strings: [labelOf(over[one]!), labelOf(over[other]!)],
    angle: Math.asin(Math.min(1, sineBetween(ways[one]!, ways[other]!))),
  };
}

const labelOf = (index: number): string => `S${index + 1}`;
