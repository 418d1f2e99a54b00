import type { Units } from '../../units/index.ts';
import { HoleShape } from '../mark-shapes.tsx';
import type { DrawnPull } from './drawn.ts';
import { LIVE_RING, outlineReach, type PlacedHole, STAKE_HALF, STAKE_LABEL_DROP } from './layout.ts';
import { scaleBar } from './scale.ts';
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

export function Baseline({ a, b }: { readonly a: Spot; readonly b: Spot }) {
  return (
    <g>
      <line class="drawn-baseline" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />
      <ReferenceStake at={a} label="A" />
      <ReferenceStake at={b} label="B" />
    </g>
  );
}

export function ReferenceStake({ at, label }: { readonly at: Spot; readonly label: string }) {
  return (
    <g>
      <rect
        class="drawn-stake"
        x={at.x - STAKE_HALF}
        y={at.y - STAKE_HALF}
        width={2 * STAKE_HALF}
        height={2 * STAKE_HALF}
      />
      <text class="drawn-label" x={at.x} y={at.y + STAKE_LABEL_DROP} font-size={18}>
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
      {label && (
        <text
          class="drawn-label"
          x={(label.left + label.right) / 2}
          y={(label.top + label.bottom) / 2}
          font-size={label.size}
        >
          {hole.label}
        </text>
      )}
      {arrow && <Arrow from={arrow.from} to={arrow.to} />}
    </g>
  );
}

/** Half width and length of an arrow's head, pixels. */
const HEAD = { half: 9, length: 16 };

function Arrow({ from, to }: { readonly from: Spot; readonly to: Spot }) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return (
    <g class="drawn-arrow" transform={`translate(${from.x} ${from.y}) rotate(${degrees})`}>
      <line class="drawn-arrow-shaft" x2={length - HEAD.length} />
      <path
        d={`M${length} 0 L${length - HEAD.length} ${HEAD.half} L${length - HEAD.length} ${-HEAD.half} Z`}
      />
    </g>
  );
}

/** Scale bar, and by how much ellipses are enlarged, in a row of their own below the drawing. */
export function Footer({
  view,
  units,
  times,
  y,
}: {
  readonly view: View;
  readonly units: Units;
  readonly times: number;
  readonly y: number;
}) {
  const bar = scaleBar(view.pxPerMetre, units);
  const px = bar.metres * view.pxPerMetre;
  return (
    <g class="drawn-footer">
      <path class="drawn-scale" d={`M1 ${y - 10} v10 h${px} v-10`} />
      <text class="drawn-note" x={px + 10} y={y - 1} font-size={18}>
        {bar.label}
      </text>
      {times > 1 && (
        <text class="drawn-note drawn-note-end" x={view.width} y={y - 1} font-size={18}>
          ellipses ×{times}
        </text>
      )}
    </g>
  );
}
