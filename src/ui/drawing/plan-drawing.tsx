import type { TargetedMouseEvent } from 'preact';
import { useRef } from 'preact/hooks';
import type { Units } from '../../units/index.ts';
import { useFirstFrameShown } from '../first-frame.tsx';
import { holeWords } from '../mark-shapes.tsx';
import { DrawingParts } from './drawing-parts.tsx';
import type { Drawn } from './drawn.ts';
import { type Layout, layOut, type PlacedHole } from './layout.ts';
import { footerOf } from './pieces.tsx';
import { useTextScale } from './use-text-scale.ts';
import { useWidth } from './use-width.ts';
import type { Spot } from './view.ts';
import { describeDrawing } from './words.ts';

export interface PlanDrawingProps extends Drawn {
  /** Begins the text alternative: `Orchard deck, hole 4`. */
  readonly title: string;
  readonly units: Units;
  /** Makes every hole a button. */
  readonly onHole?: (label: string) => void;
  /** Greatest height without the scale bar, pixels. */
  readonly maxHeight?: number;
}

/** Width before the drawing is on the screen: a common phone's 390 px less its margins. */
const USUAL_WIDTH = 358;
const USUAL_HEIGHT = 256;

/**
 * The structure from above: holes by state and verdict, A and B with the baseline, live pulls, arrows and ellipses. With A and
 * B it is turned as the user stands; without them the plan's front is up.
 */
export function PlanDrawing({ title, units, onHole, maxHeight = USUAL_HEIGHT, ...drawn }: PlanDrawingProps) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, USUAL_WIDTH);
  const text = useTextScale();
  const shown = useFirstFrameShown();
  const { holes } = drawn;
  // In the same box, so that the width is known once there is something to draw.
  if (holes.length === 0)
    return (
      <div class="drawing" ref={box}>
        <p>Nothing to draw yet: the plan has no holes.</p>
      </div>
    );
  const layout = layOut(drawn, width, maxHeight * tallerFor(text), text);
  const { view, exaggeration: times } = layout;
  const height = view.height + footerOf(layout, units).height;
  return (
    <div class="drawing" ref={box}>
      <svg
        role={onHole ? 'group' : 'img'}
        aria-label={describeDrawing(title, drawn, times)}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        {/* Many small parts: on a cold start what is told in words comes first, and the room for them is kept. */}
        {shown && <DrawingParts drawn={drawn} layout={layout} text={text} units={units} />}
        {shown && onHole && <Targets layout={layout} onHole={onHole} />}
      </svg>
    </div>
  );
}

/** Larger letters need a taller drawing; half as much again for letters twice as large leaves the card its room. */
const tallerFor = (text: number): number => 1 + (text - 1) / 2;

/** Half of a touch target, pixels. */
const TARGET_HALF = 32;

interface TargetsProps {
  readonly layout: Layout;
  readonly onHole: (label: string) => void;
}

/** Where targets overlap, a tap means the hole nearest to it. */
function Targets({ layout, onHole }: TargetsProps) {
  const tapped = (event: TargetedMouseEvent<HTMLButtonElement>, own: PlacedHole) => {
    const svg = event.currentTarget.closest('svg');
    // A click without a pointer (`detail` 0) comes from a keyboard or a screen reader and means its own hole.
    if (!svg || event.detail === 0) return onHole(own.hole.label);
    const frame = svg.getBoundingClientRect();
    const at = { x: event.clientX - frame.left, y: event.clientY - frame.top };
    onHole(nearest(layout.holes, at).hole.label);
  };
  return layout.holes.map((placed) => (
    <foreignObject
      key={placed.hole.label}
      x={placed.at.x - TARGET_HALF}
      y={placed.at.y - TARGET_HALF}
      width={2 * TARGET_HALF}
      height={2 * TARGET_HALF}
    >
      <button
        type="button"
        class="drawn-target"
        aria-label={`Hole ${placed.hole.label}: ${holeWords(placed.hole)}`}
        onClick={(event) => tapped(event, placed)}
      />
    </foreignObject>
  ));
}

function nearest(holes: readonly PlacedHole[], to: Spot): PlacedHole {
  const far = (placed: PlacedHole) => Math.hypot(placed.at.x - to.x, placed.at.y - to.y);
  return holes.reduce((best, placed) => (far(placed) < far(best) ? placed : best));
}
