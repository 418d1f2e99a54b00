import { add, dot, scale, subtract, unit, type Vec } from '../../geometry/point.ts';
import type { DrawnFace, DrawnHole } from './drawn.ts';
import type { Segment } from './labels.ts';
import type { Spot } from './view.ts';

/** A hole's mark: how far from its centre labels have to stay, pixels. */
export interface Mark {
  readonly hole: DrawnHole;
  readonly at: Spot;
  readonly reach: number;
}

/** A bar along a touched face. */
export interface FaceBar {
  readonly hole: string;
  readonly name: string;
  readonly bar: Segment;
  /** Centre of what it is a face of. */
  readonly of: Spot;
}

/** Half length of a face's bar, pixels: as long as a small mark is wide, so that it reads as its side. */
export const FACE_HALF = 11;
/** From a mark's edge out to the bar, pixels. */
const FACE_GAP = 3;

/** The bar that marks a face: square to the way it looks, just off the mark of its post. Null where there is no such hole. */
export function faceBar(
  { hole, bearing, name }: DrawnFace,
  marks: readonly Mark[],
  turn: number,
): FaceBar | null {
  const mark = marks.find((each) => each.hole.label === hole);
  if (!mark) return null;
  const way = onScreen(bearing + turn);
  const across = { x: -way.y, y: way.x };
  const foot = add(mark.at, scale(way, mark.reach + FACE_GAP));
  const bar = {
    from: add(foot, scale(across, -FACE_HALF)),
    to: add(foot, scale(across, FACE_HALF)),
  };
  return { hole, name, bar, of: mark.at };
}

export const FRONT = 'front';
/** The arrow before the plan's front: from the foremost mark's edge, and its length, pixels. */
export const FRONT_ARROW = { gap: 8, length: 26 };
/** Room for it beyond the foremost hole; the drawing's margin gives the rest, pixels. */
const FRONT_ROOM = 18;

/** A place to keep in the drawing, so that the arrow has room. Metres, in the frame of `places`. */
export function beforeFront(places: readonly Vec[], front: number, pxPerMetre: number): Vec {
  const way = unit(front);
  return foremost(places, way, FRONT_ROOM / pxPerMetre);
}

/** @param front bearing as drawn: the drawing's turn is in it */
export function frontArrow(spots: readonly Spot[], r: number, front: number): Segment {
  const way = onScreen(front);
  const from = foremost(spots, way, r + FRONT_ARROW.gap);
  return { from, to: add(from, scale(way, FRONT_ARROW.length)) };
}

/** Straight before the middle, so far beyond the one that lies foremost. */
function foremost(all: readonly Vec[], way: Vec, beyond: number): Vec {
  const centre = middle(all);
  const reach = Math.max(...all.map((each) => dot(subtract(each, centre), way)));
  return add(centre, scale(way, reach + beyond));
}

/** A bearing as drawn, y downwards. */
function onScreen(bearing: number): Spot {
  const { x, y } = unit(bearing);
  return { x, y: -y };
}

export const halfway = ({ from, to }: Segment): Spot => middle([from, to]);

export const middle = (spots: readonly Spot[]): Spot => ({
  x: spots.reduce((sum, p) => sum + p.x, 0) / spots.length,
  y: spots.reduce((sum, p) => sum + p.y, 0) / spots.length,
});
