import { bearingOf, dot, subtract, type Vec } from '../../geometry/point.ts';

/** A place on the drawing: pixels, y downwards. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How metres become pixels. */
export interface View {
  readonly width: number;
  readonly height: number;
  readonly pxPerMetre: number;
  /** Radians by which the frame is turned anticlockwise before it is drawn. */
  readonly turn: number;
  spot(p: Vec): Spot;
}

/** Room round the outermost places for marks, and for labels by their size, pixels. */
const margins = (text: number) => ({ side: 26 + 22 * text, up: 18 + 18 * text });

/**
 * Turn that shows the site as someone on the line A–B sees it who faces the holes: the holes above the line. A is then on the
 * left when the holes are on the left of a person walking from A to B, else on the right. Never mirrored.
 */
export function turnAsStanding(a: Vec, b: Vec, holes: readonly Vec[]): number {
  const line = subtract(b, a);
  const left = { x: -line.y, y: line.x };
  const sideways = holes.reduce((sum, hole) => sum + dot(left, subtract(hole, a)), 0);
  return -bearingOf(line) + (sideways < 0 ? Math.PI : 0);
}

/** Fits all `places` into `width` pixels and at most `maxHeight`. @param text times the usual letter size */
export function fitView(
  places: readonly Vec[],
  turn: number,
  width: number,
  maxHeight: number,
  text = 1,
): View {
  const margin = margins(text);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const turned = places.map((p) => ({ x: c * p.x - s * p.y, y: s * p.x + c * p.y }));
  const xs = turned.map((p) => p.x);
  const ys = turned.map((p) => p.y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const across = width - 2 * margin.side;
  const up = maxHeight - 2 * margin.up;
  const pxPerMetre = Math.min(across / atLeast(right - left), up / atLeast(high - low));
  const height = (high - low) * pxPerMetre + 2 * margin.up;
  const x0 = (width - (right - left) * pxPerMetre) / 2;
  return {
    width,
    height,
    pxPerMetre,
    turn,
    spot: (p) => ({
      x: x0 + (c * p.x - s * p.y - left) * pxPerMetre,
      y: margin.up + (high - (s * p.x + c * p.y)) * pxPerMetre,
    }),
  };
}

/** A lone place, or places in one line, still need a size to divide by: a tenth of a metre. */
const atLeast = (metres: number): number => Math.max(metres, 0.1);

/** Mark half size, pixels: large where there is room, small where holes are dense. */
export function markRadius(spots: readonly Spot[]): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [i, p] of spots.entries())
    for (const q of spots.slice(i + 1)) nearest = Math.min(nearest, Math.hypot(p.x - q.x, p.y - q.y));
  return Math.max(LEAST_MARK, Math.min(GREATEST_MARK, nearest * SHARE_OF_SPACING));
}

const LEAST_MARK = 4;
const GREATEST_MARK = 13;
/** Marks of this share of the spacing never touch: two radii and a gap. */
const SHARE_OF_SPACING = 0.38;
