import type { Vec } from '../../geometry/point.ts';
import { distance, unit } from '../../geometry/point.ts';
import type { Drawn, DrawnHole, DrawnReference } from './drawn.ts';
import { type PlacedLine, placeLine, placesOfLines } from './ground.ts';
import { type Box, boxAround, type LabelTask, type Obstacles, placeLabels, type Segment } from './labels.ts';
import {
  beforeFront,
  FACE_HALF,
  type FaceBar,
  FRONT,
  FRONT_ARROW,
  faceBar,
  frontArrow,
  halfway,
  type Mark,
  middle,
} from './pointers.ts';
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

export interface PlacedReference {
  readonly name: string;
  readonly at: Spot;
}

export interface PlacedNail extends PlacedReference {
  readonly label: Label | null;
}

export interface PlacedFace {
  readonly hole: string;
  readonly name: string;
  readonly bar: Segment;
  readonly label: Label | null;
}

export interface Layout {
  readonly view: View;
  readonly holes: readonly PlacedHole[];
  readonly stakes: { readonly a: Spot; readonly b: Spot } | null;
  readonly references: readonly PlacedReference[];
  /** Small ones among holes. */
  readonly nails: readonly PlacedNail[];
  readonly faces: readonly PlacedFace[];
  readonly front: { readonly arrow: Segment; readonly label: Label | null } | null;
  readonly ground: readonly (PlacedLine & { readonly label: Label | null })[];
  readonly exaggeration: number;
  /** Letters are so many times their usual size. */
  readonly text: number;
}

/** Letter heights, pixels: body size where there is room. */
const LEAST_LABEL_SIZE = 14;
const LABEL_SIZES = [18, LEAST_LABEL_SIZE];
const LIVE_LABEL_SIZE = 24;
/** Of a face's name and the word `front`: they say less than a hole's label. */
const WORD_SIZE = 15;
/** Half the side of a reference stake's square. */
export const STAKE_HALF = 9;
/** Radius of a nail's dot. */
export const NAIL_HALF = 5;
/** From a stake's centre down to its letter's. */
export const stakeLabelDrop = (text: number): number => STAKE_HALF + 4 + 9 * text;
/** The ring round the live hole stands this far out from its mark. */
export const LIVE_RING = 6;
const ARROW = { start: 6, length: 36 };

/**
 * Where everything on the drawing goes: pure, so that it can be tested without a screen.
 *
 * @param text times the usual letter size
 */
export function layOut(all: Drawn, width: number, maxHeight: number, text = 1): Layout {
  const drawn = inFocus(all);
  const { holes, stakes, references = [], faces = [], lines: onGround = [] } = drawn;
  const view = viewOf(drawn, turnOf(all), { width, maxHeight, text });
  const spots = holes.map(({ place }) => view.spot(place));
  const r = markRadius(spots);
  const arrows = holes.map((hole, i) => arrowOf(hole, spots[i]!, r, view.turn));
  const marks = holes.map((hole, i) => ({ hole, at: spots[i]!, reach: reachOf(hole, r, view) }));
  const nails = references.flatMap((each) => nailOf(each, view) ?? []);
  const further = references.filter(({ awayFrom }) => !awayFrom);
  const stakeSpots = [...(stakes ? [stakes.a, stakes.b] : []), ...further.map(({ place }) => place)];
  const bars = faces.flatMap((face) => faceBar(face, marks, view.turn) ?? []);
  const front = drawn.front === undefined ? null : frontArrow(spots, r, drawn.front + view.turn);
  const ground = onGround.flatMap((line) => placeLine(line, view) ?? []);
  const tasks = (usual: number): LabelTask[] => [
    ...marks.map((mark) => holeTask(mark, usual, text)),
    ...nails.map((nail) => ({ ...nail, size: LEAST_LABEL_SIZE * text })),
    ...bars.map((bar) => faceTask(bar, text)),
    ...(front ? [frontTask(front, text)] : []),
    ...ground.map((line) => groundTask(line, text)),
  ];
  const labels = placeInLargestSize(tasks, {
    boxes: stakeSpots.flatMap((place) => stakeBoxes(view.spot(place), text)),
    segments: [
      ...lines(drawn, view),
      ...arrows.filter((arrow) => arrow !== null),
      ...ground.map(({ line }) => line),
    ],
    within: { left: 0, right: view.width, top: 0, bottom: view.height },
    centre: middle(spots),
  });
  const label = (i: number) => labels[i] ?? null;
  const [toNails, toFaces] = [holes.length, holes.length + nails.length];
  const toFront = toFaces + bars.length;
  const toGround = toFront + (front ? 1 : 0);
  return {
    view,
    text,
    stakes: stakes ? { a: view.spot(stakes.a), b: view.spot(stakes.b) } : null,
    references: further.map(({ label: name, place }) => ({ name, at: view.spot(place) })),
    exaggeration: exaggeration(
      holes.flatMap(({ ellipse }) => ellipse ?? []),
      view.pxPerMetre,
    ),
    holes: marks.map(({ hole, at }, i) => ({ hole, at, r, label: label(i), arrow: arrows[i]! })),
    nails: nails.map(({ text: name, at }, i) => ({ name, at, label: label(toNails + i) })),
    faces: bars.map(({ hole, name, bar }, i) => ({ hole, name, bar, label: label(toFaces + i) })),
    front: front && { arrow: front, label: label(toFront) },
    ground: ground.map((line, i) => ({ ...line, label: label(toGround + i) })),
  };
}

/** What is drawn of it: all, or what lies near the place in focus. */
function inFocus(drawn: Drawn): Drawn {
  const { holes, stakes, references = [], focus, front, ...rest } = drawn;
  if (!focus) return drawn;
  const near = (place: Vec) => distance(place, focus.at) <= focus.reach;
  return {
    ...rest,
    holes: holes.filter(({ place }) => near(place)),
    references: references.filter(({ place }) => near(place)),
    ...(stakes && near(stakes.a) && near(stakes.b) ? { stakes } : {}),
  };
}

const turnOf = ({ holes, stakes }: Drawn): number =>
  stakes
    ? turnAsStanding(
        stakes.a,
        stakes.b,
        holes.map(({ place }) => place),
      )
    : 0;

interface Room {
  readonly width: number;
  readonly maxHeight: number;
  readonly text: number;
}

/** Holds all that has a place, and the arrow before the plan's front. A near view cuts lines at its edge. */
function viewOf(drawn: Drawn, turn: number, { width, maxHeight, text }: Room): View {
  const { holes, stakes, references = [], pulls = [], lines: onGround = [], front, focus } = drawn;
  const places = holes.map(({ place }) => place);
  const all = [
    ...places,
    ...(stakes ? [stakes.a, stakes.b] : []),
    ...references.map(({ place }) => place),
    ...(focus ? [] : pulls.flatMap(({ from, to }) => [from, to])),
  ];
  if (!focus) all.push(...placesOfLines(onGround, all));
  const holding = (more: readonly Vec[]) => fitView([...all, ...more], turn, width, maxHeight, text);
  const bare = holding([]);
  return front === undefined ? bare : holding([beforeFront(places, front, bare.pxPerMetre)]);
}

/** How far from a hole's centre its mark, its ring and its outline reach, pixels. */
const reachOf = (hole: DrawnHole, r: number, view: View): number =>
  Math.max(hole.live ? r + LIVE_RING + 2 : r, outlineReach(hole, view));

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

export type Label = Box & { readonly size: number };

/** All labels in the largest size in which all find room; failing that, those that do in the smallest. */
function placeInLargestSize(
  tasksAt: (usual: number) => readonly LabelTask[],
  obstacles: Obstacles,
): (Label | null)[] {
  let labels: (Label | null)[] = [];
  for (const usual of LABEL_SIZES) {
    const tasks = tasksAt(usual);
    labels = placeLabels(tasks, obstacles).map((box, i) => box && { ...box, size: tasks[i]!.size });
    if (!labels.includes(null)) break;
  }
  return labels;
}

const holeTask = ({ hole, at, reach }: Mark, usual: number, text: number): LabelTask => ({
  text: hole.label,
  at,
  r: reach,
  size: (hole.live ? LIVE_LABEL_SIZE : usual) * text,
  first: hole.live ?? false,
});

function nailOf({ label, place, awayFrom }: DrawnReference, view: View): Omit<LabelTask, 'size'> | null {
  if (!awayFrom) return null;
  return { text: label, at: view.spot(place), r: NAIL_HALF, awayFrom: view.spot(awayFrom) };
}

const faceTask = ({ name, bar, of }: FaceBar, text: number): LabelTask => ({
  text: name,
  at: halfway(bar),
  r: FACE_HALF,
  size: WORD_SIZE * text,
  first: true,
  awayFrom: of,
});

const frontTask = (arrow: Segment, text: number): LabelTask => ({
  text: FRONT,
  at: halfway(arrow),
  r: FRONT_ARROW.length / 2,
  size: WORD_SIZE * text,
});

const groundTask = ({ name, line }: PlacedLine, text: number): LabelTask => ({
  text: name,
  at: halfway(line),
  r: 2,
  size: WORD_SIZE * text,
});

const stakeBoxes = (spot: Spot, text: number): Box[] => [
  boxAround(spot, STAKE_HALF + 2),
  boxAround({ x: spot.x, y: spot.y + stakeLabelDrop(text) }, STAKE_HALF * text),
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
