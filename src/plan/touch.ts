import { scale, unit, type Vec } from '../geometry/point.ts';
import { SIDES, type Side, type Touch } from '../job/entry-schema.ts';
import type { Section } from './hole.ts';

/**
 * Where a tape's end lies on a thing, seen from the thing's centre: at a fixed offset, or on a round at the side that
 * faces the other end, wherever that is.
 */
export type TouchPoint =
  | { readonly kind: 'fixed'; readonly offset: Vec }
  | { readonly kind: 'near-side'; readonly radius: number };

const AT_CENTRE: TouchPoint = { kind: 'fixed', offset: { x: 0, y: 0 } };

/**
 * Where `touch` lies on a section.
 *
 * @param section of the post or pier; null for a stake or a nail, which have none that matters
 * @param facing bearing that the front face looks to, radians; the answer is in the same frame
 * @returns null when the section has no such place: a face or corner of a round, the near side of a square post
 */
export function touchPoint(section: Section | null, facing: number, touch: Touch): TouchPoint | null {
  switch (touch.at) {
    case 'nail':
    case 'centre':
      return AT_CENTRE;
    case 'near-side':
      return section?.kind === 'pier' ? { kind: 'near-side', radius: section.diameter / 2 } : null;
    case 'face':
      return section?.kind === 'post'
        ? { kind: 'fixed', offset: faceOffset(section, facing, touch.side) }
        : null;
    case 'corner':
      return section?.kind === 'post'
        ? { kind: 'fixed', offset: cornerOffset(section, facing, touch.side) }
        : null;
  }
}

/**
 * As `touchPoint`, but one vector: from the thing's centre to what the tape touches when its other end lies on the
 * bearing `toward`, radians.
 */
export function touchOffset(
  section: Section | null,
  facing: number,
  touch: Touch,
  toward: number,
): Vec | null {
  const point = touchPoint(section, facing, touch);
  if (point === null) return null;
  return point.kind === 'fixed' ? point.offset : scale(unit(toward), point.radius);
}

/** Bearing that a side looks to, radians: front, left, back, right run anticlockwise seen from above. */
export function sideBearing(facing: number, side: Side): number {
  return facing + (SIDES.indexOf(side) * Math.PI) / 2;
}

/** The side that looks best towards `bearing`. On a diagonal the earlier of front, left, back, right. */
export function sideToward(facing: number, bearing: number): Side {
  return SIDES.reduce((best, side) =>
    Math.cos(sideBearing(facing, side) - bearing) > Math.cos(sideBearing(facing, best) - bearing) + TIE
      ? side
      : best,
  );
}

/** Cosines that differ by less are a tie: a millionth of a millionth, far above rounding, far below a real turn. */
const TIE = 1e-12;

type PostSection = Extract<Section, { kind: 'post' }>;

/** Half the depth lies before and behind the centre, half the width to the left and right. */
function faceOffset({ width, depth }: PostSection, facing: number, side: Side): Vec {
  const half = side === 'front' || side === 'back' ? depth / 2 : width / 2;
  return scale(unit(sideBearing(facing, side)), half);
}

/** A corner lies between its own side and the next one anticlockwise. */
function cornerOffset(section: PostSection, facing: number, side: Side): Vec {
  const next = SIDES[(SIDES.indexOf(side) + 1) % SIDES.length]!;
  const a = faceOffset(section, facing, side);
  const b = faceOffset(section, facing, next);
  return { x: a.x + b.x, y: a.y + b.y };
}
