import type { Vec } from '../../geometry/point.ts';
import { unit } from '../../geometry/point.ts';
import type { Drawn, DrawnHole } from './drawn.ts';
import { type Box, boxAround, type LabelTask, type Obstacles, placeLabels, type Segment } from './labels.ts';
import { exaggeration } from './scale.ts';
import { fitView, markRadius, type Spot, turnAsStanding, type View } from './view.ts';

export interface PlacedHole {
  readonly hole: DrawnHole;
  readonly at: Spot;
  readonly r: number;
  /** Null where the drawing is too dense to hold it. */
  readonly label: Label | null;
  readonly arrow: Segment | null;
}

export interface Layout {
  readonly view: View;
  readonly holes: readonly PlacedHole[];
  readonly stakes: { readonly a: Spot; readonly b: Spot } | null;
  readonly references: readonly { readonly label: string; readonly at: Spot }[];
  readonly exaggeration: number;
}

/** Letter heights, pixels: body size where there is room. */
const LABEL_SIZES = [18, 14];
const LIVE_LABEL_SIZE = 24;
/** Half the side of a reference stake's square. */
export const STAKE_HALF = 9;
/** From a stake's centre down to its letter's. */
export const STAKE_LABEL_DROP = 22;
/** The ring round the live hole stands this far out from its mark. */
export const LIVE_RING = 6;
const ARROW = { start: 6, length: 36 };

/** Where everything on the drawing goes: pure, so that it can be tested without a screen. */
export function layOut(drawn: Drawn, width: number, maxHeight: number): Layout {
  const { holes, stakes, references = [], pulls = [] } = drawn;
  const places = holes.map((hole) => hole.place);
  const turn = stakes ? turnAsStanding(stakes.a, stakes.b, places) : 0;
  const all = [
    ...places,
    ...(stakes ? [stakes.a, stakes.b] : []),
    ...references.map(({ place }) => place),
    ...pulls.flatMap(({ from, to }) => [from, to]),
  ];
  const view = fitView(all, turn, width, maxHeight);
  const further = references.map(({ label, place }) => ({ label, at: view.spot(place) }));
  const spots = places.map((place) => view.spot(place));
  const r = markRadius(spots);
  const arrows = holes.map((hole, i) => arrowOf(hole, spots[i]!, r, turn));
  const corners = stakes ? { a: view.spot(stakes.a), b: view.spot(stakes.b) } : null;
  const reaches = holes.map((hole) => Math.max(hole.live ? r + LIVE_RING + 2 : r, outlineReach(hole, view)));
  const labels = placeInLargestSize(holes, spots, reaches, {
    boxes: [...(corners ? [corners.a, corners.b] : []), ...further.map(({ at }) => at)].flatMap(stakeBoxes),
    segments: [...lines(drawn, view), ...arrows.filter((arrow) => arrow !== null)],
    within: { left: 0, right: view.width, top: 0, bottom: view.height },
    centre: middle(spots),
  });
  return {
    view,
    stakes: corners,
    references: further,
    exaggeration: exaggeration(
      holes.flatMap(({ ellipse }) => ellipse ?? []),
      view.pxPerMetre,
    ),
    holes: holes.map((hole, i) => ({
      hole,
      at: spots[i]!,
      r,
      label: labels[i] ?? null,
      arrow: arrows[i]!,
    })),
  };
}

/** Half size of what is drawn of a post or pier at its actual size; 0 where it is too small to be drawn, pixels. */
export function outlineReach({ section }: DrawnHole, view: View): number {
  if (!section) return 0;
  const [least, greatest] =
    section.kind === 'pier'
      ? [section.diameter, section.diameter]
      : [Math.min(section.width, section.depth), Math.hypot(section.width, section.depth)];
  return least * view.pxPerMetre < LEAST_OUTLINE ? 0 : (greatest / 2) * view.pxPerMetre;
}

/** An outline narrower than this would be a blot, pixels. */
const LEAST_OUTLINE = 8;

type Label = Box & { readonly size: number };

/** All labels in the largest size in which all find room; failing that, those that do in the smallest. */
function placeInLargestSize(
  holes: readonly DrawnHole[],
  spots: readonly Spot[],
  reaches: readonly number[],
  obstacles: Obstacles,
): (Label | null)[] {
  let labels: (Label | null)[] = [];
  for (const usual of LABEL_SIZES) {
    const tasks = holes.map((hole, i) => labelTask(hole, spots[i]!, reaches[i]!, usual));
    labels = placeLabels(tasks, obstacles).map((box, i) => box && { ...box, size: tasks[i]!.size });
    if (!labels.includes(null)) break;
  }
  return labels;
}

const labelTask = (hole: DrawnHole, at: Spot, r: number, usual: number): LabelTask => ({
  text: hole.label,
  at,
  r,
  size: hole.live ? LIVE_LABEL_SIZE : usual,
  first: hole.live ?? false,
});

const stakeBoxes = (spot: Spot): Box[] => [
  boxAround(spot, STAKE_HALF + 2),
  boxAround({ x: spot.x, y: spot.y + STAKE_LABEL_DROP }, STAKE_HALF),
];

function arrowOf(hole: DrawnHole, at: Spot, r: number, turn: number): Segment | null {
  if (!hole.nudge) return null;
  const way = unit(hole.nudge.bearing + turn);
  const start = r + ARROW.start;
  const along = (d: number): Spot => ({ x: at.x + way.x * d, y: at.y - way.y * d });
  return { from: along(start), to: along(start + ARROW.length) };
}

function lines({ pulls = [], stakes }: Drawn, view: View): Segment[] {
  const line = (from: Vec, to: Vec) => ({ from: view.spot(from), to: view.spot(to) });
  return [...pulls.map(({ from, to }) => line(from, to)), ...(stakes ? [line(stakes.a, stakes.b)] : [])];
}

const middle = (spots: readonly Spot[]): Spot => ({
  x: spots.reduce((sum, p) => sum + p.x, 0) / spots.length,
  y: spots.reduce((sum, p) => sum + p.y, 0) / spots.length,
});
