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
  /** It stands away from here when it can, whatever the others do. */
  readonly awayFrom?: Spot;
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
/** Figures and capitals fill this share of their size. */
const LETTER_HEIGHT = 0.8;
/** Between a mark and its label, pixels; letters carry some air above and below, none beside. */
const GAP = { beside: 5, above: 2 };
const DIRECTIONS = 16;

export const boxAround = ({ x, y }: Spot, halfWidth: number, halfHeight = halfWidth): Box => ({
  left: x - halfWidth,
  right: x + halfWidth,
  top: y - halfHeight,
  bottom: y + halfHeight,
});

export const overlaps = (p: Box, q: Box): boolean =>
  p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom;

/** Where labels stand when they can: outward from the middle, or all on one side of their marks. Radians, y downwards. */
const HABITS = ['outward', -Math.PI / 2, 0, Math.PI / 2, Math.PI] as const;
type Habit = (typeof HABITS)[number];

/**
 * A box for each label that lies on no mark and no other label, and on no line where that can be had; null for a label that
 * finds no room. All labels follow one habit, the one with the fewest exceptions: outward suits a ring, above suits a grid.
 */
export function placeLabels(tasks: readonly LabelTask[], obstacles: Obstacles): (Box | null)[] {
  const tries = HABITS.map((habit) => placeByHabit(tasks, obstacles, habit));
  return tries.reduce((best, next) => (next.exceptions < best.exceptions ? next : best)).boxes;
}

/** A label that finds no room weighs as much as this many that stand elsewhere than by habit. */
const LOST = 10;

function placeByHabit(tasks: readonly LabelTask[], obstacles: Obstacles, habit: Habit) {
  const taken = [...obstacles.boxes, ...tasks.map(({ at, r }) => boxAround(at, r))];
  const boxes: (Box | null)[] = tasks.map(() => null);
  let exceptions = 0;
  for (const i of firstThingsFirst(tasks)) {
    const all = candidates(tasks[i]!, obstacles.centre, habit);
    const free = all.filter(
      (box) => isInside(box, obstacles.within) && !taken.some((other) => overlaps(box, other)),
    );
    const clear = free.find((box) => !obstacles.segments.some((segment) => crosses(segment, box)));
    const chosen = clear ?? free[0] ?? null;
    boxes[i] = chosen;
    if (chosen) taken.push(chosen);
    if (chosen === null) exceptions += LOST;
    else if (chosen !== all[0] || !isPlainlyOf(i, chosen, tasks)) exceptions++;
  }
  return { boxes, exceptions };
}

/** Another mark must be this many times as far from a label as its own, or one would have to guess whose it is. */
const PLAINLY = 1.25;

function isPlainlyOf(i: number, box: Box, tasks: readonly LabelTask[]): boolean {
  const x = (box.left + box.right) / 2;
  const y = (box.top + box.bottom) / 2;
  const far = tasks.map(({ at }) => Math.hypot(at.x - x, at.y - y));
  return far.every((d, j) => j === i || d >= far[i]! * PLAINLY);
}

const firstThingsFirst = (tasks: readonly LabelTask[]): number[] =>
  tasks
    .map((_, i) => i)
    .sort((i, j) => Number(tasks[j]!.first ?? false) - Number(tasks[i]!.first ?? false) || i - j);

/** Keeps a division by a sine or cosine of zero finite; the other one of the pair then decides. */
const TINY = 1e-9;

function candidates(task: LabelTask, centre: Spot, habit: Habit): Box[] {
  const { text, at, r, size, awayFrom } = task;
  const halfWidth = textWidth(text, size) / 2;
  const halfHeight = (size * LETTER_HEIGHT) / 2;
  const first = awayFrom ? wayFrom(awayFrom, at) : habit === 'outward' ? wayFrom(centre, at) : habit;
  return turnsFromFirst().map((turn) => {
    const [c, s] = [Math.cos(first + turn), Math.sin(first + turn)];
    // Just far enough for the box to clear the mark's own box in this direction.
    const clearX = (r + halfWidth + GAP.beside) / Math.max(Math.abs(c), TINY);
    const clearY = (r + halfHeight + GAP.above) / Math.max(Math.abs(s), TINY);
    const reach = Math.min(clearX, clearY);
    return boxAround({ x: at.x + c * reach, y: at.y + s * reach }, halfWidth, halfHeight);
  });
}

const wayFrom = (from: Spot, to: Spot): number => Math.atan2(to.y - from.y, to.x - from.x);

/** About how wide words are, pixels; never less than they are. */
export const textWidth = (text: string, size: number): number => text.length * size * LETTER_WIDTH;

/** 0, then a little to each side, and so on to straight back. */
const turnsFromFirst = (): number[] =>
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
function crosses({ from, to }: Segment, box: Box): boolean {
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
