import type { Spot } from './view.ts';

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Segment {
  readonly from: Spot;
  readonly to: Spot;
}

export interface LabelTask {
  readonly text: string;
  /** Centre and half size of the mark that it belongs to. */
  readonly at: Spot;
  readonly r: number;
  /** Letter height, pixels. */
  readonly size: number;
  /** Labels that must find room come first. */
  readonly first?: boolean;
}

export interface Obstacles {
  readonly boxes: readonly Box[];
  readonly segments: readonly Segment[];
  readonly within: Box;
  /** Labels stand away from here when they can. */
  readonly centre: Spot;
}

/** A bold letter is about this share of its size wide; figures are narrower, so labels of digits have air. */
const LETTER_WIDTH = 0.62;
const GAP = 4;
const DIRECTIONS = 16;

export const boxAround = ({ x, y }: Spot, halfWidth: number, halfHeight = halfWidth): Box => ({
  left: x - halfWidth,
  right: x + halfWidth,
  top: y - halfHeight,
  bottom: y + halfHeight,
});

export const overlaps = (p: Box, q: Box): boolean =>
  p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom;

/**
 * A box for each label that lies on no mark and no other label, and on no line where that can be had; null for a label that
 * finds no room. Each tries its places from straight outward round to straight inward.
 */
export function placeLabels(tasks: readonly LabelTask[], obstacles: Obstacles): (Box | null)[] {
  const taken = [...obstacles.boxes, ...tasks.map(({ at, r }) => boxAround(at, r))];
  const out: (Box | null)[] = tasks.map(() => null);
  const order = tasks
    .map((_, i) => i)
    .sort((i, j) => Number(tasks[j]!.first) - Number(tasks[i]!.first) || i - j);
  for (const i of order) {
    const free = candidates(tasks[i]!, obstacles.centre).filter(
      (box) => isInside(box, obstacles.within) && !taken.some((other) => overlaps(box, other)),
    );
    const clear = free.find((box) => !obstacles.segments.some((segment) => crosses(segment, box)));
    const chosen = clear ?? free[0] ?? null;
    out[i] = chosen;
    if (chosen) taken.push(chosen);
  }
  return out;
}

function candidates({ text, at, r, size }: LabelTask, centre: Spot): Box[] {
  const halfWidth = (text.length * size * LETTER_WIDTH) / 2;
  const halfHeight = size / 2;
  const outward = Math.atan2(at.y - centre.y, at.x - centre.x);
  return turnsFromOutward().map((turn) => {
    const [c, s] = [Math.cos(outward + turn), Math.sin(outward + turn)];
    // Just far enough for the box to clear the mark's own box in this direction.
    const clearX = (r + halfWidth + GAP) / Math.max(Math.abs(c), 1e-9);
    const clearY = (r + halfHeight + GAP) / Math.max(Math.abs(s), 1e-9);
    const reach = Math.min(clearX, clearY);
    return boxAround({ x: at.x + c * reach, y: at.y + s * reach }, halfWidth, halfHeight);
  });
}

/** 0, then a little to each side, and so on to straight back. */
const turnsFromOutward = (): number[] =>
  Array.from(
    { length: DIRECTIONS },
    (_, k) => (k % 2 ? 1 : -1) * Math.ceil(k / 2) * ((2 * Math.PI) / DIRECTIONS),
  );

const isInside = (box: Box, within: Box): boolean =>
  box.left >= within.left &&
  box.right <= within.right &&
  box.top >= within.top &&
  box.bottom <= within.bottom;

/** Whether a line runs through a box (Liang and Barsky's clipping, from memory). */
export function crosses({ from, to }: Segment, box: Box): boolean {
  let [enter, leave] = [0, 1];
  const edges: readonly (readonly [number, number])[] = [
    [from.x - to.x, from.x - box.left],
    [to.x - from.x, box.right - from.x],
    [from.y - to.y, from.y - box.top],
    [to.y - from.y, box.bottom - from.y],
  ];
  for (const [along, room] of edges) {
    if (along === 0 && room < 0) return false;
    if (along < 0) enter = Math.max(enter, room / along);
    if (along > 0) leave = Math.min(leave, room / along);
  }
  return enter <= leave;
}
