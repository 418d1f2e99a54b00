import type { Units } from '../../units/index.ts';
import { HoleShape } from '../mark-shapes.tsx';
import type { DrawnPull } from './drawn.ts';
import { type Segment, textWidth } from './labels.ts';
import {
  type Label,
  type Layout,
  LIVE_RING,
  NAIL_HALF,
  outlineReach,
  type PlacedFace,
  type PlacedHole,
  type PlacedNail,
  STAKE_HALF,
  stakeLabelDrop,
} from './layout.ts';
import { FRONT } from './pointers.ts';
import { type ScaleBar, scaleBar } from './scale.ts';
import type { Spot, View } from './view.ts';

/** What the hole holds, at its actual size and turned as it stands, where the scale lets one see it. */
export function Outline({
  placed: { hole, at },
  view,
}: {
  readonly placed: PlacedHole;
  readonly view: View;
}) {
  const { section } = hole;
  if (!section || outlineReach(hole, view) === 0) return null;
  if (section.kind === 'pier') {
    const r = (section.diameter / 2) * view.pxPerMetre;
    return <circle class="drawn-outline" cx={at.x} cy={at.y} r={r} />;
  }
  // The front face looks along `facing`: depth lies along it, width across it.
  const [along, across] = [section.depth * view.pxPerMetre, section.width * view.pxPerMetre];
  const degrees = (-((hole.facing ?? Math.PI / 2) + view.turn) * 180) / Math.PI;
  return (
    <rect
      class="drawn-outline"
      x={-along / 2}
      y={-across / 2}
      width={along}
      height={across}
      transform={`translate(${at.x} ${at.y}) rotate(${degrees})`}
    />
  );
}

export function ErrorEllipse({
  placed: { hole, at },
  view,
  times,
}: {
  readonly placed: PlacedHole;
  readonly view: View;
  readonly times: number;
}) {
  if (!hole.ellipse) return null;
  const { semiMajor, semiMinor, bearing } = hole.ellipse;
  const px = view.pxPerMetre * times;
  const degrees = (-(bearing + view.turn) * 180) / Math.PI;
  return (
    <ellipse
      class="drawn-ellipse"
      rx={semiMajor * px}
      ry={semiMinor * px}
      transform={`translate(${at.x} ${at.y}) rotate(${degrees})`}
    />
  );
}

export function Pull({ pull, view }: { readonly pull: DrawnPull; readonly view: View }) {
  const from = view.spot(pull.from);
  const to = view.spot(pull.to);
  return <line class={`drawn-pull drawn-pull-${pull.kind}`} x1={from.x} y1={from.y} x2={to.x} y2={to.y} />;
}

interface BaselineProps {
  readonly a: Spot;
  readonly b: Spot;
  /** Times the usual letter size. */
  readonly text: number;
}

export function Baseline({ a, b, text }: BaselineProps) {
  return (
    <g>
      <line class="drawn-baseline" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />
      <ReferenceStake at={a} label="A" text={text} />
      <ReferenceStake at={b} label="B" text={text} />
    </g>
  );
}

/** A nail among holes: a dot, with its label on the side away from them. */
export function NailDot({ nail: { name, at, label } }: { readonly nail: PlacedNail }) {
  return (
    <g>
      <circle class="drawn-stake" cx={at.x} cy={at.y} r={NAIL_HALF} />
      <LabelText label={label} words={name} />
    </g>
  );
}

interface ReferenceStakeProps extends Pick<BaselineProps, 'text'> {
  readonly at: Spot;
  readonly label: string;
}

export function ReferenceStake({ at, label, text }: ReferenceStakeProps) {
  return (
    <g>
      <rect
        class="drawn-stake"
        x={at.x - STAKE_HALF}
        y={at.y - STAKE_HALF}
        width={2 * STAKE_HALF}
        height={2 * STAKE_HALF}
      />
      <text class="drawn-label" x={at.x} y={at.y + stakeLabelDrop(text)} font-size={NOTE_SIZE * text}>
        {label}
      </text>
    </g>
  );
}

/** A hole's mark, with the live ring, its label and its arrow. */
export function HoleMark({ placed: { hole, at, r, label, arrow } }: { readonly placed: PlacedHole }) {
  return (
    <g class={hole.live ? 'drawn-hole drawn-hole-live' : 'drawn-hole'}>
      {hole.live && <circle class="drawn-live-ring" cx={at.x} cy={at.y} r={r + LIVE_RING} />}
      <HoleShape x={at.x} y={at.y} r={r} {...hole} />
      <LabelText label={label} words={hole.label} />
      {arrow && <Arrow from={arrow.from} to={arrow.to} />}
    </g>
  );
}

/** Nothing where the drawing has no room for it. */
function LabelText({ label, words }: { readonly label: Label | null; readonly words: string }) {
  if (!label) return null;
  return (
    <text
      class="drawn-label"
      x={(label.left + label.right) / 2}
      y={(label.top + label.bottom) / 2}
      font-size={label.size}
    >
      {words}
    </text>
  );
}

/** The side of a post that the tape or the level touches now. */
export function FaceMark({ face: { name, bar, label } }: { readonly face: PlacedFace }) {
  return (
    <g class="drawn-face">
      <line x1={bar.from.x} y1={bar.from.y} x2={bar.to.x} y2={bar.to.y} />
      <LabelText label={label} words={name} />
    </g>
  );
}

/** Where the plan's front is: drawings are turned as the user stands. */
export function FrontMark({ front: { arrow, label } }: { readonly front: NonNullable<Layout['front']> }) {
  return (
    <g class="drawn-front">
      <Arrow from={arrow.from} to={arrow.to} head={FRONT_HEAD} />
      <LabelText label={label} words={FRONT} />
    </g>
  );
}

/** A line on the ground, with strokes on the side on which nothing can stand. */
export function GroundLine({
  line: { name, wall, line, strokes, label },
}: {
  readonly line: Layout['ground'][number];
}) {
  const ends = ({ from, to }: Segment) => ({ x1: from.x, y1: from.y, x2: to.x, y2: to.y });
  return (
    <g class={wall ? 'drawn-ground drawn-wall' : 'drawn-ground'}>
      <line {...ends(line)} />
      {strokes.map((stroke) => (
        <line key={`${stroke.from.x} ${stroke.from.y}`} class="drawn-barred" {...ends(stroke)} />
      ))}
      <LabelText label={label} words={name} />
    </g>
  );
}

/** Half width and length of an arrow's head, pixels. */
const HEAD = { half: 9, length: 16 };
const FRONT_HEAD = { half: 6, length: 10 };

function Arrow({ from, to, head = HEAD }: Segment & { readonly head?: typeof HEAD }) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return (
    <g class="drawn-arrow" transform={`translate(${from.x} ${from.y}) rotate(${degrees})`}>
      <line class="drawn-arrow-shaft" x2={length - head.length} />
      <path
        d={`M${length} 0 L${length - head.length} ${head.half} L${length - head.length} ${-head.half} Z`}
      />
    </g>
  );
}

/** Height of a row of the footer, and letters in it, pixels at the usual text size. */
const ROW_HEIGHT = 26;
const NOTE_SIZE = 18;

export interface FooterProps {
  readonly layout: Layout;
  readonly units: Units;
}

interface FooterParts {
  readonly bar: ScaleBar;
  readonly px: number;
  /** By how much ellipses are enlarged; null where they are not. */
  readonly note: string | null;
  readonly rows: number;
  readonly height: number;
}

/** What stands below the drawing: in one row where it fits, else in two. */
export function footerOf({ view, exaggeration: times, text }: Layout, units: Units): FooterParts {
  const bar = scaleBar(view.pxPerMetre, units);
  const px = bar.metres * view.pxPerMetre;
  const note = times > 1 ? `ellipses ×${times}` : null;
  const wide = px + BESIDE_BAR + textWidth(`${bar.label} ${note ?? ''}`, NOTE_SIZE * text);
  const rows = note !== null && wide > view.width ? 2 : 1;
  return { bar, px, note, rows, height: rows * ROW_HEIGHT * text };
}

/** Between the scale bar and its length, pixels. */
const BESIDE_BAR = 10;

/** Scale bar, and by how much ellipses are enlarged, below the drawing. */
export function Footer({ layout, units }: FooterProps) {
  const { view, text } = layout;
  const { bar, px, note, rows, height } = footerOf(layout, units);
  const last = view.height + height - 4;
  const first = last - (rows - 1) * ROW_HEIGHT * text;
  return (
    <g class="drawn-footer">
      <path class="drawn-scale" d={`M1 ${first - 10} v10 h${px} v-10`} />
      <text class="drawn-note" x={px + BESIDE_BAR} y={first - 1} font-size={NOTE_SIZE * text}>
        {bar.label}
      </text>
      {note !== null && (
        <text class="drawn-note drawn-note-end" x={view.width} y={last - 1} font-size={NOTE_SIZE * text}>
          {note}
        </text>
      )}
    </g>
  );
}
