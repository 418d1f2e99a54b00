import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { formatLength, formatSmall, type Units } from '../../units/index.ts';
import { scaleBar } from '../drawing/scale.ts';
import { useWidth } from '../drawing/use-width.ts';
import { layOutProfile, type ProfileLayout, type Strip } from './profile-layout.ts';
import { describeProfile } from './profile-words.ts';
import type { Profiled, ProfiledHole } from './profiled.ts';
import './profile.css';

export interface ProfileProps extends Profiled {
  /** Begins the text alternative. */
  readonly title: string;
  readonly units: Units;
}

/** Width before the picture is on the screen: a common phone's 390 px less its margins. */
const USUAL_WIDTH = 358;
const FOOTER_PX = 26;
const TEXT_PX = 15;

/** The posts side by side as they would be seen from outside, walking round: to scale, the same up as along. */
export function Profile({ title, units, ...profiled }: ProfileProps) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, USUAL_WIDTH);
  const layout = layOutProfile(profiled, width);
  if (!layout) return <div ref={box} />;
  const height = layout.strips.length * layout.stripHeight + FOOTER_PX;
  const bar = scaleBar(layout.pxPerMetre, units);
  const barPx = bar.metres * layout.pxPerMetre;
  return (
    <div class="drawing" ref={box}>
      <svg
        role="img"
        aria-label={describeProfile(title, profiled, units)}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <Patterns />
        {layout.strips.map((strip, i) => (
          <g key={strip.holes[0]!.label} transform={`translate(0 ${i * layout.stripHeight})`}>
            <StripLines strip={strip} layout={layout} frost={profiled.frost} width={width} />
            {strip.holes.map((hole) => (
              <HoleSide key={hole.label} hole={hole} x={strip.xOf(hole)} layout={layout} units={units} />
            ))}
          </g>
        ))}
        <path class="drawn-scale" d={`M1 ${height - 14} v10 h${barPx} v-10`} />
        <text class="drawn-note" x={barPx + 10} y={height - 5} font-size={18}>
          {bar.label}
        </text>
      </svg>
      <Key frost={profiled.frost !== null} cuts={profiled.lines.flat().some(({ cut }) => cut !== null)} />
    </div>
  );
}

/** Lines, not fills, so that paper shows them. */
function Patterns() {
  return (
    <defs>
      <pattern id="profile-concrete" width="7" height="7" patternUnits="userSpaceOnUse">
        <path class="profile-hatch" d="M-1 8 L8 -1" />
      </pattern>
      <pattern id="profile-gravel" width="6" height="6" patternUnits="userSpaceOnUse">
        <circle class="profile-stone" cx="1.5" cy="1.5" r="1.2" />
        <circle class="profile-stone" cx="4.5" cy="4.5" r="1.2" />
      </pattern>
    </defs>
  );
}

interface StripLinesProps {
  readonly strip: Strip;
  readonly layout: ProfileLayout;
  readonly frost: number | null;
  readonly width: number;
}

/** Ground and frost line from hole to hole, carried on level to the edges. */
function StripLines({ strip, layout, frost, width }: StripLinesProps) {
  const path = (down: number) => {
    const spots = strip.holes.map((hole) => ({ x: strip.xOf(hole), y: layout.yOf(hole.ground - down) }));
    const inner = spots.map(({ x, y }) => `L${x} ${y}`).join(' ');
    return `M2 ${spots[0]!.y} ${inner} L${width - 2} ${spots.at(-1)!.y}`;
  };
  const measured = strip.holes.every(({ groundMeasured }) => groundMeasured);
  return (
    <>
      <path class={measured ? 'profile-ground' : 'profile-ground profile-assumed'} d={path(0)} />
      {frost !== null && <path class="profile-frost" d={path(frost)} />}
    </>
  );
}

interface HoleSideProps {
  readonly hole: ProfiledHole;
  readonly x: number;
  readonly layout: ProfileLayout;
  readonly units: Units;
}

function HoleSide({ hole, x, layout: { yOf, pxPerMetre }, units }: HoleSideProps) {
  const { label, bottom, ground, gravel, top, cut, kind } = hole;
  const wide = Math.max(hole.holeWidth * pxPerMetre, 6);
  const post = Math.max(hole.postWidth * pxPerMetre, 4);
  const foot = bottom === null ? ground : bottom + gravel;
  const cutWidth = post + 14;
  return (
    <g>
      {bottom !== null && (
        <>
          <rect
            class={hole.dug ? 'profile-hole' : 'profile-hole profile-planned'}
            x={x - wide / 2}
            y={yOf(ground)}
            width={wide}
            height={yOf(bottom) - yOf(ground)}
          />
          <rect
            class="profile-concrete"
            x={x - wide / 2}
            y={yOf(ground)}
            width={wide}
            height={Math.max(0, yOf(foot) - yOf(ground))}
          />
          <rect
            class="profile-gravel"
            x={x - wide / 2}
            y={yOf(foot)}
            width={wide}
            height={Math.max(0, yOf(bottom) - yOf(foot))}
          />
          <text class="profile-text" x={x} y={yOf(bottom) + TEXT_PX + 3} font-size={TEXT_PX}>
            {formatSmall(ground - bottom, units)}
          </text>
        </>
      )}
      <rect
        class={`profile-${kind}${hole.topMeasured ? '' : ' profile-planned'}`}
        x={x - post / 2}
        y={yOf(top)}
        width={post}
        height={Math.max(0, yOf(kind === 'pier' ? ground : foot) - yOf(top))}
      />
      {cut !== null && <path class="profile-cut" d={`M${x - cutWidth / 2} ${yOf(cut)} h${cutWidth}`} />}
      <text class="profile-text" x={x} y={yOf(top) - 6} font-size={TEXT_PX}>
        {formatLength(top, units)}
      </text>
      <text class="profile-text profile-label" x={x} y={yOf(top) - 6 - TEXT_PX - 1} font-size={18}>
        {label}
      </text>
    </g>
  );
}

/** What the lines mean. The picture's own words say all of it, so that readers of the screen are spared this. */
function Key({ frost, cuts }: { readonly frost: boolean; readonly cuts: boolean }) {
  return (
    <ul class="profile-key" aria-hidden="true">
      <Sample draw={<path class="profile-ground" d="M1 7 h32" />}>ground; broken: not measured</Sample>
      {frost && <Sample draw={<path class="profile-frost" d="M1 7 h32" />}>frost line</Sample>}
      <Sample draw={<rect class="profile-concrete" x="2" y="1" width="30" height="12" />}>concrete</Sample>
      <Sample draw={<rect class="profile-gravel" x="2" y="1" width="30" height="12" />}>gravel</Sample>
      <Sample draw={<rect class="profile-post profile-planned" x="2" y="1" width="30" height="12" />}>
        broken: as planned
      </Sample>
      {cuts && <Sample draw={<path class="profile-cut" d="M1 7 h32" />}>cut</Sample>}
      <li>Over a post its top above the benchmark; under it the depth of its hole.</li>
    </ul>
  );
}

function Sample({ draw, children }: { readonly draw: ComponentChildren; readonly children: string }) {
  return (
    <li>
      <svg aria-hidden="true" width="34" height="14" viewBox="0 0 34 14">
        {draw}
      </svg>
      {children}
    </li>
  );
}
