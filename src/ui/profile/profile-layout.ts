import type { Profiled, ProfiledHole } from './profiled.ts';

/** Some neighbours, drawn side by side. */
export interface Strip {
  readonly holes: readonly ProfiledHole[];
  /** The same height is drawn at the same distance from the upper edge of every strip. */
  readonly xOf: (hole: ProfiledHole) => number;
}

export interface ProfileLayout {
  readonly strips: readonly Strip[];
  readonly pxPerMetre: number;
  readonly stripHeight: number;
  /** Pixels below a strip's upper edge. */
  readonly yOf: (height: number) => number;
}

/** Room beside the outermost middles, and for the labels over and under; pixels. */
const SIDE_PX = 40;
const ABOVE_PX = 44;
const BELOW_PX = 28;
/** Below this a 140 mm post is too thin to be seen; above it the picture is larger than it need be. */
const LEAST_PX_PER_METRE = 42;
const MOST_PX_PER_METRE = 110;
/** Labels of neighbours side by side. */
const LEAST_APART_PX = 62;
const TALLEST_PX = 320;
/** Holes in one spot, as a drawing of nothing else would have them, metres. */
const LEAST_APART_M = 0.1;

/** Cuts the lines into strips that fit the width, all to one scale, the same up as along. */
export function layOutProfile({ lines, frost }: Profiled, width: number): ProfileLayout | null {
  const holes = lines.flat();
  if (holes.length === 0) return null;
  const heights = holes.flatMap(({ top, ground, bottom, cut }) => [
    top,
    ground,
    ...(bottom === null ? [] : [bottom]),
    ...(cut === null ? [] : [cut]),
    ...(frost === null ? [] : [ground - frost]),
  ]);
  const [highest, lowest] = [Math.max(...heights), Math.min(...heights)];
  const apart = Math.max(LEAST_APART_M, leastApart(lines));
  const room = width - 2 * SIDE_PX;
  const readable = Math.max(LEAST_PX_PER_METRE, LEAST_APART_PX / apart);
  const perMetre = Math.min(
    Math.max(readable, widestFit(lines, room)),
    MOST_PX_PER_METRE,
    TALLEST_PX / Math.max(highest - lowest, LEAST_APART_M),
  );
  return {
    strips: lines.flatMap((line) => stripsOf(line, room / perMetre, perMetre)),
    pxPerMetre: perMetre,
    stripHeight: ABOVE_PX + (highest - lowest) * perMetre + BELOW_PX,
    yOf: (height) => ABOVE_PX + (highest - height) * perMetre,
  };
}

/** The scale at which the longest line is as wide as there is room. */
function widestFit(lines: Profiled['lines'], room: number): number {
  const longest = Math.max(...lines.map((line) => line.at(-1)!.at - line[0]!.at));
  return longest > 0 ? room / longest : Number.POSITIVE_INFINITY;
}

function leastApart(lines: Profiled['lines']): number {
  const gaps = lines.flatMap((line) => line.slice(1).map(({ at }, i) => at - line[i]!.at));
  return gaps.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...gaps);
}

function stripsOf(line: readonly ProfiledHole[], metres: number, perMetre: number): Strip[] {
  const strips: ProfiledHole[][] = [];
  for (const hole of line) {
    const strip = strips.at(-1);
    if (strip && hole.at - strip[0]!.at <= metres) strip.push(hole);
    else strips.push([hole]);
  }
  return evened(strips, metres).map((holes) => ({
    holes,
    xOf: ({ at }) => SIDE_PX + (at - holes[0]!.at) * perMetre,
  }));
}

const lengthOf = (strip: readonly ProfiledHole[]): number => strip.at(-1)!.at - strip[0]!.at;

/** As many strips, of about as many holes each, where these still fit: a last hole by itself tells little of the ground. */
function evened(strips: readonly ProfiledHole[][], metres: number): readonly ProfiledHole[][] {
  const holes = strips.flat();
  const each = holes.length / strips.length;
  const even = strips.map((_, i) => holes.slice(Math.round(i * each), Math.round((i + 1) * each)));
  return even.every((strip) => strip.length > 0 && lengthOf(strip) <= metres) ? even : strips;
}
